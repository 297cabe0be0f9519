using Forming.Checks;
using Forming.Curves;
using Forming.Jobs;
using Forming.Outlook;
using Forming.Results;
using Forming.Springback;

namespace Forming.Tests.Outlook;

/// <summary>What a plan says of how sure it is.</summary>
public class PlannedOutlookTests
{
    private static readonly FormSpec Ribbed = Workshop.Form() with { Backing = FormBacking.Ribs };

    private static PanelSpec Springy { get; } =
        Workshop.Panel(Workshop.Arc(400, 45)) with { Sheet = new(Workshop.Of("steel-cr-cs"), 1), Springback = new SolvedOnWrap() };

    [Fact]
    public void A_band_past_a_tenth_asks_for_a_strip_first_of_all()
    {
        var plan = Workshop.Plan(Springy, Ribbed);
        var check = plan.Checks[0];
        Assert.Equal(("outlook", Verdict.Warn), (check.Id, check.Verdict));
        Assert.True(check.Value > 0.1);
        Assert.StartsWith("bend a strip first: without a strip this panel may come off anywhere from R", FormattableString.Invariant(check.Text), StringComparison.Ordinal);
        Assert.Equal("outlook", plan.ShopNotes[0].Id);
    }

    [Fact]
    public void A_measured_yield_stress_settles_it()
    {
        var plan = Workshop.Plan(Springy with { Springback = new SolvedOnWrap(210) }, Ribbed);
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(plan, "outlook").Verdict);
        Assert.Null(plan.Panel.Outlook.AfterStrip);
        Assert.True(plan.Panel.Outlook.Reach < Workshop.Plan(Springy, Ribbed).Panel.Outlook.Reach);
    }

    [Fact]
    public void A_stiff_curve_needs_no_strip()
    {
        var panel = Workshop.Panel(Workshop.Arc(75, 90)) with { Sheet = new(Workshop.Of("al-3003-o"), 1.6), Springback = new SolvedOnWrap() };
        var plan = Workshop.Plan(panel, Ribbed);
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(plan, "outlook").Verdict);
        Assert.DoesNotContain(plan.ShopNotes, note => note.Id == "outlook");
    }

    [Fact]
    public void A_quick_plan_estimates_it()
    {
        var plan = Workshop.Plan(Springy with { Springback = new PureBending() }, Ribbed);
        Assert.True(plan.Panel.Outlook.IsEstimated);
        Assert.Null(plan.Panel.Outlook.Ripple);
        Assert.Equal(Status.Estimated, plan.Basis.Single(basis => basis.Quantity == "panel.outlook").Status);
        Workshop.Near(
            Workshop.Plan(Springy, Ribbed).Panel.Outlook.RadiusMm!.Value.Reach, plan.Panel.Outlook.RadiusMm!.Value.Reach, 0.25);
    }

    [Fact]
    public void More_confidence_takes_more_folds_and_keeps_its_word()
    {
        double[] asked = [0.5, 0.9, 0.99];
        var plans = asked.Select(confidence => Workshop.Plan(
            Workshop.Panel(Workshop.Arc(75, 90)) with { Springback = new SolvedOnWrap() },
            Ribbed with { Stepping = new() { Confidence = confidence } })).ToArray();
        int[] folds = [.. plans.Select(plan => plan.Form.Stations.Count)];
        Assert.Equal(folds.Order(), folds);
        Assert.True(folds[^1] > folds[0]);
        foreach (var (confidence, plan) in asked.Zip(plans).Skip(1))
            Assert.True(plan.Panel.Outlook.ChanceOfFacets > confidence - 0.03, $"{plan.Panel.Outlook.ChanceOfFacets} of {confidence}");
    }

    [Fact]
    public void Confidence_needs_the_simulated_pull()
    {
        var refused = Assert.Throws<NoSolutionException>(() => Workshop.Plan(
            Springy with { Springback = new PureBending() }, Ribbed with { Stepping = new() { Confidence = 0.9 } }));
        Assert.Equal("form.stepping.confidence", refused.Subject);
    }

    [Theory]
    [InlineData("al-3003-h14", 1.5, 0.045, Status.PublishedAsQuoted)]
    [InlineData("al-5052-h32", 2.0, 0.065, Status.PublishedAsQuoted)]
    [InlineData("al-5052-h32", 0.8, 0.04, Status.PublishedAsQuoted)]
    [InlineData("al-3003-h14", 2.5, 0.075, Status.Assumption)]
    [InlineData("steel-cr-cs", 1.0, 0.03, Status.Assumption)]
    public void Thickness_scatters_by_half_the_tolerance_that_was_read(string material, double thickness, double deviation, Status status)
    {
        var panel = Springy with { Sheet = new(Workshop.Of(material), thickness) };
        Workshop.Near(deviation, ScatterDefaults.Of(panel).ThicknessMm, 1e-12);
        Assert.Equal(status, ScatterDefaults.BasisOf(panel).Single(basis => basis.Quantity == "panel.scatter.thickness").Status);
    }

    [Fact]
    public void The_callers_scatter_wins()
    {
        var panel = Springy with { Scatter = ScatterDefaults.Of(Springy) with { Yield = 0.03 } };
        var statuses = ScatterDefaults.BasisOf(panel).ToDictionary(basis => basis.Quantity, basis => basis.Status);
        Assert.Equal(Status.Caller, statuses["panel.scatter.yield"]);
        Assert.Equal(Status.Assumption, statuses["panel.scatter.modulus"]);
        Assert.True(Workshop.Plan(panel, Ribbed).Panel.Outlook.Reach < Workshop.Plan(Springy, Ribbed).Panel.Outlook.Reach);
    }

    [Fact]
    public void A_tapers_outlook_is_an_estimate_of_its_sweep()
    {
        var cone = new TaperCurve(Workshop.Arc(100, 60), Workshop.Arc(160, 60), 500, TaperPlacement.Concentric, Point.Origin);
        var panel = Workshop.Panel(cone) with { Springback = new PureBending() };
        var outlook = Workshop.Plan(panel, Ribbed).Panel.Outlook;
        Assert.True(outlook.IsEstimated);
        Assert.Null(outlook.RadiusMm);
        Assert.InRange(outlook.Sweep!.Value.Reach, 0.02, 0.5);
    }
}
