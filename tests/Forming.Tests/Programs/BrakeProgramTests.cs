using Forming.Programs;
using Forming.Results;

namespace Forming.Tests.Programs;

/// <summary>Orders of folding on the default tools, 2 mm steel.</summary>
public class BrakeProgramTests
{
    [Theory]
    [InlineData(90, 9)]
    [InlineData(180, 17)]
    public void Forms_up_to_half_a_turn_clear_on_both_kinds_of_brake(double sweep, int folds)
    {
        foreach (var brake in new ProgramBrake[] { Parts.Leaf, Parts.Press })
        {
            var program = Parts.Program(Parts.Even(90, sweep, folds), brake);
            Assert.NotNull(program.OrderName);
            Assert.Equal(Enumerable.Range(1, folds), program.Steps.Select(step => step.Fold).Order());
            Assert.True(program.Clearance.Mm >= brake.ClearanceMm);
            Assert.DoesNotContain(program.Checks, check => check.Verdict == Verdict.Fail);
        }
    }

    [Fact]
    public void Half_a_turn_strikes_the_ram_edge_to_edge_and_clears_from_both_edges_to_the_middle()
    {
        var program = Parts.Program(Parts.Even(90, 180, 17), Parts.Press);
        var edgeToEdge = Parts.Tried(program, "edge to edge from the start edge, folded part in front");
        Assert.Equal(("clearance-upper", "ram"), (edgeToEdge.FailedCheck, edgeToEdge.Strikes));
        Assert.True(Parts.Tried(program, "edges to the middle, start edge first").IsWhole);
    }

    [Fact]
    public void Two_thirds_of_a_turn_at_a_tight_radius_are_proved_impossible_on_the_leaf_brake_and_clear_at_twice_the_radius()
    {
        var tight = Parts.Program(Parts.Even(60, 230, 20), Parts.Leaf);
        Assert.Null(tight.OrderName);
        Assert.Empty(tight.Steps);
        Assert.True(tight.Impossible!.IsProven);
        Assert.Contains(tight.Impossible.Folds, fold => fold.Strikes == "beam");
        Assert.NotNull(Parts.Program(Parts.Even(120, 230, 20), Parts.Leaf).OrderName);
    }

    [Fact]
    public void A_hoop_is_proved_impossible_on_both()
    {
        foreach (var brake in new ProgramBrake[] { Parts.Leaf, Parts.Press })
        {
            var hoop = Parts.Program(Parts.Even(90, 345, 28), brake);
            Assert.True(hoop.Impossible!.IsProven);
            Assert.All(hoop.Impossible.Folds, fold => Assert.NotEmpty(fold.Remedy.Format));
            Assert.Equal(Verdict.Fail, hoop.Checks.Single(check => check.Id == "order").Verdict);
        }
    }

    [Fact]
    public void With_the_folded_part_behind_the_nose_the_leaf_brake_fails_at_the_second_fold()
    {
        foreach (var (radius, sweep, folds) in new[] { (90.0, 90.0, 9), (90, 180, 17), (120, 230, 20) })
        {
            var program = Parts.Program(Parts.Even(radius, sweep, folds), Parts.Leaf);
            foreach (var (edge, second) in new[] { ("start", 2), ("end", folds - 1) })
            {
                var behind = Parts.Tried(program, $"edge to edge from the {edge} edge, folded part behind");
                Assert.Equal((second, "clearance-upper", "beam"), (behind.FailedFold, behind.FailedCheck, behind.Strikes));
            }
        }
    }

    [Fact]
    public void A_first_flange_shorter_than_the_dies_shoulder_needs_is_proved_impossible_at_once()
    {
        var part = Parts.Even(90, 90, 9);
        part.StraightsMm[0] = 4;
        var program = Parts.Program(part, Parts.Press with { DieOpeningMm = 12 });
        Assert.True(program.Impossible!.IsProven);
        Assert.Equal(1, program.Impossible.Folds.Single().Fold);
        Assert.Contains("-run", program.Impossible.Folds[0].Check, StringComparison.Ordinal);
    }

    // A bend of 90° over 12 mm: the trade asks 0.7 V = 8.4 mm to the fold's centre, at least 2t + r = 6 mm.
    [Theory]
    [InlineData(6.0, Verdict.Warn)]
    [InlineData(7.5, Verdict.Pass)]
    public void The_trades_shortest_flange_is_seven_tenths_of_the_opening(double flange, Verdict expected)
    {
        var part = Parts.Even(90, 90, 3);
        part.StraightsMm[0] = flange;
        var (fold, stop) = (90 * Workshop.Degree, 92 * Workshop.Degree);
        part = part with { FoldAngles = [fold], StopAngles = [stop], StraightsMm = [flange, 50] };
        var program = Parts.Program(part, Parts.Press with { DieOpeningMm = 12 });
        Assert.Equal(flange + (part.Allowance(0) / 2) < 8.4 ? Verdict.Warn : Verdict.Pass, expected);
        Assert.Equal(expected, program.Checks.Where(check => check.Id.EndsWith("-run", StringComparison.Ordinal)).Max(check => check.Verdict));
    }

    [Fact]
    public void The_same_part_gives_the_same_program()
    {
        var part = Parts.Even(100, 200, 18);
        var (one, other) = (Parts.Program(part, Parts.Press), Parts.Program(part, Parts.Press));
        Assert.Equal(one.Steps.Select(step => (step.Fold, step.EdgeInFront, step.Handling, step.Clearance)), other.Steps.Select(step => (step.Fold, step.EdgeInFront, step.Handling, step.Clearance)));
    }

