using CsCheck;
using Forming.Checks;
using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Layout;
using Forming.Results;
using Forming.Springback;

namespace Forming.Tests.Facets;

/// <summary>Where the folds go.</summary>
public class SteppingTests
{
    private static readonly PanelSpec Arc = Workshop.Panel(Workshop.Arc(90, 90));
    private static readonly PanelSpec Opening = Workshop.Panel(Workshop.Progressive(60, 240, 90, ProgressiveLaw.Involute));
    private static readonly BrakeSpec Fine = Workshop.Brake with { MinFacetMm = 1 };

    /// <summary>A tape so coarse that no spacing is corrected to it.</summary>
    private static readonly MarkSpec Uncorrected = new(Datum.Edge, new Tape(LengthUnit.Mm, 20));

    [Theory]
    [InlineData(SteppingRule.EqualAngle, SteppingEnds.Half)]
    [InlineData(SteppingRule.EqualAngle, SteppingEnds.Full)]
    [InlineData(SteppingRule.EqualSpacing, SteppingEnds.Half)]
    [InlineData(SteppingRule.EqualSpacing, SteppingEnds.Full)]
    [InlineData(SteppingRule.FewestFolds, SteppingEnds.Half)]
    [InlineData(SteppingRule.FewestFolds, SteppingEnds.Full)]
    public void Fold_angles_add_up_to_the_form_sweep(SteppingRule rule, SteppingEnds ends)
    {
        foreach (var panel in new[] { Arc, Opening })
        {
            var form = Workshop.Plan(panel, Workshop.Form(new() { Rule = rule, Ends = ends })).Form;
            Workshop.Within(1e-13 * form.Stations.Count, form.Sweep.Radians, form.Stations.Sum(station => station.FoldAngle.Radians));
            Workshop.Within(1e-12, form.Sweep.Radians, form.Stations[^1].RunningAngle.Radians);
        }
    }

    [Fact]
    public void Stretches_that_need_more_folds_together_than_any_form_has_are_refused()
    {
        // Some hundred folds each: one after the other they would go, all of them not.
        PanelCurve[] stretches = [.. Enumerable.Range(0, 20).SelectMany(_ => new PanelCurve[] { Workshop.Arc(20_000, 12), new FlatCurve(10) })];
        var stepping = new Stepping { Rule = SteppingRule.EqualSpacing, MaxFacetMm = 20 };
        var one = Workshop.Plan(Workshop.Panel(new SegmentsCurve(stretches[..2])), Workshop.Form(stepping), Fine).Form;
        Assert.InRange(one.Stations.Count, 100, 500);
        var none = Assert.Throws<NoSolutionException>(() => Workshop.Plan(Workshop.Panel(new SegmentsCurve(stretches)), Workshop.Form(stepping), Fine));
        Assert.Equal("stepping.too-many-folds", none.Code);
    }

    [Theory]
    [InlineData(SteppingRule.EqualAngle)]
    [InlineData(SteppingRule.EqualSpacing)]
    public void Half_ends_fold_about_half_at_both_tangent_points_and_leave_the_flats_tangent(SteppingRule rule)
    {
        var form = Workshop.Plan(Arc, Workshop.Form(new() { Rule = rule, Folds = 13 })).Form;
        var inner = form.Stations[5].FoldAngle.Radians;
        Workshop.Near(inner / 2, form.Stations[0].FoldAngle.Radians, 0.02);
        Workshop.Near(inner / 2, form.Stations[^1].FoldAngle.Radians, 0.02);
        Assert.Equal(0, form.Stepping.FlatInsideTangentMm);

        var (vertices, curve) = (form.Section.Vertices, form.Section.ContactCurve);
        Workshop.Within(1e-9, 0, vertices[0].Y);
        var heading = Point.Along(form.Sweep.Radians);
        Workshop.Within(1e-9, 0, heading.Cross(curve[^1] - vertices[^1]));
        Workshop.Within(1e-9, 0, heading.Cross(vertices[^1] - vertices[^2]));
    }

