using CsCheck;
using Forming.Folds;
using Forming.Programs;
using Forming.Programs.Brakes;

namespace Forming.Tests.Programs;

/// <summary>Forms of equal facets for a brake to fold, and brakes with the default tools.</summary>
internal static class Parts
{
    /// <summary>What the even forms spring back [°].</summary>
    public const double Springback = 2;

    public static LeafBrake Leaf { get; } = new() { LengthMm = 1250 };

    public static PressBrake Press { get; } = new() { LengthMm = 1250 };

    /// <summary>A form of 2 mm steel with half folds at its ends.</summary>
    public static ProgramPart Even(double radius, double sweepDegrees, int folds, double lead = 60)
    {
        var shape = new FoldShape(2, 2, 0.4);
        var step = sweepDegrees * Workshop.Degree / (folds - 1);
        var chord = 2 * (radius - shape.OuterRadiusMm) * Math.Sin(step / 2);
        double[] angles = [step / 2, .. Enumerable.Repeat(step, folds - 2), step / 2];
        return new(
            [lead, .. Enumerable.Repeat(chord, folds - 1), lead],
            angles,
            [.. angles.Select(angle => angle + (Springback * Workshop.Degree))],
            shape,
            600,
            330,
            Angle.FromDegrees(0.5));
    }

    /// <summary>Uneven parts with folds of all sizes, some of them closing on themselves.</summary>
    public static Gen<ProgramPart> Uneven(int leastFolds, int mostFolds, double leastDegrees, double mostDegrees) => Gen.Int[leastFolds, mostFolds].SelectMany(folds => Gen.Select(
        Gen.Double[9, 70].Array[folds + 1],
        Gen.Double[leastDegrees, mostDegrees].Array[folds],
        Gen.Double[0.5, 4],
        (straights, degrees, radius) =>
        {
            double[] angles = [.. degrees.Select(angle => angle * Workshop.Degree)];
            return new ProgramPart(
                straights, angles, [.. angles.Select(angle => angle + 0.03)], new FoldShape(radius, 2, 0.42), 500, 330, Angle.FromDegrees(0.5));
        }));

    /// <summary>A form of steel given by its folds and facets, mold line to mold line, and the stop's line.</summary>
    public static ProgramPart Known(
        double thickness, double radius, double leadIn, double leadOut, double[] degrees, double[] facets, double offset, double slope)
    {
        var shape = new FoldShape(radius, thickness, 0.4);
        double[] angles = [.. degrees.Select(angle => angle * Workshop.Degree)];
        double[] setbacks = [0, .. angles.Select(shape.Setback), 0];
        double[] lengths = [leadIn, .. facets, leadOut];
        return new(
            [.. lengths.Select((length, i) => length - setbacks[i] - setbacks[i + 1])],
            angles,
            [.. degrees.Select(angle => (offset + (slope * angle)) * Workshop.Degree)],
            shape,
            500,
            330,
            Angle.FromDegrees(0.5))
        { StopSlope = slope };
    }

    public static BrakeProgram Program(ProgramPart part, ProgramBrake brake) => BrakeProgram.Compute(part, brake, long.MaxValue);

    public static OrderTried Tried(BrakeProgram program, string name) => program.OrdersTried.Single(order => order.Name.StartsWith(name, StringComparison.Ordinal));
}
