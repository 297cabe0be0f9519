using Forming.Contact;
using Forming.Curves;
using Forming.Folds;
using Forming.Jobs;
using Forming.Materials;
using Forming.Prediction;
using Forming.Pulling;
using Forming.Springback;
using Forming.Wrapping;

namespace Forming.Tests.Wrapping;

/// <summary>
/// Panels that spring back so far that no pull forms them: with short levers the hand comes down, with long ones the sheet curls up.
/// </summary>
public class TooSpringyTests
{
    private const double AsWanted = 0.05 * Workshop.Degree;

    private static readonly Material[] Sheets = [.. ((string[])["al-3003-h14", "al-5052-h32", "al-6061-t6", "ss-304"]).Select(Workshop.Of)];

    [Fact]
    [Trait("Category", "Long")]
    public void Past_a_third_of_a_turn_of_springback_no_lever_pulls_a_panel_over_its_form() =>
        Scan(3, 4, [0.12, 0.2, 0.3, 0.45], 0.06, PullWork.MostOfSolving / 10);

    [Theory]
    [Trait("Category", "Slow")]
    [InlineData(1)]
    [InlineData(2)]
    public void All_along_the_sheet_no_lever_pulls_a_panel_over_its_form_that_springs_back_too_far(int seed) =>
        Scan(seed, 20, [.. Enumerable.Range(4, 27).Select(i => i / 50.0)], 0.02, PullWork.MostOfSolving);

    // So the scan finds what can be pulled.
    [Fact]
    public void The_same_panels_of_softer_sheet_are_pulled_over_their_forms()
    {
        foreach (var panel in Panels(3).Take(5))
        {
            var yield = panel.Sheet.Material.YieldMpa / 3;
            var sheet = panel.Sheet.Material with { YieldMpa = yield, StrengthCoefficientMpa = null };
            var softer = panel with { Sheet = panel.Sheet with { Material = sheet } };
            Assert.True(ShareOfMost(softer) < 1);
            Assert.Contains(
                (double[])[0.16, 0.22, 0.28, 0.36, 0.5], share => IsPulledRound(softer, share, 0.05, PullWork.MostOfSolving));
        }
    }

    private static void Scan(int seed, int count, double[] leverShares, double step, long mostWork)
    {
        foreach (var panel in Panels(seed).Take(count))
        {
            foreach (var share in leverShares)
                Assert.False(IsPulledRound(panel, share, step, mostWork), $"{panel.Curve} with a lever of {share} of it");
        }
    }

    // Over any form, from one a little tighter than by pure bending to one with a fifth less curvature, off which it comes less than half as
    // far round.
    private static bool IsPulledRound(PanelSpec panel, double leverShare, double step, long mostWork)
    {
        var finished = FinishedCurve.On(panel.Curve, panel.Surface, panel.Sheet.ThicknessMm);
        var lever = leverShare * finished.LengthMm;
        var form = Workshop.Form(new() { Folds = 10 }) with { Backing = FormBacking.Ribs };
        var job = new FormJob(panel with { LeverMm = lever, LeadOutMm = lever }, form, Workshop.Brake, Workshop.Marks);
        var fold = new FoldShape(form.FoldRadiusMm, form.Sheet.ThicknessMm, NeutralLine.Factor(form.FoldRadiusMm, form.Sheet.ThicknessMm));
        var pure = WrappedForm.Solve(finished, job, fold, default);
        var run = pure.Contact.Runs[0];
        for (var less = -0.05; less < 0.21; less += step)
        {
            var correction = new ContactCorrection([new(run.Start.MidMm, run.End.MidMm, [-less, 0.12, 0.13], 0, 0)]);
            var corrected = pure.Corrected(correction, finished, job, fold, default);
            var shape = PlannedPull.Predict(corrected, job, fold, new(mostWork), default).Shape;
            if (shape is not null)
                return shape.SweepMiss.Radians > -AsWanted;
        }

        return false;
    }

    private static IEnumerable<PanelSpec> Panels(int seed)
    {
        var random = new Random(seed);
        while (true)
        {
            var panel = Workshop.Panel(Workshop.Arc(100 + (300 * random.NextDouble()), 50 + (110 * random.NextDouble()))) with
            {
                Sheet = new(Sheets[random.Next(Sheets.Length)], 0.7 + (1.3 * random.NextDouble())),
                Springback = new SolvedOnWrap(),
            };
            if (ShareOfMost(panel) is > 1.01 and < 1.6)
                yield return panel;
        }
    }

    private static double ShareOfMost(PanelSpec panel)
    {
        var curve = (ArcCurve)panel.Curve;
        var radius = curve.RadiusMm + (panel.Sheet.ThicknessMm / 2);
        var formSweep = panel.Law().LoadedFor(1 / radius).Curvature * radius * curve.Sweep.Radians;
        return (formSweep - curve.Sweep.Radians) / Lever.MostSpringback(formSweep);
    }
}
