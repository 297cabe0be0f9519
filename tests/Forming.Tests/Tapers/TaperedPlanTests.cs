using CsCheck;
using Forming.Curves;
using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Plans;
using Forming.Results;
using Forming.Springback;

namespace Forming.Tests.Tapers;

public class TaperedPlanTests
{
    [Theory]
    [InlineData(SteppingRule.EqualAngle, SteppingEnds.Half)]
    [InlineData(SteppingRule.EqualAngle, SteppingEnds.Full)]
    [InlineData(SteppingRule.EqualSpacing, SteppingEnds.Half)]
    public void A_taper_with_equal_ends_is_the_straight_form(SteppingRule rule, SteppingEnds ends)
    {
        var stepping = new Stepping { Rule = rule, Ends = ends };
        var arc = TaperJobs.Arc(90, 90);
        var tapered = TaperJobs.Plan(new TaperCurve(arc, arc, 600, TaperPlacement.Flush, default), stepping);
        var straight = TaperJobs.Plan(arc, stepping);

        Assert.Equal(straight.Form.Sweep.Radians, tapered.Form.Sweep.Radians, 1e-9);
        Assert.Equal(straight.Form.Stations.Count, tapered.Form.Stations.Count);
        Assert.Equal(straight.Panel.Blank.LengthMm, tapered.Panel.Blank.LengthMm, 1e-9);
        Assert.Equal(straight.Panel.Blank.AreaMm2, tapered.Panel.Blank.AreaMm2, 1e-6);
        if (rule == SteppingRule.EqualSpacing)
            return; // a straight form is evened out on the flat as well
        Assert.Equal(straight.Form.Blank.LengthMm, tapered.Form.Blank.LengthMm, 1e-9);
        foreach (var (expected, station) in straight.Form.Stations.Zip(tapered.Form.Stations))
        {
            Assert.Equal(expected.AtMm, station.AtMm, 1e-9);
            Assert.Equal(expected.AtMm, station.Line!.BaseFarMm, 1e-9);
            Assert.Equal(expected.FoldAngle.Radians, station.FoldAngle.Radians, 1e-9);
            Assert.Equal(expected.StopAngle!.Value.Radians, station.StopAngle!.Value.Radians, 1e-9);
            Assert.Equal(expected.FacetAfterMm, station.FacetAfterMm, 1e-9);
        }
    }

    [Fact]
    public void Refolding_a_flat_taper_meets_its_fold_lines()
    {
        TaperJobs.AnyTaper.ForAll(
            taper =>
            {
                if (TaperJobs.TryPlan(taper) is { } plan)
                    Assert.True(plan.Form.FoldBackMissMm < 1e-6, $"{plan.Form.FoldBackMissMm}");
            },
            iter: 20);
    }

    [Fact]
    public void The_flat_is_its_quadrilaterals_its_bend_strips_and_its_leads()
    {
        TaperJobs.AnyTaper.ForAll(
            taper =>
            {
                if (TaperJobs.TryPlan(taper) is not { } plan)
                    return;
                var fold = new FoldShape(2, 2, plan.Form.NeutralFactor);
                var stations = plan.Form.Stations;
                var lines = stations.Select(station => station.Line!).ToArray();
                double area = (60 - fold.Setback(stations[0].FoldAngle.Radians)) * lines[0].LengthMm;
                area += (60 - fold.Setback(stations[^1].FoldAngle.Radians)) * lines[^1].LengthMm;
                for (var j = 0; j < lines.Length; j++)
                {
                    area += fold.BendAllowance(stations[j].FoldAngle.Radians) * lines[j].LengthMm;
                    if (j + 1 < lines.Length)
                        area += Quadrilateral(lines[j].SecondTangentNear, lines[j + 1].FirstTangentNear, lines[j + 1].FirstTangentFar, lines[j].SecondTangentFar);
                }

                Assert.Equal(1, plan.Form.Blank.AreaMm2 / area, 1e-9);
            },
            iter: 20);
    }