    [Fact]
    public void Half_folds_on_an_arc_are_exactly_half()
    {
        var form = Workshop.Plan(Arc, Workshop.Form(new() { Folds = 13 })).Form;
        var whole = form.Sweep.Radians / 12;
        Workshop.Near(whole / 2, form.Stations[0].FoldAngle.Radians, 1e-11);
        Workshop.Near(whole / 2, form.Stations[^1].FoldAngle.Radians, 1e-11);
        Assert.All(form.Stations.Skip(1).SkipLast(1), station => Workshop.Near(whole, station.FoldAngle.Radians, 1e-11));
        Workshop.Within(1e-11, 0, form.Stepping.AngleSpread.Radians);
    }

    // On an arc all folds are alike and the flats lie (rho - p)(1 - cos(a/2)) inside the tangent, p the folds' outside radius.
    [Fact]
    public void Full_ends_fold_alike_everywhere_and_lie_inside_the_tangent()
    {
        var form = Workshop.Plan(Arc, Workshop.Form(new() { Folds = 12, Ends = SteppingEnds.Full })).Form;
        var angle = form.Sweep.Radians / 12;
        Assert.All(form.Stations, station => Workshop.Near(angle, station.FoldAngle.Radians, 1e-11));

        var inside = (form.Stations[0].RadiusMm!.Value - 4) * (1 - Math.Cos(angle / 2));
        Workshop.Near(inside, form.Stepping.FlatInsideTangentMm, 1e-9);
        Workshop.Near(inside, form.Section.Vertices[0].Y, 1e-9);
        Assert.True(inside > 0.1);
    }

    [Fact]
    public void Every_fold_touches_the_contact_curve_from_inside()
    {
        var form = Workshop.Plan(Arc, Workshop.Form(new() { Folds = 9 })).Form;
        var radius = form.Stations[0].RadiusMm!.Value;
        var half = form.Sweep.Radians / 8 / 2;
        // Mold lines of whole folds stand p (sec(a/2) - 1) outside the contact circle, middles of facets (rho - p)(1 - cos(a/2)) inside it.
        foreach (var vertex in form.Section.Vertices.Skip(2).SkipLast(2))
            Workshop.Near(radius - 4 + (4 / Math.Cos(half)), (vertex - new Point(0, radius)).Length, 1e-10);
        for (var i = 3; i < form.Section.Vertices.Count - 3; i++)
        {
            var middle = 0.5 * (form.Section.Vertices[i] + form.Section.Vertices[i - 1]);
            Workshop.Near(((radius - 4) * Math.Cos(half)) + 4, (middle - new Point(0, radius)).Length, 1e-10);
        }
    }

    [Theory]
    [InlineData(SteppingEnds.Half)]
    [InlineData(SteppingEnds.Full)]
    public void Equal_spacing_is_equal_to_the_marks_resolution_even_where_the_radius_opens_fourfold(SteppingEnds ends)
    {
        foreach (var resolution in new[] { 0.5, 0.1, 0.01 })
        {
            var marks = new MarkSpec(Datum.Edge, new Tape(LengthUnit.Mm, resolution));
            var form = Workshop.Plan(Opening, Workshop.Form(new() { Rule = SteppingRule.EqualSpacing, Ends = ends, Folds = 10 }), Fine, marks).Form;
            var spacings = form.Stations.Zip(form.Stations.Skip(1), (a, b) => b.AtMm - a.AtMm).ToArray();
            Assert.InRange(spacings.Max() - spacings.Min(), 0, resolution + 1e-9);
            Workshop.Within(1e-9, spacings.Max() - spacings.Min(), form.Stepping.SpacingSpreadMm);
        }
    }

