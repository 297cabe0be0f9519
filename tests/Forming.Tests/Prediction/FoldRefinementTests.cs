using Forming.Checks;
using Forming.Facets;

namespace Forming.Tests.Prediction;

/// <summary>The fewest folds whose predicted ripple passes.</summary>
public class FoldRefinementTests
{
    private static readonly Stepping Fewest = new() { Rule = SteppingRule.FewestFolds };

    public static TheoryData<string, double, double, double> Sheets => new()
    {
        { "al-3003-h14", 1.5, 80, 90 },
        { "al-5052-h32", 1.6, 95, 85 },
        { "ss-304", 1.2, 90, 90 },
    };

    [Theory]
    [MemberData(nameof(Sheets))]
    public void The_refined_count_passes_and_one_fewer_does_not(string material, double thickness, double radius, double sweep)
    {
        var panel = Workshop.Panel(Workshop.Arc(radius, sweep)) with { Sheet = new(Workshop.Of(material), thickness) };
        var plan = Workshop.Plan(panel, Workshop.Form(Fewest with { Refine = true }));
        var report = plan.Form.Stepping.Refinement!;
        Assert.Null(report.WhyKept);
        Assert.Equal(plan.Form.Stations.Count, report.Folds);
        Assert.Equal(Workshop.Plan(panel, Workshop.Form(Fewest)).Form.Stations.Count, report.ClosedFormFolds);
        Assert.True(plan.Panel.Prediction!.Passes(panel.Finish));
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(plan, "refined-folds").Verdict);
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(plan, "predicted-ripple").Verdict);
        Assert.Equal(Verdict.Pass, Workshop.CheckOf(plan, "facet-width").Verdict);
        Assert.True(report.Folds > 2, "two folds leave no smaller count to fail");

        foreach (var rule in Enum.GetValues<SteppingRule>())
        {
            var fewer = Workshop.Plan(panel with { Predict = true }, Workshop.Form(new() { Rule = rule, Folds = report.Folds - 1 }));
            var isSharp = fewer.Form.Stations.Max(station => station.FoldAngle.Degrees) > 45;
            Assert.True(isSharp || !fewer.Panel.Prediction!.Passes(panel.Finish), $"{report.Folds - 1} folds by {rule} pass too");
        }
    }

    [Fact]
    public void The_brakes_narrowest_facet_wins()
    {
        var panel = Workshop.Panel(Workshop.Arc(80, 90)) with { Finish = Finish.Own(0.0005, Angle.FromDegrees(0.005)) };
        var plan = Workshop.Plan(panel, Workshop.Form(Fewest with { Refine = true }), Workshop.Brake with { MinFacetMm = 12 });
        var report = plan.Form.Stepping.Refinement!;
        Assert.NotNull(report.WhyKept);
        Assert.Equal(report.ClosedFormFolds, report.Folds);
        Assert.Equal(Verdict.Warn, Workshop.CheckOf(plan, "refined-folds").Verdict);
        Assert.All(plan.Form.Stations.SkipLast(1), station => Assert.True(station.FacetAfterMm >= 12));
    }

    [Fact]
    public void Where_print_through_is_not_known_nothing_changes()
    {
        var panel = Workshop.Panel(Workshop.Arc(80, 90)) with { Sheet = new(Workshop.Perfect(70e3, 0.33, 145), 1.5) };
        var plain = Workshop.Plan(panel, Workshop.Form(Fewest));
        var refined = Workshop.Plan(panel, Workshop.Form(Fewest with { Refine = true }));
        Assert.Equal(plain.Form.Stations, refined.Form.Stations);
        Assert.Contains("not known", refined.Form.Stepping.Refinement!.WhyKept, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_asking_nothing_is_refined() =>
        Assert.Null(Workshop.Plan(Workshop.Panel(Workshop.Arc(80, 90)), Workshop.Form(Fewest)).Form.Stepping.Refinement);
}
