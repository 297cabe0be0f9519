using CsCheck;
using Forming.Checks;
using Forming.Contact;
using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Springback;
using Forming.Tests.Plans;
using Forming.Tests.Tapers;

namespace Forming.Tests.Facets;

/// <summary>Folds on curves whose tightest place lies between their ends.</summary>
public class UnevenCurveTests
{
    private static readonly BrakeSpec Fine = Workshop.Brake with { MinFacetMm = 1 };

    private static readonly Gen<PanelCurve> Uneven = Gen.Select(Gen.Int[0, 3], Gen.Double[25, 120], Gen.Double[1.2, 4], Gen.Double[5, 30], Gen.Double[5, 40]).Select(
        (kind, radius, opening, ends, middle) => kind switch
        {
            0 => new SegmentsCurve(
                [Workshop.Progressive(null, radius, ends, ProgressiveLaw.Clothoid), Workshop.Arc(radius, middle), Workshop.Progressive(radius, null, ends, ProgressiveLaw.Clothoid)]),
            1 => new SegmentsCurve([Workshop.Arc(radius * opening, ends), Workshop.Arc(radius, middle), Workshop.Arc(radius * opening, ends)]),
            2 => new SegmentsCurve([Workshop.Arc(radius, ends), Workshop.Arc(radius * opening, middle)]),
            _ => (PanelCurve)new EllipseCurve(radius * opening, radius, Angle.FromDegrees(-ends), Angle.FromDegrees(middle)),
        });

    [Theory]
    [InlineData(30.0, null, 8, 60)]
    [InlineData(60.0, null, 10, 30)]
    [InlineData(60.0, 5000.0, 20, 0)]
    public void Gentle_ends_do_not_hide_a_tight_middle(double radius, double? end, double endDegrees, double middleDegrees)
    {
        PanelCurve[] middle = middleDegrees > 0 ? [Workshop.Arc(radius, middleDegrees)] : [];
        var chain = new SegmentsCurve(
            [Workshop.Progressive(end, radius, endDegrees, ProgressiveLaw.Clothoid), .. middle, Workshop.Progressive(radius, end, endDegrees, ProgressiveLaw.Clothoid)]);
        var panel = Workshop.Panel(chain) with { Sheet = new(Workshop.Of("al-1100-o"), 1) };
        foreach (var rule in Enum.GetValues<SteppingRule>())
        {
            var chosen = Workshop.Plan(panel, Workshop.Form(new() { Rule = rule }), Fine).Form.Stations.Count;
            Assert.True(chosen > 2);
            for (var folds = 2; folds < chosen + 6; folds++)
            {
                var fixedCount = Workshop.Plan(panel, Workshop.Form(new() { Rule = rule, Folds = folds }), Fine);
                Assert.Equal(folds < chosen ? Verdict.Warn : Verdict.Pass, Workshop.CheckOf(fixedCount, "facet-width").Verdict);
            }
        }
    }

    [Fact]
    public void A_facet_is_judged_by_the_tightest_place_anywhere_along_it() =>
        Gen.Select(Uneven, Gen.Double[0, 0.9], Gen.Double[0.05, 1]).ForAll(
            (curve, from, length) =>
            {
                var law = BendingLaw.Of(Workshop.Panel(curve).Sheet);
                var run = ContactCurve.Solve(FinishedCurve.On(curve, Surface.Inside, 1.5), new(law), 1.5).Runs[0];
                double start = from * run.MidMm, end = Math.Min(1, from + length) * run.MidMm;
                var tightest = run.TightestBetween(run.At(CurveMeasure.MidLength, start), run.At(CurveMeasure.MidLength, end)).Curvature;
                var sampled = 0.0;
                for (var i = 0; i <= 400; i++)
                    sampled = Math.Max(sampled, run.At(CurveMeasure.MidLength, start + ((end - start) * i / 400)).State.Curvature);
                Assert.InRange(tightest, sampled * (1 - 1e-9), sampled * 1.01);
            },
            iter: 100);