    [Fact]
    public void More_folds_bring_the_planes_to_the_rulings_by_the_cube_of_the_fold_angle()
    {
        var taper = new TaperCurve(
            TaperJobs.Arc(150, 120), new EllipseCurve(200, 120, Angle.FromDegrees(-30), Angle.FromDegrees(90)), 600, TaperPlacement.Concentric, default);
        var coarse = TaperJobs.Plan(taper, new() { Folds = 11 }, new MeasuredFactor(0.8)).Taper!;
        var fine = TaperJobs.Plan(taper, new() { Folds = 21 }, new MeasuredFactor(0.8)).Taper!;

        Assert.InRange(coarse.TouchMissMm / fine.TouchMissMm, 6, 18);
        Assert.True(coarse.TouchMissMm < 0.02);
    }

    [Fact]
    public void Every_ruling_is_held_to_its_stricter_end()
    {
        var plan = TaperJobs.Plan(TaperJobs.Cone(60, 120, 400), new() { Rule = SteppingRule.FewestFolds });
        var equal = TaperJobs.Plan(TaperJobs.Cone(60, 120, 400));

        Assert.True(plan.Form.Stations.Count <= equal.Form.Stations.Count);
        Assert.True(plan.Panel.PrintThrough.Known);
        Assert.True(plan.Panel.PrintThrough.RippleMm <= 0.1 && plan.Panel.PrintThrough.Slope!.Value.Degrees <= 1.25);
    }

    [Fact]
    public void Released_moments_balance_along_a_cone_so_its_ends_pull_opposite_ways()
    {
        var taper = TaperJobs.Plan(TaperJobs.Cone(60, 120, 400)).Taper!;

        Assert.True(taper.EndBiasNear > 0 && taper.EndBiasFar < 0);
        Assert.Equal(0, TaperJobs.Plan(TaperJobs.Cone(90, 90, 400)).Taper!.EndBiasNear, 1e-12);
    }

    [Fact]
    public void Rulings_that_meet_inside_the_panel_are_refused_with_the_place()
    {
        // Measured outside, a far radius below half the thickness leaves the mid surface no width there: the apex lies inside.
        // Width along the ruling falls from about 59.4 to about -0.1 over 400, so they meet at about 400 × 59.4/59.5.
        var taper = TaperJobs.Cone(60, 0.5, 400);
        var panel = TaperJobs.Panel(taper) with { Surface = Surface.Outside };

        var refusal = Assert.Throws<NoSolutionException>(
            () => FormPlan.Compute(new FormJob(panel, TaperJobs.Form, new BrakeSpec { LengthMm = 1250 }, TaperJobs.Marks)));

        Assert.Equal("taper.rulings-cross", refusal.Code);
        var meets = Assert.IsType<Figure>(refusal.Wording.GetArgument(0));
        Assert.Equal(400 * 59.4 / 59.5, meets.Value, 0.1);
    }

    [Fact]
    public void Different_sweeps_are_refused()
    {
        var taper = new TaperCurve(TaperJobs.Arc(60, 90), TaperJobs.Arc(120, 80), 400, TaperPlacement.Concentric, default);

        Assert.Equal("taper.sweeps-differ", Assert.Throws<NoSolutionException>(() => TaperJobs.Plan(taper)).Code);
    }

    // Φ/225 of 60° is 0.267°; the clothoid's radius is there √225 times that of its other end.
    [Fact]
    public void A_flat_end_is_refused_with_where_to_start_instead()
    {
        var flat = new ProgressiveCurve(null, 100, Angle.FromDegrees(60), ProgressiveLaw.Clothoid);
        var taper = new TaperCurve(TaperJobs.Arc(150, 60), flat, 400, TaperPlacement.Flush, default);

        var refusal = Assert.Throws<NoSolutionException>(() => TaperJobs.Plan(taper));

        Assert.Equal(("taper.end-curve", "panel.curve.far"), (refusal.Code, refusal.Subject));
        Assert.Equal(["panel.curve.near.sweep", "panel.curve.far.startRadius", "panel.curve.far.sweep"], refusal.Remedy!.Changes.Select(change => change.Subject));
        Assert.Equal((60 - (60 / 225.0)) * TaperJobs.Degree, refusal.Remedy!.Changes[0].Value, 1e-9);
        Assert.Equal(1500, refusal.Remedy!.Changes[1].Value, 1e-9);
        Assert.Equal((60 - (60 / 225.0)) * TaperJobs.Degree, refusal.Remedy!.Changes[2].Value, 1e-9);
    }

