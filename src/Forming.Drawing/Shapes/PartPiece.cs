namespace Forming.Drawing.Shapes;

/// <summary>A flat of a part, or a fold that is made.</summary>
/// <param name="LengthMm">Length of a flat [mm]; a fold's follows from its shape.</param>
/// <param name="Turn">Angle of a fold [rad]; 0 for a flat.</param>
internal readonly record struct PartPiece(double LengthMm, double Turn);