    [Fact]
    public void The_count_that_is_chosen_passes_one_fewer_shows_and_more_pass_too() =>
        Gen.Select(Uneven, Gen.Enum<SteppingRule>(), Gen.Enum<SteppingEnds>()).ForAll(
            (curve, rule, ends) =>
            {
                var panel = Workshop.Panel(curve) with { Sheet = new(Workshop.Of("al-1100-o"), 1), LeverMm = 60 };
                var chosen = Workshop.Plan(panel, Workshop.Form(new() { Rule = rule, Ends = ends }), Fine);
                if (!chosen.Panel.PrintThrough.Known)
                    return;
                var count = chosen.Form.Stations.Count;
                Assert.Equal(Verdict.Pass, Workshop.CheckOf(chosen, "facet-width").Verdict);
                for (var folds = count; folds <= count + 3; folds++)
                    Assert.Equal(Verdict.Pass, FacetWidth(folds));
                if (count > (ends == SteppingEnds.Half ? 2 : 1))
                    Assert.Equal(Verdict.Warn, FacetWidth(count - 1));

                Verdict FacetWidth(int folds)
                {
                    var plan = Workshop.Plan(panel, Workshop.Form(new() { Rule = rule, Ends = ends, Folds = folds }), Fine);
                    return plan.Form.Stations.Max(station => station.FoldAngle.Radians) > Math.PI / 4
                        ? Verdict.Warn // sharper than the plan chooses
                        : Workshop.CheckOf(plan, "facet-width").Verdict;
                }
            },
            iter: 60);

    [Fact]
    public void A_count_that_was_chosen_is_placed_alike_when_it_is_given() =>
        Gen.Select(RandomJobs.Plain, Gen.Enum<SteppingRule>(), Gen.Double[1, 15]).ForAll(
            (job, rule, minFacet) =>
            {
                var free = job with
                {
                    Form = job.Form with { Stepping = job.Form.Stepping with { Rule = rule, Folds = null } },
                    Brake = job.Brake with { MinFacetMm = minFacet },
                };
                var chosen = free.Plan();
                var given = (free with { Form = free.Form with { Stepping = free.Form.Stepping with { Folds = chosen.Form.Stations.Count } } }).Plan();
                Assert.Equal(chosen.Form.Stations.Select(station => station.AtMm), given.Form.Stations.Select(station => station.AtMm));
                Assert.Equal(Workshop.CheckOf(chosen, "facet-width").Verdict, Workshop.CheckOf(given, "facet-width").Verdict);
            },
            iter: 80);

    [Fact]
    public void A_count_chosen_for_several_stretches_is_shared_alike_when_it_is_given()
    {
        var chain = new SegmentsCurve([Workshop.Arc(120, 60), new FlatCurve(37), Workshop.Arc(40, 20), new FlatCurve(20), Workshop.Arc(90, 15)]);
        foreach (var rule in Enum.GetValues<SteppingRule>())
        {
            var chosen = Workshop.Plan(Workshop.Panel(chain), Workshop.Form(new() { Rule = rule }), Fine).Form.Stations;
            var given = Workshop.Plan(Workshop.Panel(chain), Workshop.Form(new() { Rule = rule, Folds = chosen.Count }), Fine).Form.Stations;
            Assert.Equal(chosen.Select(station => station.AtMm), given.Select(station => station.AtMm));
        }
    }

    [Fact]
    public void A_single_fold_in_a_curved_stretch_leaves_nothing_to_wrap_over()
    {
        var chain = new SegmentsCurve([Workshop.Arc(60, 40), new FlatCurve(30), Workshop.Arc(30, 15)]);
        var singles = 0;
        for (var folds = 2; folds <= 9; folds++)
        {
            var plan = Workshop.Plan(Workshop.Panel(chain) with { LeverMm = 40 }, Workshop.Form(new() { Ends = SteppingEnds.Full, Folds = folds }), Fine);
            // With full ends the flat reaches half a step into both bends, and so is the longest straight part.
            var inFirst = plan.Form.Stations.SkipLast(1).MaxBy(station => station.StraightAfterMm)!.Number;
            var isSingle = inFirst == 1 || folds - inFirst == 1;
            singles += isSingle ? 1 : 0;
            Assert.Equal(!isSingle, plan.Panel.PrintThrough.Known);
            if (isSingle)
                Assert.Equal(Verdict.Warn, Workshop.CheckOf(plan, "facet-width").Verdict);
        }

        Assert.InRange(singles, 2, 6);
    }

    [Fact]
    public void A_taper_with_a_tight_middle_needs_as_many_folds_as_the_straight_form()
    {
        var tight = new EllipseCurve(150, 70, Angle.FromDegrees(-40), Angle.FromDegrees(40));
        var tapered = TaperJobs.Plan(new TaperCurve(tight, tight, 600, TaperPlacement.Flush, default));
        var straight = TaperJobs.Plan(tight);
        Assert.Equal(straight.Form.Stations.Count, tapered.Form.Stations.Count);
        Workshop.Near(straight.Panel.PrintThrough.AllowedFacetMm!.Value, tapered.Panel.PrintThrough.AllowedFacetMm!.Value, 1e-6);
    }
}
