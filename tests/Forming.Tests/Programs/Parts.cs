using Forming.Layout;
using Forming.Programs;

namespace Forming.Tests.Programs;

/// <summary>Forms of equal facets for a brake to fold, and brakes with the default tools.</summary>
internal static class Parts
{
    public static LeafBrake Leaf { get; } = new() { LengthMm = 1250 };

    public static PressBrake Press { get; } = new() { LengthMm = 1250 };

    /// <summary>A form of 2 mm steel with half folds at its ends.</summary>
    public static ProgramPart Even(double radius, double sweepDegrees, int folds, double lead = 60, double springback = 2)
    {
        var shape = new FoldShape(2, 2, 0.4);
        var step = sweepDegrees * Workshop.Degree / (folds - 1);
        var chord = 2 * (radius - shape.OuterRadiusMm) * Math.Sin(step / 2);
        double[] angles = [step / 2, .. Enumerable.Repeat(step, folds - 2), step / 2];
        return new(
            [lead, .. Enumerable.Repeat(chord, folds - 1), lead],
            angles,
            [.. angles.Select(angle => angle + (springback * Workshop.Degree))],
            shape,
            600,
            330,
            Angle.FromDegrees(0.5));
    }

    public static BrakeProgram Program(ProgramPart part, ProgramBrake brake) => BrakeProgram.Compute(part, brake, TimeSpan.FromMinutes(1));

    public static OrderTried Tried(BrakeProgram program, string name) => program.OrdersTried.Single(order => order.Name.StartsWith(name, StringComparison.Ordinal));
}
