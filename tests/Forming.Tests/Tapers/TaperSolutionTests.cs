using CsCheck;
using Forming.Checks;
using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Plans;
using Forming.Prediction;
using Forming.Springback;

namespace Forming.Tests.Tapers;

public class TaperSolutionTests
{
    private static readonly Gen<TaperCurve> AnyCone =
        from near in Gen.Double[60, 160]
        from ratio in Gen.Double[0.7, 1.6]
        from degrees in Gen.Double[40, 95]
        from length in Gen.Double[400, 900]
        from isFlush in Gen.Bool
        select new TaperCurve(TaperJobs.Arc(near, degrees), TaperJobs.Arc(near * ratio, degrees), length, isFlush ? TaperPlacement.Flush : TaperPlacement.Concentric, default);

    [Theory]
    [InlineData(SteppingRule.EqualAngle, SteppingEnds.Half, FormBacking.Ribs)]
    [InlineData(SteppingRule.EqualAngle, SteppingEnds.Full, FormBacking.Ribs)]
    [InlineData(SteppingRule.EqualSpacing, SteppingEnds.Half, FormBacking.None)]
    [InlineData(SteppingRule.FewestFolds, SteppingEnds.Half, FormBacking.None)]
    public void A_taper_with_equal_ends_is_solved_as_the_straight_form(SteppingRule rule, SteppingEnds ends, FormBacking backing)
    {
        var stepping = new Stepping { Rule = rule, Ends = ends };
        var straight = Plan(TaperJobs.Arc(90, 90), stepping, backing);
        var tapered = Plan(TaperJobs.Cone(90, 90, 600), stepping, backing);

        Assert.Equal(straight.Form.Stations.Count, tapered.Form.Stations.Count);
        foreach (var (expected, station) in straight.Form.Stations.Zip(tapered.Form.Stations))
        {
            Assert.Equal(expected.FoldAngle.Radians, station.FoldAngle.Radians, 1e-9);
            Assert.Equal(expected.AtMm, station.AtMm, 1e-6);
            Assert.Equal(expected.AtMm, station.Line!.BaseFarMm, 1e-6);
            Assert.Equal(expected.StopAngle!.Value.Radians, station.StopAngle!.Value.Radians, 1e-9);
        }

        PredictedShape wanted = ShapeOf(straight), shape = ShapeOf(tapered);
        Assert.Equal(wanted.Sweep.Radians, shape.Sweep.Radians, 1e-6);
        Assert.Equal(wanted.RadiusMm!.Value, shape.RadiusMm!.Value, 1e-6);
        Assert.Equal(wanted.RadiusMm.Value, shape.Ends!.Near.RadiusMm!.Value, 1e-6);
        Assert.Equal(straight.Panel.Prediction!.Pull!.ForceN, tapered.Panel.Prediction!.Pull!.ForceN, 1e-3);
    }

    [Fact]
    public void Strips_that_are_nearly_alike_turn_nearly_as_the_straight_form()
    {
        var straight = Plan(TaperJobs.Arc(90, 90));
        var tapered = Plan(TaperJobs.Cone(89.999, 90.001, 600));

        foreach (var (expected, station) in straight.Form.Stations.Zip(tapered.Form.Stations))
            Assert.Equal(expected.FoldAngle.Degrees, station.FoldAngle.Degrees, 0.02);
        Assert.Equal(1, ShapeOf(straight).RadiusMm!.Value / ShapeOf(tapered).RadiusMm!.Value, 1e-4);
    }

    [Theory]
    [InlineData("ss-304", 1.2, 100)]
    [InlineData("al-3003-h14", 1.6, 120)]
    [InlineData("steel-cr-cs", 0.9, 150)]
    public void A_slim_cone_comes_off_as_the_straight_panel_of_its_mean_radius(string material, double thickness, double radius)
    {
        var straight = ShapeOf(Plan(TaperJobs.Arc(radius, 90), material: material, thickness: thickness));
        var slim = ShapeOf(Plan(TaperJobs.Cone(0.98 * radius, 1.02 * radius, 600), material: material, thickness: thickness));

        Assert.Equal(1, straight.RadiusMm!.Value / slim.RadiusMm!.Value, 0.005);
        Assert.Equal(straight.MissMm, slim.MissMm, 0.15);
    }

