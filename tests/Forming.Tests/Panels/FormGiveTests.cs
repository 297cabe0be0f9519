using CsCheck;
using Forming.Checks;
using Forming.Contact;
using Forming.Curves;
using Forming.Materials;
using Forming.Plans;
using Forming.Pulling;
using Forming.Springback;
using Forming.Tests.Plans;

namespace Forming.Tests.Panels;

/// <summary>How far a bare form closes under the pull.</summary>
public class FormGiveTests
{
    private const double OuterFoldRadius = 4;

    private static readonly Material Form = Workshop.Perfect(205000, 0.29, 250);
    private static readonly Material Like5052 = Workshop.Swift(70000, 0.33, 193, 0.08, 0.004);
    private static readonly Material CabCorner = Workshop.Swift(70300, 0.33, 193, 0.06154847995, 0.00154847995);
    private static readonly Material Stainless = Workshop.Hardening(193000, 0.28, 290, 0.45, 1275);

    /// <summary>Sheet, thickness, lever, facet, fold, sweep of the form, thickness of the form; its end's rotation.</summary>
    /// <remarks>
    /// Rotation of the end with the panel's mid line on the lead-out flat, clamped at the first tangent point: finite elements with
    /// both sheets meshed (CalculiX 2.20), and for the forms of 1.5 and 3 mm a beam coupled into the strip. Computed, not measured.
    /// </remarks>
    public static TheoryData<string, double, double, double, double, double, double, double> Cases => new()
    {
        { "5052-like", 1.6, 150, 20, 15, 82.5, 2, 1.25 },
        { "5052-like", 1.6, 150, 20, 15, 82.5, 1.5, 2.63 },
        { "5052-like", 1.6, 150, 20, 15, 82.5, 3, 0.38 },
        { "cab corner", 1.6, 69.833711496, 17.487122379, 16.460053977, 131.68043182, 2, 3.90 },
        { "304", 1.2, 150, 20.827732778, 17.025890936, 85.12945468, 2, 1.05 },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_bare_form_closes_as_far_as_finite_elements_say(
        string sheet, double thickness, double lever, double facet, double fold, double sweep, double form, double degrees)
    {
        var law = BendingLaw.Of(new(sheet switch { "304" => Stainless, "cab corner" => CabCorner, _ => Like5052 }, thickness));
        var half = fold * Workshop.Degree / 2;
        var chord = facet - (2 * OuterFoldRadius * Math.Tan(half));
        var inside = (chord / (2 * Math.Sin(half))) + OuterFoldRadius;
        var curve = ContactCurve.Solve(
            FinishedCurve.On(Workshop.Arc(inside, sweep), Surface.Inside, thickness), new(law, MeasuredFactor: 1), thickness);
        var give = FormGiveEstimate.Compute(
            FormGiveEstimate.SectionsOf(curve, 100), lever, curve.MidMm, BendingLaw.Of(new(Form, form)), 100, 0);
        Assert.InRange(degrees / give.Rotation.Degrees, 0.88, 1.05);
    }

    // A panel that springs back by two thirds: 304, 0.8 mm, R 400, 30°, pulled at the lever that the plan chooses; the beam coupled
    // into the strip says 3.85°.
    [Fact]
    public void A_gently_bent_panel_closes_its_form_less_than_the_closed_form_says()
    {
        var plan = Workshop.Plan(
            Workshop.Panel(Workshop.Arc(400, 30)) with { Sheet = new(Stainless, 0.8) },
            Workshop.Form() with { Sheet = new(Form, 2) });
        Assert.InRange(3.85 / plan.Form.Give.Rotation.Degrees, 0.6, 0.75);
    }

    [Fact]
    public void The_force_of_a_longer_lever_closes_a_form_less() =>
        Gen.Select(RandomJobs.Plain, Gen.Double[1.1, 2]).ForAll(
            (job, k) =>
            {
                var bare = job with { Form = job.Form with { Stepping = job.Form.Stepping with { Folds = 12 } } };
                var longer = bare with { Panel = bare.Panel with { LeverMm = k * bare.Panel.LeverMm } };
                Assert.True(longer.Plan().Form.Give.Rotation.Radians <= bare.Plan().Form.Give.Rotation.Radians * (1 + 1e-9));
            },
            iter: 40);

    [Fact]
    public void A_curve_that_ends_flat_still_loads_the_form_while_it_is_pulled()
    {
        var panel = Workshop.Panel(Workshop.Progressive(60, null, 60, ProgressiveLaw.Clothoid)) with { Springback = new MeasuredFactor(0.8), LeverMm = 40 };
        Assert.True(Workshop.Plan(panel).Form.Give.Rotation.Radians > 0);
    }

    [Theory]
    [InlineData(0.8, Verdict.Fail)]
    [InlineData(1.6, Verdict.Warn)]
    [InlineData(4, Verdict.Pass)]
    public void A_bare_form_that_would_bend_for_good_is_not_to_be_pulled_on(double thickness, Verdict expected)
    {
        var plan = Workshop.Plan(
            Workshop.Panel(Workshop.Arc(90, 90)) with { LeverMm = 60 },
            Workshop.Form() with { Sheet = new(Workshop.Of("steel-cr-cs"), thickness), FoldRadiusMm = 4 });
        var check = Workshop.CheckOf(plan, "form-yield");
        Assert.True(expected == check.Verdict, $"{check.Value} of {check.Limit}");
        Assert.Equal(expected == Verdict.Fail, plan.Verdict == PlanVerdict.CannotBeMade);
        Assert.Equal(expected != Verdict.Pass, plan.Safety.Any(note => note.Id == "form-collapse"));
    }
}
