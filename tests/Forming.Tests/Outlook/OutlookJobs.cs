using Forming.Curves;
using Forming.Folds;
using Forming.Jobs;
using Forming.Outlook;
using Forming.Prediction;
using Forming.Springback;
using Forming.Wrapping;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Forming.Tests.Outlook;

/// <summary>Forms solved on the simulated pull, and panels that differ pulled over them.</summary>
internal static class OutlookJobs
{
    /// <summary>A form for a panel, what it is pulled over as, and the nominal panel.</summary>
    public static (PredictionJob Job, PanelPrediction Nominal) Solved(string material, double thickness, double radius, double sweep, int folds, Scatter? scatter = null)
    {
        var panel = Workshop.Panel(Workshop.Arc(radius, sweep)) with
        {
            Sheet = new(Workshop.Of(material), thickness),
            Springback = new SolvedOnWrap(),
            Scatter = scatter,
        };
        var form = Workshop.Form(new() { Folds = folds }) with { Backing = FormBacking.Ribs };
        var job = new FormJob(panel, form, Workshop.Brake, Workshop.Marks);
        var fold = new FoldShape(form.FoldRadiusMm, form.Sheet.ThicknessMm, NeutralLine.Factor(form.FoldRadiusMm, form.Sheet.ThicknessMm));
        var finished = FinishedCurve.On(panel.Curve, panel.Surface, thickness);
        var pure = WrappedForm.Solve(finished, job, fold, default);
        var solved = new WrapSolver(pure, finished, job, fold, new(PullWork.Most), default).Solve()!;
        return (PlannedPull.JobOf(solved.Form, job, fold), solved.Prediction);
    }

    public static PanelOutlook Of((PredictionJob Job, PanelPrediction Nominal) solved) =>
        WrapOutlook.Of(solved.Job, solved.Nominal, new(PullWork.Most), default);

    /// <summary>Panels whose sheet and folds are drawn; those that cannot be followed are left out.</summary>
    public static List<PredictedShape> Drawn((PredictionJob Job, PanelPrediction Nominal) solved, int count)
    {
        var (job, nominal) = solved;
        var scatter = ScatterDefaults.Of(job.Panel);
        var normal = new Normal(0, 1, new MersenneTwister(12));
        var shapes = new List<PredictedShape>(count);
        for (var i = 0; i < count; i++)
        {
            var (sheet, form) = (job.Panel.Sheet, job.Form);
            var panel = job.Panel with
            {
                LeverMm = nominal.LeverMm,
                StrengthFactor = 1 + (scatter.Yield * normal.Sample()),
                Sheet = new(
                    sheet.Material with { YoungsModulusMpa = sheet.Material.YoungsModulusMpa * (1 + (scatter.Modulus * normal.Sample())) },
                    sheet.ThicknessMm + (scatter.ThicknessMm * normal.Sample())),
            };
            double[] marks = [.. form.FoldAngles.Select(_ => scatter.MarkMm * normal.Sample())];
            var folded = form with
            {
                FoldAngles = [.. form.FoldAngles.Select(angle => angle + (scatter.FoldAngle.Radians * normal.Sample()))],
                FacetsMm = [.. form.FacetsMm.Select((facet, j) => facet + marks[j + 1] - marks[j])],
            };
            if (PanelPrediction.Of(job with { Panel = panel, Form = folded, LeverMm = nominal.LeverMm!.Value }).Shape is { } shape)
                shapes.Add(shape);
        }

        return shapes;
    }
}
