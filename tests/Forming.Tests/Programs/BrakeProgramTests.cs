using Forming.Checks;
using Forming.Folds;
using Forming.Programs;
using Forming.Programs.Brakes;

namespace Forming.Tests.Programs;

/// <summary>Orders of folding on the default tools, 2 mm steel.</summary>
public class BrakeProgramTests
{
    [Theory]
    [InlineData(90, 9)]
    [InlineData(180, 17)]
    [Trait("Category", "Long")]
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
        Assert.Equal(("clearance-upper", JawKind.Ram), (edgeToEdge.FailedCheck, edgeToEdge.Strikes));
        Assert.True(Parts.Tried(program, "edges to the middle, start edge first").IsWhole);
    }

    [Fact]
    public void Two_thirds_of_a_turn_at_a_tight_radius_are_proved_impossible_on_the_leaf_brake_and_clear_at_twice_the_radius()
    {
        var tight = Parts.Program(Parts.Even(60, 230, 20), Parts.Leaf);
        Assert.Null(tight.OrderName);
        Assert.Empty(tight.Steps);
        Assert.True(tight.Impossible!.IsProven);
        Assert.Contains(tight.Impossible.Folds, fold => fold.Strikes == JawKind.Beam);
        Assert.NotNull(Parts.Program(Parts.Even(120, 230, 20), Parts.Leaf).OrderName);
    }

    [Fact]
    public void A_hoop_is_proved_impossible_on_both()
    {
        foreach (var brake in new ProgramBrake[] { Parts.Leaf, Parts.Press })
        {
            var hoop = Parts.Program(Parts.Even(90, 345, 28), brake);
            Assert.True(hoop.Impossible!.IsProven);
            Assert.All(hoop.Impossible.Folds, fold => Assert.NotEmpty(fold.Remedy.Text.Format));
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
                Assert.Equal((second, "clearance-upper", JawKind.Beam), (behind.FailedFold, behind.FailedCheck, behind.Strikes));
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

    // A search that is cut short is cut where its work ends, not where some clock stands: many at once on a busy machine come to the same.
    [Fact]
    [Trait("Category", "Long")]
    public void A_search_that_runs_out_of_work_ends_at_the_same_order_on_a_busy_machine()
    {
        var part = Parts.Even(200, 180, 40);
        using var stop = new CancellationTokenSource();
        Thread[] busy = [.. Enumerable.Range(0, 2).Select(_ => new Thread(() => { while (!stop.IsCancellationRequested) { } }))];
        foreach (var thread in busy)
            thread.Start();
        var programs = new BrakeProgram[4];
        Parallel.For(0, programs.Length, i => programs[i] = BrakeProgram.Compute(part, Parts.Press, mostWork: 20_000_000));
        stop.Cancel();
        Assert.All(programs, program => Assert.False(program.IsSearchComplete));
        Assert.Single(programs.Select(Said).Distinct());

        static string Said(BrakeProgram program) => string.Join('\n', program.Steps.Select(step => $"{step.Fold} {step.EdgeInFront} {step.Handling} {step.Clearance}"))
            + string.Join('\n', program.OrdersTried) + string.Join('\n', program.Checks.Select(check => $"{check.Id} {check.Value:R}"));
    }

    // 5 t is where the warning begins; the force is then k UTS W t²/V with a k that was found at 8 t.
    [Theory]
    [InlineData(9.9, Verdict.Warn)]
    [InlineData(10.0, Verdict.Pass)]
    public void A_die_narrower_than_five_thicknesses_is_warned_of_because_its_force_is_too_low(double opening, Verdict expected)
    {
        var program = Parts.Program(Parts.Even(90, 90, 9), Parts.Press with { DieOpeningMm = opening });
        Assert.Equal(expected, program.Checks.Single(check => check.Id == "die-opening").Verdict);
        Assert.DoesNotContain(Parts.Program(Parts.Even(90, 90, 9), Parts.Leaf).Checks, check => check.Id == "die-opening");
    }

    [Fact]
    public void A_brake_without_a_rating_is_cautioned_of_and_one_with_a_rating_is_not()
    {
        var part = Parts.Even(90, 90, 9);
        Assert.Contains(Parts.Program(part, Parts.Leaf).Safety, note => note.Id == "brake-rating");
        Assert.Contains(Parts.Program(part, Parts.Press).Safety, note => note.Id == "brake-rating");
        Assert.DoesNotContain(Parts.Program(part, Parts.Leaf with { Capacity = new(4, 330) }).Safety, note => note.Id == "brake-rating");
        Assert.DoesNotContain(Parts.Program(part, Parts.Press with { ForceCapacityN = 1e6 }).Safety, note => note.Id == "brake-rating");
    }

    [Fact]
    public void Gloves_come_off_at_a_closing_machine_wherever_they_are_spoken_of()
    {
        var part = Parts.Even(90, 90, 9);
        var notes = Parts.Program(part, Parts.Leaf).Safety
            .Concat(Parts.Program(part, Parts.Press).Safety)
            .Concat(Workshop.Plan(Workshop.Panel(Workshop.Arc(90, 90))).Safety)
            .Select(note => FormattableString.Invariant(note.Text))
            .Where(text => text.Contains("glove", StringComparison.OrdinalIgnoreCase))
            .ToArray();
        Assert.NotEmpty(notes);
        Assert.All(notes, text => Assert.Contains("Take gloves off before working a brake", text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_heavy_handle_takes_two_people_and_never_a_longer_handle()
    {
        var check = Parts.Program(Parts.Even(90, 90, 9), Parts.Leaf with { LeverMm = 200 }).Checks.Single(check => check.Id == "handle-force");
        Assert.Equal(Verdict.Warn, check.Verdict);
        Assert.Contains("never a longer handle", FormattableString.Invariant(check.Remedy!.Text), StringComparison.Ordinal);
    }

    [Fact]
    public void Capacity_is_a_share_of_the_rating()
    {
        var byForce = Parts.Program(Parts.Even(90, 90, 9), Parts.Press with { ForceCapacityN = 100_000 });
        var check = byForce.Checks.Single(check => check.Id == "capacity");
        Assert.Equal(byForce.Steps[0].Load.ForceN!.Value / 100_000, check.Value!.Value, 12);
        Assert.Equal(1, check.Limit);
    }

    [Fact]
    public void Steps_and_groups_set_the_stop_alike_and_say_what_rounding_adds_up_to()
    {
        foreach (var rounding in new[] { StopRounding.Each, StopRounding.Sum })
        {
            var part = Parts.Even(90, 90, 9) with { StopResolution = Angle.FromDegrees(0.7), StopSlope = 1.1, Rounding = rounding };
            var program = Parts.Program(part, Parts.Leaf);
            foreach (var group in program.StopGroups)
                Assert.All(group.Steps, number => Assert.Equal(group.Setting, program.Steps[number - 1].StopSetting));
            Assert.All(program.Steps, step => Workshop.Within(1e-9, Math.Round(step.StopSetting.Degrees / 0.7), step.StopSetting.Degrees / 0.7));
            Workshop.Within(1e-12, program.Steps.Sum(step => step.StopSetting.Radians - step.StopAngle.Radians) / 1.1, program.StopRounding.Radians);
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
        Assert.Throws<OperationCanceledException>(() => BrakeProgram.Compute(Parts.Even(90, 90, 9), Parts.Leaf, cancellation: source.Token));
    }

    // Some fold of it clears as the last, so that one look at the finished part proves nothing.
    [Fact]
    public void Without_work_granted_to_search_an_order_is_not_found_and_never_impossible()
    {
        var program = BrakeProgram.Compute(Parts.Even(200, 270, 40), Parts.Press, mostWork: 0);
        Assert.Null(program.OrderName);
        Assert.False(program.IsSearchComplete);
        Assert.False(program.Impossible!.IsProven);
        Assert.NotEmpty(program.Impossible.Folds);
        Assert.Contains("not proved", FormattableString.Invariant(program.Checks.Single(check => check.Id == "order").Text), StringComparison.Ordinal);
    }

    [Fact]
    [Trait("Category", "Long")]
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
        Assert.Equal(JawKind.Part, last.Self.Nearest);
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
        Assert.Equal([JawKind.Punch, JawKind.Holder, JawKind.Ram, JawKind.Die, JawKind.Bed], drawn.Jaws.Select(jaw => jaw.Kind));
    }

    [Fact]
    public void A_step_is_drawn_alike_however_often_and_by_however_many_it_is_asked_for()
    {
        var program = Parts.Program(Parts.Even(90, 90, 9), Parts.Press);
        var alone = program.Steps.Select(Drawn).ToArray();
        Parallel.For(0, 4 * alone.Length, i => Assert.Equal(alone[i % alone.Length], Drawn(program.Steps[i % alone.Length])));

        string Drawn(ProgramStep step)
        {
            var placed = program.At(step, step.StopAngle);
            return string.Join(' ', placed.Back.Concat(placed.Front).Concat(placed.Jaws.SelectMany(jaw => jaw.Outline)));
        }
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
