namespace Forming.Tolerances;

/// <summary>An ellipse about the expected place.</summary>
/// <param name="SemiMajorMm">Larger semi-axis [mm].</param>
/// <param name="SemiMinorMm">Smaller semi-axis [mm].</param>
/// <param name="Direction">Direction of the larger one against the lead-in, -90° to 90°.</param>
public readonly record struct ErrorEllipse(double SemiMajorMm, double SemiMinorMm, Angle Direction);