    // The form's own curve opens from 100 to 400 mm over a quarter turn, 10 folds, radius linear in the turn.
    [Theory]
    [InlineData(SteppingEnds.Half, 0.1, 0.5)]
    [InlineData(SteppingEnds.Full, 0.125, 0.06)]
    public void Uncorrected_densities_come_out_nearly_equal_by_themselves(SteppingEnds ends, double plusMinusDegrees, double spacingSpread)
    {
        var panel = Workshop.Panel(Workshop.Progressive(100, 400, 90, ProgressiveLaw.Involute)) with { Springback = new MeasuredFactor(1) };
        var byAngle = Workshop.Plan(panel, Workshop.Form(new() { Ends = ends, Folds = 10 }), Fine, Uncorrected).Form.Stepping;
        Assert.InRange(byAngle.AngleSpread.Degrees, 0, 2 * plusMinusDegrees);
        var bySpacing = Workshop.Plan(
            panel, Workshop.Form(new() { Rule = SteppingRule.EqualSpacing, Ends = ends, Folds = 10 }), Fine, Uncorrected).Form.Stepping;
        Assert.InRange(bySpacing.SpacingSpreadMm, 0, spacingSpread);
    }

    [Fact]
    public void Equal_angles_on_an_opening_radius_spread_the_marks()
    {
        var stations = Workshop.Plan(Opening, Workshop.Form(new() { Folds = 12 }), Fine).Form.Stations;
        for (var i = 2; i < stations.Count; i++)
            Assert.True(stations[i].AtMm - stations[i - 1].AtMm > stations[i - 1].AtMm - stations[i - 2].AtMm);
    }

    [Fact]
    public void Equal_spacing_on_an_opening_radius_shrinks_the_angles()
    {
        var stations = Workshop.Plan(Opening, Workshop.Form(new() { Rule = SteppingRule.EqualSpacing, Folds = 12 }), Fine).Form.Stations;
        for (var i = 2; i < stations.Count - 1; i++)
            Assert.True(stations[i].FoldAngle < stations[i - 1].FoldAngle);
    }

    [Fact]
    public void Fewest_folds_with_half_ends_are_never_more_than_equal_angles_need() =>
        Gen.Select(Gen.Double[50, 150], Gen.Double[0.3, 4], Gen.Double[30, 150], Gen.Enum<ProgressiveLaw>(), Gen.Double[0.05, 0.4]).ForAll(
            (radius, opening, sweep, law, ripple) =>
            {
                var panel = Visible(Workshop.Progressive(radius, radius * opening, sweep, law), ripple);
                Assert.True(Folds(panel, SteppingRule.FewestFolds, SteppingEnds.Half) <= Folds(panel, SteppingRule.EqualAngle, SteppingEnds.Half));
            },
            iter: 60);

    [Theory]
    [InlineData(SteppingEnds.Full, ProgressiveLaw.Logarithmic, 150, 1.75, 65, 0.30)]
    [InlineData(SteppingEnds.Full, ProgressiveLaw.Involute, 55, 1.75, 100, 0.20)]
    [InlineData(SteppingEnds.Full, ProgressiveLaw.Involute, 145, 0.6, 120, 0.30)]
    [InlineData(SteppingEnds.Full, ProgressiveLaw.Clothoid, 135, 0.4, 100, 0.35)]
    [InlineData(SteppingEnds.Half, ProgressiveLaw.Involute, 105, 0.5, 30, 0.25)]
    [InlineData(SteppingEnds.Half, ProgressiveLaw.Clothoid, 60, 0.3, 95, 0.25)]
    public void Fewest_folds_are_as_few_as_any_rule_needs(
        SteppingEnds ends, ProgressiveLaw law, double radius, double opening, double sweep, double ripple)
    {
        var panel = Visible(Workshop.Progressive(radius, radius * opening, sweep, law), ripple);
        var others = Math.Min(Folds(panel, SteppingRule.EqualAngle, ends), Folds(panel, SteppingRule.EqualSpacing, ends));
        Assert.InRange(Folds(panel, SteppingRule.FewestFolds, ends), 2, others);
    }

    // One fold has no facet that could show, but its panel is a corner of the fold's own radius.
    [Theory]
    [InlineData(110, 33, 35)]
    [InlineData(83, 83, 29)]
    [InlineData(370, 370, 12)]
    public void A_single_fold_is_never_chosen_for_a_curve(double start, double end, double sweep)
    {
        foreach (var rule in Enum.GetValues<SteppingRule>())
        {
            var panel = Visible(Workshop.Progressive(start, end, sweep, ProgressiveLaw.Clothoid), 0.4);
            Assert.InRange(Folds(panel, rule, SteppingEnds.Full), 2, 50);
        }
    }

