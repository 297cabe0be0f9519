using CsCheck;
using Forming.Layout;
using Forming.Programs;
using NetTopologySuite.Geometries;

namespace Forming.Tests.Programs;

/// <summary>Clearances over a swing, held against the solid part swung in small steps by another geometry.</summary>
public class SwingTests
{
    private const double Plenty = 40;
    private const int Steps = 100;

    // Chords (0.0038 of the mid radius) and the proof's 0.02.
    private const double Slack = 0.05;

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

    [Fact]
    public void A_callers_own_jaws_are_met_where_the_solid_part_meets_them()
    {
        Agree(Parts.Leaf with { Beam = [new(0, 0), new(0, 6), new(-25, 90), new(-60, 90), new(-20, 20), new(-60, 0)] }, false);
        Agree(Parts.Press with { Punch = [new(0, 0), new(6, 12), new(6, 60), new(-20, 60), new(-20, 40), new(-4, 25), new(-4, 8)] }, true);
    }

    private static void Agree(ProgramBrake brake, bool isPress)
    {
        var (met, cleared) = (0, 0);
        Cases.Sample(
            (part, made, fold, edge) =>
            {
                var tools = brake.ToolsFor(part);
                var folds = Enumerable.Range(0, part.Folds).Where(made.Has).ToHashSet();
                var trial = new FoldTrial(tools, brake with { PlentyMm = Plenty }, new(default), made, fold, edge);
                if (!trial.Runs || folds.Count == 0)
                    return;
                var jaws = SolidPart.Jaws(tools);
                var end = part.StopAngles[fold] + brake.OverTravel.Radians;
                if (trial.Upper is { Mm: > 0 } clearance)
                {
                    Interlocked.Increment(ref cleared);
                    Assert.True(trial.IsClear || trial.FailedCheck != "clearance-upper");
                    for (var i = 0; i <= Steps && clearance.Mm > Slack; i++)
                        Assert.False(At(end * i / Steps).IsWithinDistance(jaws, clearance.Mm - Slack), $"nearer than {clearance.Mm} at step {i}");

                    if (clearance.Nearest is not null)
                        Assert.InRange(clearance.Mm, At(clearance.AtAngle.Radians, true).Distance(jaws) - Slack, At(clearance.AtAngle.Radians).Distance(jaws) + Slack);
                }
                else
                {
                    Interlocked.Increment(ref met);
                    Assert.Equal("clearance-upper", trial.FailedCheck);

                    // Runs that overlap a jaw are a collision of their own, which the solid here leaves out.
                    Assert.True(At(trial.Upper.AtAngle.Radians, true).IsWithinDistance(jaws, Slack) || RunStrikes(trial, tools, isPress, trial.Upper.AtAngle.Radians));
                }

                Geometry At(double turn, bool withRunEnds = false) => SolidPart.Folded(part, folds, fold, edge, Math.Max(1e-6, turn), isPress, withRunEnds);
            },
            iter: 200);
        Assert.True(met > 5 && cleared > 5, $"{met} met a jaw, {cleared} cleared");
    }

    private static bool RunStrikes(FoldTrial trial, BrakeTools tools, bool isPress, double turn)
    {
        var near = 2 * tools.Part.Shape.OuterRadiusMm;
        var half = tools.Part.Shape.ThicknessMm / 2;
        var pose = trial.Placed(turn);
        return Strikes(pose.Front, trial.FrontRunMm) || (isPress && Strikes(pose.Back, trial.BackRunMm));

        bool Strikes(Point[] placed, double run) => run > near && tools.Upper.Any(jaw =>
            Distance.To(placed[0] + (near / run * (placed[1] - placed[0])), placed[1], jaw, half) < half);
    }
}