    [Fact]
    public void What_is_offered_in_place_of_a_flat_end_can_be_planned_and_follows_the_curve() => Gen.Select(
        Gen.Double[80, 200], Gen.Double[80, 200], Gen.Double[40, 100], Gen.Int[0, 5], Gen.Double[400, 800]).ForAll(
        (near, far, sweep, kind, length) =>
        {
            var turn = Angle.FromDegrees(sweep);
            ProgressiveCurve starts = new(null, near, turn, ProgressiveLaw.Clothoid), ends = new(far, null, turn, ProgressiveLaw.Clothoid);
            PanelCurve other = kind switch
            {
                0 => new ProgressiveCurve(null, far, turn, ProgressiveLaw.Clothoid),
                1 => TaperJobs.Arc(far, sweep),
                2 => new ProgressiveCurve(far, near, turn, ProgressiveLaw.Involute),
                3 => new EllipseCurve(far, near, Angle.FromDegrees(-10), Angle.FromDegrees(sweep - 10)),
                4 => new ProgressiveCurve(far, near, turn, ProgressiveLaw.Logarithmic),
                _ => ends,
            };
            var taper = new TaperCurve(starts, other, length, TaperPlacement.Flush, default);
            var changes = Assert.Throws<NoSolutionException>(() => TaperJobs.Plan(taper)).Remedy!.Changes.ToDictionary(change => change.Subject, change => change.Value);
            var cut = new TaperCurve(Changed(starts, "near"), Changed(other, "far"), length, TaperPlacement.Flush, default);
            Assert.NotNull(TaperJobs.Plan(cut, new() { Folds = 9 }).Taper);
            // The curve that is left is the one that was asked for.
            foreach (var (before, after) in new[] { (starts, cut.Near), (other, cut.Far) })
            {
                BendSpan whole = CurveSpans.BendOf(before, "whole")!, left = CurveSpans.BendOf(after, "left")!;
                var from = turn.Radians / 225;
                Assert.Equal(1, whole.RadiusAtTurn(from + (left.Sweep.Radians / 3)) / left.RadiusAtTurn(left.Sweep.Radians / 3), 1e-9);
            }

            PanelCurve Changed(PanelCurve curve, string end)
            {
                Angle Turned(string field) => new(changes[$"panel.curve.{end}.{field}"]);
                double? Radius(string field, double? now) => changes.TryGetValue($"panel.curve.{end}.{field}", out var value) ? value : now;
                return curve switch
                {
                    ProgressiveCurve bend =>
                        new ProgressiveCurve(Radius("startRadius", bend.StartRadiusMm), Radius("endRadius", bend.EndRadiusMm), Turned("sweep"), bend.Law),
                    ArcCurve arc => arc with { Sweep = Turned("sweep") },
                    EllipseCurve ellipse => ellipse with { FromNormal = Turned("fromNormal"), ToNormal = Turned("toNormal") },
                    _ => curve,
                };
            }
        },
        iter: 6);

    [Fact]
    public void A_mirrored_taper_needs_an_opposite_hand_form_and_twice_the_blank()
    {
        var taper = TaperJobs.Cone(60, 120, 400);
        var single = TaperJobs.Plan(taper);
        var mirrored = FormPlan.Compute(new FormJob(
            TaperJobs.Panel(taper) with { Mirrored = true }, TaperJobs.Form, new BrakeSpec { LengthMm = 1250 }, TaperJobs.Marks));

        Assert.Contains(mirrored.ShopNotes, note => note.Id == "opposite-hand");
        Assert.DoesNotContain(single.ShopNotes, note => note.Id == "opposite-hand");

        // Both curves and both lead-ins, and the flat between them measured on a symmetric cone half-way up its rulings.
        var slant = Math.Sqrt((60 * 60) + (400 * 400));
        Assert.InRange(mirrored.Panel.Blank.AreaMm2 / ((2 * (single.Panel.Blank.AreaMm2 - (150 * slant))) + (150 * slant)), 0.9, 1.1);
    }

    private static double Quadrilateral(Point a, Point b, Point c, Point d) => Math.Abs((c - a).Cross(d - b)) / 2;
}
