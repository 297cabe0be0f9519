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
        var program = Parts.Program(Parts.Even(90, 90, 9), Parts.Leaf);
        Assert.Equal(2, Parts.Tried(program, "edge to edge from the start edge, folded part behind").FailedFold);
        Assert.Equal(8, Parts.Tried(program, "edge to edge from the end edge, folded part behind").FailedFold);
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
    public void The_order_found_is_no_worse_than_any_named_one_that_clears()
    {
        foreach (var (radius, sweep, folds) in new[] { (90.0, 180.0, 17), (120, 230, 20), (90, 90, 9), (70, 150, 12) })
        {
            foreach (var brake in new ProgramBrake[] { Parts.Leaf, Parts.Press })
            {
                var program = Parts.Program(Parts.Even(radius, sweep, folds), brake);
                Assert.All(program.OrdersTried.Where(order => order.IsWhole), order =>
                {
                    Assert.True(program.HandlingCost <= order.HandlingCost);
                    Assert.True(program.HandlingCost < order.HandlingCost || program.StopChanges >= 0);
                });
            }
        }
    }

    [Fact]
    public void The_same_part_gives_the_same_program()
    {
        var part = Parts.Even(100, 200, 18);
        var (one, other) = (Parts.Program(part, Parts.Press), Parts.Program(part, Parts.Press));
        Assert.Equal(one.Steps.Select(step => (step.Fold, step.EdgeInFront, step.Handling, step.Clearance)), other.Steps.Select(step => (step.Fold, step.EdgeInFront, step.Handling, step.Clearance)));
    }

    // Measured on the part as it lies: from the line to the edge that lies against the stop.
    [Fact]
    public void Gauge_distances_are_those_of_the_partly_folded_part()
    {
        foreach (var brake in new ProgramBrake[] { Parts.Leaf, Parts.Press })
        {
            var part = Parts.Even(100, 160, 15);
            var program = Parts.Program(part, brake);
            Assert.All(program.Steps.Where(step => step.Gauge.By == GaugedBy.Flat), step =>
            {
                var placed = program.At(step, Angle.Zero);
                var line = brake is LeafBrake ? part.Shape.RadiusMm : 0;
                Assert.Equal(line - placed.Back.Min(point => point.X), step.Gauge.DistanceMm, 9);
            });
            Assert.Contains(program.Steps, step => step.Gauge.By == GaugedBy.Flat);
        }
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

    [Fact]
    public void Past_its_deadline_the_search_says_not_found_and_never_impossible()
    {
        var program = BrakeProgram.Compute(Parts.Even(60, 230, 20, lead: 20), Parts.Leaf with { Beam = [new(0, 0), new(0, 400), new(-30, 400), new(-30, 0)] }, TimeSpan.Zero);
        Assert.Null(program.OrderName);
        Assert.False(program.Impossible!.IsProven && program.Impossible.Folds.Count == 0);
    }
}
