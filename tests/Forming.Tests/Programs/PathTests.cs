using CsCheck;
using Forming.Programs;
using Forming.Programs.Brakes;
using Forming.Programs.Motion;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;

namespace Forming.Tests.Programs;

/// <summary>Ways by which the part goes in and comes out, followed again with the solid part past the solid tools below.</summary>
public class PathTests
{
    /// <summary>A sheet slides on a tool; what goes deeper than this goes into it [mm].</summary>
    private const double Touch = 0.3;

    private const int Shares = 24;

    // 88.6° over a flat of 155 mm: pulled straight out, the flange behind went 18 mm deep through the bed.
    private static ProgramPart RemovalThroughBed => Parts.Known(
        2, 2, 52.003436503074056, 79.23358340708012, [88.6, 67.2, 64.7], [155.06103014912662, 66.09117705313267], 0.5098864643188113, 1.0053395185682295);

    // For its fourth fold this part went in 60 mm deep through the bed.
    private static ProgramPart EntryThroughBed => Parts.Known(
        3, 1, 27.04258651755729, 24.33858651755729, [61.56, 61.56, 53.758, 61.56, 61.56], [31.534173035114577, 141.39805926336126, 93.27105926336127, 32.88517303511458], 0.3399252895909629, 1.0029664077570788);

    [Fact]
    public void A_part_is_not_taken_off_through_the_bed() => KeepsClear(RemovalThroughBed, Parts.Leaf);

    [Fact]
    public void A_part_is_not_put_in_through_the_bed() => KeepsClear(EntryThroughBed, Parts.Leaf);

    [Fact]
    [Trait("Category", "Long")]
    public void What_is_put_in_and_taken_out_keeps_clear_of_bed_leaf_and_die()
    {
        var followed = 0;
        foreach (var brake in new ProgramBrake[] { Parts.Leaf, Parts.Press })
        {
            Gen.Select(Parts.Uneven(3, 5, 25, 75), Gen.Double[1, 3]).ForAll(
                (part, wider) => Interlocked.Add(ref followed, KeepsClear(part with { StraightsMm = [.. part.StraightsMm.Select(length => wider * length)] }, brake)),
                iter: 40);
        }

        Assert.True(followed > 40, $"{followed} ways followed");
    }

    // A flat part lies on bed and leaf, and its fold on the nose: sliding off them is no collision.
    [Fact]
    public void A_part_starts_on_the_nose_and_slides_off_the_bed()
    {
        foreach (var brake in new ProgramBrake[] { Parts.Leaf, Parts.Press })
        {
            var part = Parts.Even(90, 20, 3);
            var trial = new FoldTrial(brake.ToolsFor(part), brake, new(default), default, 0, PartEdge.Start);
            Assert.NotNull(trial.WayIn);
            Assert.NotNull(trial.WayOut);
        }
    }

    private static int KeepsClear(ProgramPart part, ProgramBrake brake)
    {
        var program = BrakeProgram.Compute(part, brake);
        var tools = brake.ToolsFor(part);
        var (made, followed) = (default(FoldSet), 0);
        FoldTrial? last = null;
        foreach (var step in program.Steps)
        {
            var trial = new FoldTrial(tools, brake, new(default), made, step.Fold - 1, step.EdgeInFront);
            if (step.Handling is Handling.Turn or Handling.ReEnter)
            {
                Follow(last!, last!.WayOut, last.After.Centre, part.FoldAngles[last.Fold]);
                Follow(trial, trial.WayIn, trial.Before.Centre, 0);
            }

            (made, last) = (made.With(step.Fold - 1), trial);
        }

        if (last is not null)
            Follow(last, last.WayOut, last.After.Centre, part.FoldAngles[last.Fold]);
        return followed;

        void Follow(FoldTrial trial, IReadOnlyList<RigidMove>? way, Point centre, double turn)
        {
            Assert.NotNull(way);
            followed++;
            var folds = Enumerable.Range(0, part.Folds).Where(trial.Made.Has).ToHashSet();
            var (front, back) = SolidPart.BothSides(part, folds, trial.Fold, trial.EdgeInFront, Math.Max(turn, 1e-6), brake is PressBrake);
            var below = Below(tools, part, brake, trial.Fold, turn);
            foreach (var move in way)
            {
                for (var i = 0; i <= Shares; i++)
                {
                    var share = (double)i / Shares;
                    var shift = move.ShiftFrom + (share * (move.ShiftTo - move.ShiftFrom));
                    var moved = new AffineTransformation();
                    moved.Rotate(move.TurnFrom + (share * (move.TurnTo - move.TurnFrom)), centre.X, centre.Y);
                    moved.Translate(shift.X, shift.Y);
                    foreach (var side in new[] { front, back })
                    {
                        var there = moved.Transform(side);
                        Assert.All(below, tool => Assert.False(tool.Intersects(there), $"fold {trial.Fold + 1} goes through a tool below"));
                    }
                }
            }
        }
    }

    // Outlines of their own, each smaller all round by what a touch may be.
    private static Geometry[] Below(BrakeTools tools, ProgramPart part, ProgramBrake brake, int fold, double turn)
    {
        var (r, t) = (part.Shape.RadiusMm, part.Shape.ThicknessMm);
        if (brake is not PressBrake press)
            return [Core(-120, 0, -t - 200, -t), Core(r, 90, -t - 40, -t)];
        var (half, top) = (press.DieOpeningFor(t) / 2, tools.DepthMm(fold, turn)!.Value - t);
        return [Core(-20, -half, top - 60, top), Core(half, 20, top - 60, top), Core(-45, 45, top - 260, top - 60)];

        static Geometry Core(double left, double right, double low, double high) =>
            SolidPart.Block(left + Touch, right - Touch, low + Touch, high - Touch);
    }
}
