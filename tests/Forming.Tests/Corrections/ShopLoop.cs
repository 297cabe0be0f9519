using Forming.Corrections;
using Forming.Inspection;
using Forming.Jobs;
using Forming.Layout;
using Forming.Materials;
using Forming.Plans;
using Forming.Prediction;
using Forming.Springback;
using Forming.TestStrips;
using MathNet.Numerics.Distributions;

namespace Forming.Tests.Corrections;

/// <summary>
/// A shop that follows the answers, with a sheet and a brake whose truth only the test knows: strip, plan, form, inspection, panel,
/// correction, next panel.
/// </summary>
/// <param name="job">Material of the panel, its thickness [mm], finished radius [mm] and sweep [°].</param>
/// <param name="normal">Where errors are drawn from.</param>
internal sealed class ShopLoop((string Material, double Thickness, double Radius, double Sweep) job, Normal normal)
{
    public const double Stronger = 1.12;

    public const double Thinner = 0.96;

    private const double BrakeScatter = 0.4; // [°] of a fold set by the stop

    private const double Protractor = 0.1; // [°] of a fold read

    private const double Step = 0.1; // [°] of the stop

    private const double StripReading = 0.01;

    private static readonly FinishedTolerance Wanted = new(Angle.FromDegrees(0.3), 0.01, null);

    private PanelSpec Panel { get; } = new()
    {
        Sheet = new(Workshop.Of(job.Material), job.Thickness),
        Curve = Workshop.Arc(job.Radius, job.Sweep),
        WidthMm = 300,
        LeadInMm = 80,
        LeadOutMm = 150,
        Finish = Forming.Facets.Finish.Satin,
        Tolerance = Wanted,
        Predict = true,
    };

    private static FormSpec FormSpec { get; } = Workshop.Form() with { Backing = FormBacking.Ribs };

    /// <summary>How far each panel is off: first panel without a strip, first one after a strip, next one after the correction.</summary>
    public (PanelMiss Blind, PanelMiss First, PanelMiss Second) Run()
    {
        var nominal = Planned(null);
        var blind = MissOf(Truth(nominal, nominal.Form));

        var plan = Planned(StripYield());
        var form = Inspected(plan.Form, Folded(plan.Form));
        var first = Truth(plan, form.Actual);

        var report = CorrectionReport.Of(new()
        {
            Pull = plan with { Form = form.Read },
            Measured = CameOff.Read(first, normal),
            FoldError = Angle.FromDegrees(Protractor),
            IsFormMeasured = true,
            Rules = new(Angle.FromDegrees(Step), CorrectionDirection.Both, 20),
            FormMetal = MetalFamily.Steel,
        });
        var corrected = form.Actual with
        {
            FoldAngles = [.. form.Actual.FoldAngles.Select((angle, i) => angle + Crept(report.Form.Steps[i]))],
        };
        return (blind, MissOf(first), MissOf(Truth(plan, corrected)));
    }

    private PredictionJob Planned(double? yieldMpa)
    {
        var job = new FormJob(
            Panel with { Springback = new SolvedOnWrap(yieldMpa) }, FormSpec, Workshop.Brake with { StopResolution = Angle.FromDegrees(Step) }, Workshop.Marks);
        var plan = FormPlan.Compute(job, needsRemedy: _ => false);
        return plan.PullOf(job) with { Panel = job.Panel with { LeverMm = plan.Panel.Prediction!.LeverMm } };
    }

    // Bent round a bar of about the finished radius, as a plan's first strips are.
    private double StripYield()
    {
        var law = BendingLaw.Of(TrueSheet).Stronger(Stronger);
        var bar = job.Radius;
        var left = (1 / law.Release(1 / (bar + (TrueSheet.ThicknessMm / 2)))) - (TrueSheet.ThicknessMm / 2);
        var lesson = SpringbackStrips.Learn(new()
        {
            Sheet = Panel.Sheet,
            Strips = [.. Enumerable.Range(0, 2).Select(_ => SpringbackStrip.Round(bar, left * (1 + (StripReading * normal.Sample())), job.Thickness))],
        });
        return lesson.YieldMpa.Value;
    }

    private Sheet TrueSheet => Panel.Sheet with { ThicknessMm = Thinner * job.Thickness };

    private static StandingForm Bent(StandingForm form, Func<double, double> by) => form with { FoldAngles = [.. form.FoldAngles.Select(by)] };

    private StandingForm Folded(StandingForm form) => Bent(form, angle => angle + (BrakeScatter * Workshop.Degree * normal.Sample()));

    private StandingForm Read(StandingForm form) => Bent(form, angle => angle + (Protractor * Workshop.Degree * normal.Sample()));

    // A correction is crept up on and measured, so it ends within about a step of the stop; a fold that is not touched stays.
    private double Crept(int steps) => steps == 0 ? 0 : Step * Workshop.Degree * (steps + (0.5 * normal.Sample()));

    private (StandingForm Actual, StandingForm Read) Inspected(StandingForm wanted, StandingForm actual)
    {
        var planned = PolygonOf(wanted);
        for (var round = 0; round < 3; round++)
        {
            var read = Read(actual);
            var rules = new CorrectionRules(Angle.FromDegrees(Step), CorrectionDirection.Both, 15, Angle.FromDegrees(0.5), 0.8);
            var plan = CorrectionSearch.Find(PolygonOf(read), planned, rules);
            if (!plan.Found || plan.Folds.Count == 0)
                return (actual, read);
            var angles = actual.FoldAngles.ToArray();
            foreach (var (fold, steps) in plan.Folds)
                angles[fold] += Crept(steps);
            actual = actual with { FoldAngles = angles };
        }

        return (actual, Read(actual));
    }

    private static FoldedPolygon PolygonOf(StandingForm form) =>
        new([FormSpec.LeadInMm, .. form.FacetsMm, FormSpec.LeadOutMm], form.FoldAngles);

    private PredictedShape Truth(PredictionJob plan, StandingForm form)
    {
        var panel = Panel with { LeverMm = plan.LeverMm, Sheet = TrueSheet, StrengthFactor = Stronger };
        var prediction = PanelPrediction.Of(plan with { Panel = panel, Form = form });
        return prediction.Shape ?? throw new InvalidOperationException(prediction.WhyNot!.ToString());
    }

    private PanelMiss MissOf(PredictedShape shape) =>
        new(shape.Sweep.Degrees - job.Sweep, (shape.RadiusMm!.Value / shape.WantedRadiusMm!.Value) - 1);
}

/// <summary>How far a panel is off.</summary>
internal readonly record struct PanelMiss(double SweepDegrees, double RadiusShare);