    [Fact]
    public void Stop_changes_are_grouped_and_counted()
    {
        var program = Parts.Program(Parts.Even(90, 90, 9), Parts.Leaf);
        Assert.Equal(program.StopChanges + 1, program.StopGroups.Count);
        Assert.Equal(Enumerable.Range(1, 9), program.StopGroups.SelectMany(group => group.Steps));
        Assert.Equal(2, program.StopChanges);
    }

    // Where the sheet bears on both shoulders and the tip, the outside of the fold touches the shoulder's corner.
    [Fact]
    public void The_ram_comes_down_until_the_sheet_lies_on_both_shoulders()
    {
        var part = Parts.Even(90, 90, 9);
        var tools = (PressTools)Parts.Press.ToolsFor(part);
        for (var degrees = 1; degrees <= 90; degrees += 10)
        {
            var turn = degrees * Workshop.Degree;
            var outside = tools.MidRadius(0, turn) + (part.Shape.ThicknessMm / 2);
            var centre = new Point(0, outside - part.Shape.ThicknessMm);
            var shoulder = new Point(12.0 / 2, tools.DepthMm(0, turn)!.Value - part.Shape.ThicknessMm);

            // The flat beyond the fold: its outer face is the tangent of the outer arc at half the angle.
            var normal = new Point(Math.Sin(turn / 2), -Math.Cos(turn / 2));
            Assert.Equal(outside, (shoulder - centre).Dot(normal), 9);
        }
    }

    [Fact]
    public void A_search_can_be_called_off()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => BrakeProgram.Compute(Parts.Even(90, 90, 9), Parts.Leaf, null, source.Token));
    }

    // Some fold of it clears as the last, so that one look at the finished part proves nothing.
    [Fact]
    public void Without_time_to_search_an_order_is_not_found_and_never_impossible()
    {
        var program = BrakeProgram.Compute(Parts.Even(200, 270, 40), Parts.Press, TimeSpan.Zero);
        Assert.Null(program.OrderName);
        Assert.False(program.IsSearchComplete);
        Assert.False(program.Impossible!.IsProven);
        Assert.NotEmpty(program.Impossible.Folds);
        Assert.Contains("not proved", FormattableString.Invariant(program.Checks.Single(check => check.Id == "order").Message), StringComparison.Ordinal);
    }

    [Fact]
    public void More_than_half_a_turn_collides_in_one_order_and_clears_in_another()
    {
        var program = Parts.Program(Parts.Even(120, 230, 20), Parts.Press);
        Assert.Equal("clearance-upper", Parts.Tried(program, "edge to edge from the start edge, folded part in front").FailedCheck);
        Assert.True(program.Clearance.Mm >= 1);
        Assert.Equal(20, program.Steps.Count);
    }

    // Two folds of 100° and flanges of 150 mm over a flat of 40: the flanges cross at a height of 20 tan 80° = 113 mm, though the part turns by 200° only.
    [Fact]
    public void Long_flanges_cross_before_three_quarters_of_a_turn()
    {
        var fold = 100 * Workshop.Degree;
        var part = Parts.Even(90, 90, 3) with { StraightsMm = [150, 40, 150], FoldAngles = [fold, fold], StopAngles = [fold, fold] };
        var leaf = Parts.Leaf with { Beam = [new(0, 0), new(0, 5), new(-30, 5), new(-30, 0)] };
        var last = new FoldTrial(leaf.ToolsFor(part), leaf, new(default), default(FoldSet).With(0), 1, PartEdge.Start);
        Assert.True(last.Self.Mm <= 0);
        Assert.Equal("part itself", last.Self.Nearest);
        var shorter = part with { StraightsMm = [90, 40, 90] };
        Assert.True(new FoldTrial(leaf.ToolsFor(shorter), leaf, new(default), default(FoldSet).With(0), 1, PartEdge.Start).Self.Mm > 0);
    }

    [Fact]
    public void Every_step_says_all_of_itself()
    {
        var program = Parts.Program(Parts.Even(90, 180, 17), Parts.Press);
        Assert.All(program.Steps, step =>
        {
            Assert.Equal(Math.PI, step.IncludedAngle.Radians + step.FoldAngle.Radians + step.SpringbackAllowance.Radians, 12);
            Assert.Equal(Parts.Springback, step.SpringbackAllowance.Degrees, 9);
            Assert.True(step.DepthMm > 0 && step.Load.ForceN > step.Load.ForceLowN);
            Assert.NotEqual(step.EdgeInFront, step.GaugedEdge);
            string[] ids = ["front-run", "back-run", "clearance-upper", "clearance-lower", "clearance-self", "gauge-range"];
            Assert.All(ids, id => Assert.Single(step.Checks, check => check.Id == id));
        });
        Assert.Equal(16, program.Steps.Sum(step => step.Checks.Count(check => check.Id is "push" or "entry")));
        Assert.Single(program.Checks, check => check.Id == "removal");
        var drawn = program.At(program.Steps[^1], program.Steps[^1].StopAngle);
        Assert.Equal(["punch", "holder", "ram", "die", "bed"], drawn.Jaws.Select(jaw => jaw.Name));
    }

    [Fact]
    public void What_is_no_part_is_refused()
    {
        var part = Parts.Even(90, 90, 9);
        Assert.Throws<ArgumentException>(() => Parts.Program(part with { StraightsMm = [60, 60] }, Parts.Leaf));
        Assert.Throws<ArgumentException>(() => Parts.Program(part with { StopAngles = [.. part.FoldAngles.Select(_ => double.NaN)] }, Parts.Leaf));
        Assert.Throws<ArgumentException>(() => Parts.Program(Parts.Even(400, 90, FoldSet.MostFolds + 1), Parts.Leaf));
    }
}