    [Fact]
    [Trait("Category", "Long")]
    public void The_panel_off_any_taper_that_is_solved_has_the_sweep_and_the_radii_asked_for()
    {
        var (solved, all) = (0, 0);
        AnyCone.ForAll(
            taper =>
            {
                var plan = Plan(taper);
                all++;
                if (plan.Panel.WhyNotSolved is not null)
                    return;
                solved++;
                var shape = ShapeOf(plan);
                Assert.Equal(shape.WantedSweep.Degrees, shape.Sweep.Degrees, 0.05);
                Assert.Equal(1, shape.Ends!.Near.RadiusMm!.Value / shape.Ends.Near.WantedRadiusMm!.Value, 0.02);
                Assert.Equal(1, shape.Ends.Far.RadiusMm!.Value / shape.Ends.Far.WantedRadiusMm!.Value, 0.02);
                Assert.True(plan.Form.FoldBackMissMm < 1e-6, $"{plan.Form.FoldBackMissMm}");
            },
            iter: 12);
        Assert.True(solved >= 0.9 * all, $"{solved} of {all} solved");
    }

    [Fact]
    public void The_tight_end_alone_would_spring_back_less_than_the_wide_one()
    {
        var ends = ShapeOf(Plan(TaperJobs.Cone(60, 120, 400))).Ends!;

        Assert.InRange(ends.Near.Bias, 0.02, 0.2);
        Assert.InRange(ends.Far.Bias, -0.2, -0.02);
        Assert.True(ends.Far.RippleMm > ends.Near.RippleMm);
    }

    [Fact]
    public void One_stop_setting_serves_all_folds_but_the_end_folds()
    {
        var stations = Plan(TaperJobs.Cone(60, 120, 400)).Form.Stations;

        Assert.Single(stations.Skip(1).SkipLast(1).Select(station => Math.Round(station.FoldAngle.Degrees, 6)).Distinct());
    }

    [Fact]
    public void A_well_described_taper_is_ready()
    {
        var plan = Plan(TaperJobs.Cone(100, 150, 600));

        Assert.All(plan.Checks, check => Assert.Equal(Verdict.Pass, check.Verdict));
    }

    [Fact]
    public void Over_a_bare_form_a_taper_allows_for_the_give()
    {
        var (bare, ribbed) = (Plan(TaperJobs.Cone(100, 140, 600), backing: FormBacking.None), Plan(TaperJobs.Cone(100, 140, 600)));

        Assert.InRange(bare.Form.Give.Rotation.Degrees, 0.5, 10);
        Assert.Equal(ShapeOf(ribbed).Sweep.Degrees, ShapeOf(bare).Sweep.Degrees, 0.1);
        Assert.True(Turn(bare) < Turn(ribbed));

        static double Turn(FormPlan plan) => plan.Form.Stations.Sum(station => station.FoldAngle.Degrees);
    }

    [Fact]
    public void A_taper_planned_by_pure_bending_simulates_no_pull_and_says_so()
    {
        var plan = TaperJobs.Plan(TaperJobs.Cone(60, 120, 400));

        Assert.Null(plan.Panel.Prediction);
        Assert.NotNull(plan.Panel.WhyNotSolved);
        Assert.Equal(Verdict.Warn, plan.Checks.Single(check => check.Id == "outcome").Verdict);
    }

    [Fact]
    public void Facets_are_as_wide_square_to_their_folds_as_a_cone_has_them_about_its_apex()
    {
        var plan = Plan(TaperJobs.Cone(60, 120, 400));
        foreach (var station in plan.Form.Stations.SkipLast(1))
        {
            var line = station.Line!;
            // Twice as far from the apex, and the fold's own depth is the same at both ends.
            Assert.InRange(line.FacetFarMm / line.FacetNearMm, 1.9, 2.3);
        }
    }

    private static PredictedShape ShapeOf(FormPlan plan) => plan.Panel.Prediction!.Shape!;

    private static FormPlan Plan(
        PanelCurve curve,
        Stepping? stepping = null,
        FormBacking backing = FormBacking.Ribs,
        string material = "ss-304",
        double thickness = 1.2)
    {
        var sheet = TaperJobs.Catalogue(material);
        return FormPlan.Compute(new FormJob(
            TaperJobs.Panel(curve) with
            {
                Sheet = new(sheet, thickness),
                Springback = new SolvedOnWrap(sheet.YieldMpa),
                PullBy = new(1, 20000),
            },
            TaperJobs.Form with { Backing = backing, Stepping = stepping ?? new() { Rule = SteppingRule.EqualAngle } },
            new BrakeSpec { LengthMm = 1250 },
            TaperJobs.Marks));
    }
}
