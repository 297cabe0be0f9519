namespace Forming.Inspection;

/// <summary>How far a mold line lies from where it should be.</summary>
/// <param name="Held">Off with the first flat held [mm], in the frame of the lead-in.</param>
/// <param name="FittedMm">Distance after the least-squares rigid fit of all mold lines [mm].</param>
public readonly record struct VertexMiss(Point Held, double FittedMm);
