using CsCheck;
using Forming.Layout;
using Forming.Programs;

namespace Forming.Tests.Programs;

/// <summary>Clearances over a swing, held against the solid part swung in small steps.</summary>
public class SwingTests
{
    private static readonly Gen<(ProgramPart Part, FoldSet Made, int Fold, PartEdge Edge)> Cases = Gen.Select(
        Gen.Double[8, 60].Array[3, 9], Gen.Double[4, 40], Gen.Double[0.5, 4], Gen.ULong, Gen.Bool)
        .Select((straights, degrees, radius, bits, isEnd) =>
        {
            var folds = straights.Length - 1;
            var angle = degrees * Workshop.Degree;
            var fold = (int)(bits % (ulong)folds);
            var part = new ProgramPart(
                straights, [.. Enumerable.Repeat(angle, folds)], [.. Enumerable.Repeat(angle + 0.03, folds)], new FoldShape(radius, 2, 0.42), 500, 330, Angle.FromDegrees(0.5));
            return (part, new FoldSet((bits >> 8) & ((1UL << folds) - 1)).Without(fold), fold, isEnd ? PartEdge.End : PartEdge.Start);
        });

    [Fact]
    public void A_leafs_clearance_is_that_of_the_solid_part_in_small_steps() => Agree(Parts.Leaf, false);

    [Fact]
    public void A_presss_clearance_is_that_of_the_solid_part_in_small_steps() => Agree(Parts.Press, true);

    private static void Agree(ProgramBrake brake, bool isPress) => Cases.Sample(
        (part, made, fold, edge) =>
        {
            var tools = brake.ToolsFor(part);
            var trial = new FoldTrial(tools, brake with { PlentyMm = 40 }, made, fold, edge);
            // With no fold made there is nothing past the runs.
            if (!trial.Runs || made == default)
                return;
            var jaws = SolidPart.Jaws(tools);
            var folds = Enumerable.Range(0, part.Folds).Where(made.Has).ToHashSet();
            var end = part.StopAngles[fold] + brake.OverTravel.Radians;
            const int Steps = 120;
            var least = double.PositiveInfinity;
            for (var i = 0; i <= Steps; i++)
                least = Math.Min(least, SolidPart.Folded(part, folds, fold, edge, Math.Max(1e-6, end * i / Steps), isPress).Distance(jaws));

            // Runs that overlap a jaw are a collision of their own, which the solid here leaves out.
            if (trial.Upper.Mm <= 0 && RunStrikes(trial, tools, isPress, end))
                return;

            // Chords and round ends: half a thickness low at the most. Between small steps the part moves, so the solid may read high.
            var moved = 500 * end / Steps / 2;
            if (least >= 40)
                Assert.True(trial.Upper.Mm > 40 - 1.1);
            else
                Assert.InRange(trial.Upper.Mm, Math.Max(-1, least - moved) - 1.1, least + 0.05);
        },
        iter: 250);

    private static bool RunStrikes(FoldTrial trial, BrakeTools tools, bool isPress, double end)
    {
        var near = 2 * tools.Part.Shape.OuterRadiusMm;
        var half = tools.Part.Shape.ThicknessMm / 2;
        return Enumerable.Range(0, 60).Any(i =>
        {
            var pose = trial.Placed(end * i / 59);
            return Strikes(pose.Front, trial.FrontRunMm) || (isPress && Strikes(pose.Back, trial.BackRunMm));
        });

        bool Strikes(Point[] placed, double run) => run > near && tools.Upper.Any(jaw =>
            Distance.To(placed[0] + (near / run * (placed[1] - placed[0])), placed[1], jaw, half) < half);
    }
}
