using CsCheck;
using Forming.Checks;
using Forming.Folds;
using Forming.Programs;
using Forming.Programs.Brakes;
using Forming.Programs.Motion;
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
    [Trait("Category", "Long")]
    public void A_presss_clearance_is_that_of_the_solid_part_in_small_steps() => Agree(Parts.Press, true);

    [Fact]
    [Trait("Category", "Long")]
    public void A_callers_own_jaws_are_met_where_the_solid_part_meets_them()
    {
        Agree(Parts.Leaf with { Beam = [new(0, 0), new(0, 6), new(-25, 90), new(-60, 90), new(-20, 20), new(-60, 0)] }, false);
        Agree(Parts.Press with { Punch = [new(0, 0), new(6, 12), new(6, 60), new(-20, 60), new(-20, 40), new(-4, 25), new(-4, 8)] }, true);
    }

    // Tools below and the part itself only matter past half a turn, so these folds are large. What lies on a tool touches it: they are held a little lower.
    [Fact]
    [Trait("Category", "Long")]
    public void Tools_below_and_the_part_itself_are_met_where_the_solid_part_meets_them()
    {
        var (below, itself, cleared) = (0, 0, 0);
        foreach (var brake in new ProgramBrake[] { Parts.Leaf, Parts.Press })
        {
            Gen.Select(Parts.Uneven(4, 8, 30, 80), Gen.ULong, Gen.Bool).ForAll(
                (part, bits, isEnd) =>
                {
                    var (tools, edge, isPress) = (brake.ToolsFor(part), isEnd ? PartEdge.End : PartEdge.Start, brake is PressBrake);
                    var fold = (int)(bits % (ulong)part.Folds);
                    var made = new FoldSet((bits >> 8) & ((1UL << part.Folds) - 1)).Without(fold);
                    var folds = Enumerable.Range(0, part.Folds).Where(made.Has).ToHashSet();
                    var trial = new FoldTrial(tools, brake, new(default), made, fold, edge);
                    if (!trial.Runs || folds.Count == 0)
                        return;
                    var end = part.StopAngles[fold] + brake.OverTravel.Radians;
                    if (trial.Lower.Mm <= 0)
                    {
                        Interlocked.Increment(ref below);
                        Assert.True(Below(trial.Lower.AtAngle.Radians, true, _ => true) <= Slack);
                    }

                    if (trial.Self.Mm <= 0)
                    {
                        Interlocked.Increment(ref itself);
                        Assert.True(Itself(trial.Self.AtAngle.Radians) <= Slack);
                    }

                    for (var i = 0; i <= Steps / 2; i++)
                    {
                        var turn = end * i / (Steps / 2);
                        if (trial.Lower.Mm > Slack)
                            Assert.True(Below(turn, false, kind => kind != JawKind.Leaf) > 0, $"a tool below is struck at {turn}");
                        if (trial.Self.Mm > Slack)
                            Assert.True(Itself(turn) > 0, $"the part strikes itself at {turn}");
                    }

                    if (trial.Lower.Mm > Slack && trial.Self.Mm > Slack)
                        Interlocked.Increment(ref cleared);

                    // The leaf's pivot is not the fold's centre, so that the sheet that lies on it sinks in by its inside radius times 1 - cos θ.
                    double Below(double turn, bool withRunEnds, Func<JawKind, bool> counts) =>
                        SolidPart.Folded(part, folds, fold, edge, Math.Max(1e-6, turn), isPress, withRunEnds).Distance(SolidPart.Jaws(tools.Lower(fold, turn).Where(jaw => counts(jaw.Kind)).Select(jaw => jaw.Moved(new(0, -Slack / 2)))));

                    // The runs meet at the fold itself: one side without its run is held against the whole other side.
                    double Itself(double turn)
                    {
                        var at = Math.Max(1e-6, turn);
                        var (front, back) = SolidPart.BothSides(part, folds, fold, edge, at, isPress);
                        var (frontPast, backPast) = SolidPart.PastRuns(part, folds, fold, edge, at, isPress);
                        return Math.Min(Apart(frontPast, back), Apart(front, backPast));
                    }

                    static double Apart(Geometry one, Geometry other) => one.IsEmpty || other.IsEmpty ? double.PositiveInfinity : one.Distance(other);
                },
                iter: 150);
        }

        Assert.True(below > 0 && itself > 0 && cleared > 0, $"{below} met a tool below, {itself} themselves, {cleared} cleared");
    }

    private static void Agree(ProgramBrake brake, bool isPress)
    {
        var (met, cleared) = (0, 0);
        Cases.ForAll(
            (part, made, fold, edge) =>
            {
                var tools = brake.ToolsFor(part);
                var folds = Enumerable.Range(0, part.Folds).Where(made.Has).ToHashSet();
                var trial = new FoldTrial(tools, brake with { PlentyMm = Plenty }, new(default), made, fold, edge);
                if (!trial.Runs || folds.Count == 0)
                    return;
                var jaws = SolidPart.Jaws(tools.Upper);
                var end = part.StopAngles[fold] + brake.OverTravel.Radians;
                if (trial.Upper is { Mm: > 0 } clearance)
                {
                    Interlocked.Increment(ref cleared);
                    Assert.True(trial.IsClear || trial.FailedCheck != CheckIds.ClearanceUpper);
                    for (var i = 0; i <= Steps && clearance.Mm > Slack; i++)
                        Assert.False(At(end * i / Steps).IsWithinDistance(jaws, clearance.Mm - Slack), $"nearer than {clearance.Mm} at step {i}");

                    if (clearance.Nearest is not null)
                        Assert.InRange(clearance.Mm, At(clearance.AtAngle.Radians, true).Distance(jaws) - Slack, At(clearance.AtAngle.Radians).Distance(jaws) + Slack);
                }
                else
                {
                    Interlocked.Increment(ref met);
                    Assert.Equal(CheckIds.ClearanceUpper, trial.FailedCheck);

                    // Runs that overlap a jaw are a collision of their own, which the solid here leaves out.
                    Assert.True(At(trial.Upper.AtAngle.Radians, true).IsWithinDistance(jaws, Slack) || RunStrikes(trial, tools, isPress, trial.Upper.AtAngle.Radians));
                }

                Geometry At(double turn, bool withRunEnds = false) => SolidPart.Folded(part, folds, fold, edge, Math.Max(1e-6, turn), isPress, withRunEnds);
            },
            iter: 300);
        Assert.True(met > 0 && cleared > 0, $"{met} met a jaw, {cleared} cleared");
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
