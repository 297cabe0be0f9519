using Forming.Corrections;
using Forming.Inspection;
using Forming.Jobs;
using Forming.Materials;
using Forming.Prediction;
using Forming.Tests.Outlook;
using MathNet.Numerics.Distributions;

namespace Forming.Tests.Corrections;

/// <summary>Panels that came off forms solved on the simulated pull, of sheets that are not what their grade says.</summary>
internal static class CameOff
{
    private const double TwoSided = 1.959963984540054;

    /// <summary>The form for a panel, and how it is pulled over it.</summary>
    public static PredictionJob Form(string material, double thickness, double radius, double sweep, int folds, FinishedTolerance? tolerance = null)
    {
        var (job, nominal) = OutlookJobs.Solved(material, thickness, radius, sweep, folds);
        return job with
        {
            LeverMm = nominal.LeverMm!.Value,
            Panel = job.Panel with { Tolerance = tolerance ?? FinishedTolerance.Default },
        };
    }

    /// <summary>The panel of another sheet.</summary>
    /// <param name="pull">How it is pulled.</param>
    /// <param name="stronger">Its yield over the grade's.</param>
    /// <param name="thicker">Its thickness over the nominal one.</param>
    /// <param name="stiffer">Its modulus over the grade's.</param>
    public static PredictedShape Truth(PredictionJob pull, double stronger, double thicker = 1, double stiffer = 1)
    {
        var sheet = pull.Panel.Sheet;
        var panel = pull.Panel with
        {
            LeverMm = pull.LeverMm,
            StrengthFactor = stronger,
            Sheet = new(
                sheet.Material with { YoungsModulusMpa = sheet.Material.YoungsModulusMpa * stiffer }, sheet.ThicknessMm * thicker),
        };
        var prediction = PanelPrediction.Of(pull with { Panel = panel });
        Assert.True(prediction.Wraps, prediction.WhyNot?.ToString());
        return prediction.Shape!;
    }

    /// <summary>What a shop reads on it, with errors.</summary>
    public static MeasuredPanel Read(PredictedShape truth, Normal? noise, double sweepError = 0.2, double radiusError = 0.5) => new()
    {
        Sweep = truth.Sweep + Angle.FromDegrees(sweepError / TwoSided * (noise?.Sample() ?? 0)),
        SweepError = Angle.FromDegrees(sweepError),
        RadiusMm = truth.RadiusMm + (radiusError / TwoSided * (noise?.Sample() ?? 0)),
        RadiusErrorMm = radiusError,
    };

    public static CorrectionJob Job(
        PredictionJob pull,
        MeasuredPanel measured,
        double foldError = 0.02,
        double step = 0.5,
        int mostSteps = 4,
        CorrectionDirection direction = CorrectionDirection.Both) => new()
        {
            Pull = pull,
            Measured = measured,
            FoldError = Angle.FromDegrees(foldError),
            IsFormMeasured = true,
            Rules = new(Angle.FromDegrees(step), direction, mostSteps),
            FormMetal = MetalFamily.Steel,
        };
}