    [Fact]
    public void A_single_fold_without_a_lever_still_gives_finite_forces()
    {
        var panel = Workshop.Panel(Workshop.Arc(83, 29)) with { LeadOutMm = 0 };
        var plan = Workshop.Plan(panel, Workshop.Form(new() { Folds = 1, Ends = SteppingEnds.Full }));
        Assert.True(double.IsFinite(plan.Panel.Pull.ForceN), $"force {plan.Panel.Pull.ForceN} N");
        Assert.True(double.IsFinite(plan.Form.Give.Rotation.Radians), $"give {plan.Form.Give.Rotation.Radians} rad");
    }

    // A measured factor leaves a flat end flat on the form, so nothing lies beyond it that would turn any further.
    [Theory]
    [InlineData(33, SteppingEnds.Half)]
    [InlineData(29, SteppingEnds.Full)]
    public void A_fixed_angle_that_runs_past_a_flat_end_gives_a_plan_or_a_reason(double degrees, SteppingEnds ends)
    {
        var panel = Workshop.Panel(Workshop.Progressive(60, null, 100, ProgressiveLaw.Clothoid)) with { Springback = new MeasuredFactor(0.8) };
        try
        {
            var form = Workshop.Plan(panel, Workshop.Form(new() { Ends = ends, FoldAngle = Angle.FromDegrees(degrees) })).Form;
            Assert.True(double.IsFinite(form.Sweep.Radians), $"sweep {form.Sweep.Radians}");
            Assert.All(form.Stations, station => Assert.True(station.FoldAngle.Radians > 0));
        }
        catch (NoSolutionException refused)
        {
            Assert.StartsWith("stepping.", refused.Code, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_single_fold_is_not_called_smooth_where_the_caller_asks_for_it()
    {
        var plan = Workshop.Plan(
            Workshop.Panel(Workshop.Arc(200, 30)), Workshop.Form(new() { Folds = 1, Ends = SteppingEnds.Full }));
        Assert.NotEqual(Verdict.Pass, Workshop.CheckOf(plan, "facet-width").Verdict);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(17)]
    public void A_fixed_number_of_folds_is_kept(int folds)
    {
        foreach (var ends in Enum.GetValues<SteppingEnds>())
            Assert.Equal(folds, Workshop.Plan(Opening, Workshop.Form(new() { Folds = folds, Ends = ends }), Fine).Form.Stations.Count);
    }

    [Theory]
    [InlineData(SteppingEnds.Half)]
    [InlineData(SteppingEnds.Full)]
    public void A_fixed_angle_is_kept_and_what_is_over_or_short_is_said_with_the_last_fold_that_would_close_it(SteppingEnds ends)
    {
        var wanted = Workshop.Plan(Arc).Form.Sweep;
        foreach (var degrees in new[] { 7.0, 9.3, 11.0 })
        {
            var plan = Workshop.Plan(Arc, Workshop.Form(new() { Ends = ends, FoldAngle = Angle.FromDegrees(degrees) }), Fine);
            var stations = plan.Form.Stations;
            var inner = ends == SteppingEnds.Half ? stations.Skip(1).SkipLast(1) : stations;
            Assert.All(inner, station => Workshop.Within(1e-9, degrees, station.FoldAngle.Degrees));

            var over = stations.Sum(station => station.FoldAngle.Radians) - wanted.Radians;
            var stepping = plan.Form.Stepping;
            Workshop.Within(1e-10, over, stepping.SweepOver.Radians);
            Workshop.Within(degrees / 2, 0, stepping.SweepOver.Degrees);
            Workshop.Within(1e-10, stations[^1].FoldAngle.Radians - over, stepping.LastFoldInstead!.Value.Radians);
            var expected = Math.Abs(over) <= Workshop.Brake.StopResolution.Radians ? Verdict.Pass : Verdict.Warn;
            Assert.Equal(expected, Workshop.CheckOf(plan, "sweep-match").Verdict);
        }
    }

    [Fact]
    public void A_fixed_angle_that_divides_the_sweep_leaves_nothing_over()
    {
        var wanted = Workshop.Plan(Arc).Form.Sweep;
        var plan = Workshop.Plan(Arc, Workshop.Form(new() { FoldAngle = new(wanted.Radians / 12) }));
        Assert.Equal(13, plan.Form.Stations.Count);
        Workshop.Within(1e-12, 0, plan.Form.Stepping.SweepOver.Radians);
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(plan, "sweep-match").Verdict);
    }

    [Theory]
    [InlineData(SteppingEnds.Half, 10)]
    [InlineData(SteppingEnds.Full, 13.7)]
    public void A_fixed_spacing_is_kept_to_the_marks_resolution(SteppingEnds ends, double spacing)
    {
        var plan = Workshop.Plan(Opening, Workshop.Form(new() { Rule = SteppingRule.EqualSpacing, Ends = ends, SpacingMm = spacing }), Fine);
        var stations = plan.Form.Stations;
        for (var i = 1; i < stations.Count; i++)
            Workshop.Within(0.5, spacing, stations[i].AtMm - stations[i - 1].AtMm);
        var wanted = Workshop.Plan(Opening).Form.Sweep;
        Workshop.Within(1e-9, stations.Sum(station => station.FoldAngle.Radians) - wanted.Radians, plan.Form.Stepping.SweepOver.Radians);
        Assert.NotNull(plan.Form.Stepping.LastFoldInstead);
    }

    [Fact]
    public void Without_a_fixed_step_nothing_is_over()
    {
        var stepping = Workshop.Plan(Opening, Workshop.Form(new() { Folds = 11 })).Form.Stepping;
        Assert.Equal(0, stepping.SweepOver.Radians);
        Assert.Null(stepping.LastFoldInstead);
    }

    [Fact]
    public void A_flat_inside_the_curve_is_a_facet_of_its_own_length()
    {
        var chain = new SegmentsCurve([Workshop.Arc(80, 50), new FlatCurve(37), Workshop.Arc(60, 40)]);
        var form = Workshop.Plan(Workshop.Panel(chain)).Form;
        Assert.Single(form.Stations, station => Math.Abs(station.StraightAfterMm - 37) < 1e-9);
        // It is followed without bulging: its width is no facet of the print-through.
        Assert.True(Workshop.Plan(Workshop.Panel(chain)).Panel.PrintThrough.WidestFacetMm < 30);
    }

    [Fact]
    public void Each_stretch_between_flats_has_its_own_smallest_count()
    {
        var chain = new SegmentsCurve([Workshop.Arc(120, 40), new FlatCurve(37), Workshop.Arc(40, 40)]);
        var form = Workshop.Plan(Workshop.Panel(chain), brake: Fine).Form;
        var flat = form.Stations.Single(station => Math.Abs(station.StraightAfterMm - 37) < 1e-9).Number;
        var gentle = form.Stations.Take(flat - 1).Max(station => station.FacetAfterMm);
        var tight = form.Stations.Skip(flat).SkipLast(1).Max(station => station.FacetAfterMm);
        Assert.True(gentle > 1.5 * tight);
    }

    [Fact]
    public void A_fixed_number_of_folds_is_shared_between_stretches()
    {
        var chain = new SegmentsCurve([Workshop.Arc(120, 60), new FlatCurve(37), Workshop.Arc(60, 40), new FlatCurve(20), Workshop.Arc(90, 20)]);
        foreach (var folds in new[] { 6, 11, 25 })
            Assert.Equal(folds, Workshop.Plan(Workshop.Panel(chain), Workshop.Form(new() { Folds = folds }), Fine).Form.Stations.Count);
        var refused = Assert.Throws<NoSolutionException>(() => Workshop.Plan(Workshop.Panel(chain), Workshop.Form(new() { Folds = 5 }), Fine));
        Assert.Equal("stepping.too-few-folds", refused.Code);
    }

    [Fact]
    public void A_fixed_step_serves_one_stretch_only()
    {
        var chain = new SegmentsCurve([Workshop.Arc(80, 50), new FlatCurve(37), Workshop.Arc(60, 40)]);
        var refused = Assert.Throws<NoSolutionException>(
            () => Workshop.Plan(Workshop.Panel(chain), Workshop.Form(new() { FoldAngle = Angle.FromDegrees(8) })));
        Assert.Equal("stepping.fixed-step-needs-one-stretch", refused.Code);
    }

    [Fact]
    public void A_fold_rounder_than_the_curve_it_has_to_touch_is_refused_with_the_radius_that_would_do()
    {
        var radius = Workshop.Plan(Arc).Form.Stations[0].RadiusMm!.Value;
        var refused = Assert.Throws<NoSolutionException>(() => Workshop.Plan(Arc, Workshop.Form() with { FoldRadiusMm = radius - 1.99 }));
        Assert.Equal("form.fold-radius-too-large", refused.Code);
        Assert.Equal("form.foldRadius", refused.Subject);
        Workshop.Near(radius, ((Figure)refused.Wording.GetArgument(0)!).Value, 1e-12);
        Workshop.Near(radius - 2, ((Figure)refused.Allowed!.GetArgument(0)!).Value, 1e-12);
        Assert.NotEmpty(Workshop.Plan(Arc, Workshop.Form(new() { Folds = 13 }) with { FoldRadiusMm = radius - 2.1 }).Form.Stations);
    }

    [Fact]
    public void A_fold_rounder_than_the_tightest_place_of_a_changing_curve_is_refused_too()
    {
        var tightest = Workshop.Plan(Opening).Form.Stations[0].RadiusMm!.Value;
        Assert.Throws<NoSolutionException>(() => Workshop.Plan(Opening, Workshop.Form() with { FoldRadiusMm = tightest - 1.9 }));
    }

    [Theory]
    [InlineData(null, 60.0)]
    [InlineData(60.0, null)]
    public void A_curve_with_a_flat_end_is_stepped_by_every_rule(double? start, double? end)
    {
        foreach (var id in new[] { "al-3003-h14", "al-1100-o", "ss-304", "steel-cr-cs" })
        {
            foreach (var rule in Enum.GetValues<SteppingRule>())
            {
                foreach (var ends in Enum.GetValues<SteppingEnds>())
                {
                    var panel = Workshop.Panel(Workshop.Progressive(start, end, 90, ProgressiveLaw.Clothoid)) with { Sheet = new(Workshop.Of(id), 1) };
                    var plan = Workshop.Plan(panel, Workshop.Form(new() { Rule = rule, Ends = ends }));
                    Assert.InRange(plan.Form.Stations.Count, 3, 60);
                }
            }
        }
    }

    [Fact]
    public void A_measured_factor_keeps_every_station_on_the_same_form_whatever_the_material()
    {
        var measured = new MeasuredFactor(0.75);
        var aluminium = Workshop.Plan(Arc with { Springback = measured }, Workshop.Form(new() { Folds = 13 })).Form.Stations;
        var stainless = Workshop.Plan(
            Arc with { Springback = measured, Sheet = new(Workshop.Of("ss-304"), 1.5) }, Workshop.Form(new() { Folds = 13 })).Form.Stations;
        for (var i = 0; i < 13; i++)
            Workshop.Within(1e-9, aluminium[i].AtMm, stainless[i].AtMm);
    }

    private static PanelSpec Visible(PanelCurve curve, double ripple) =>
        Workshop.Panel(curve) with { Finish = Finish.Own(ripple, Angle.FromDegrees(12 * ripple)) };

    private static int Folds(PanelSpec panel, SteppingRule rule, SteppingEnds ends) =>
        Workshop.Plan(panel, Workshop.Form(new() { Rule = rule, Ends = ends }), Fine).Form.Stations.Count;
}
