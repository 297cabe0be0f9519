using Forming.Learning;
using Forming.Results;
using MathNet.Numerics.Distributions;

namespace Forming.Corrections;

/// <summary>Why the yield stress that a panel teaches may not be the cause, and which measurement would tell.</summary>
internal static class PanelDoubts
{
    /// <summary>Good readings are doubted without cause this often.</summary>
    private const double FalseAlarms = 0.01;

    /// <summary>Where more than this share comes from the grade, nothing was learnt.</summary>
    private const double MostOfPrior = 0.75;

    /// <summary>The doubts.</summary>
    /// <param name="job">Panel, form and readings.</param>
    /// <param name="learnt">What was learnt.</param>
    /// <param name="posterior">How.</param>
    /// <param name="prior">What was known before.</param>
    public static IEnumerable<PanelDoubt> Of(CorrectionJob job, LearntYield learnt, YieldPosterior posterior, SheetPrior prior)
    {
        if (learnt.PriorWeight > MostOfPrior && !job.Pull.Panel.HasMeasuredSpringback)
            yield return new("readings-tell-nothing", $"The readings say next to nothing of this sheet: its yield is the grade's. Read the sweep and the radius, or a template over the whole curve, to an error that is small against what the panel is off.");
        var alone = learnt.ByReadingsMpa;
        var (low, high) = ((1 - Plausibility.PanelShare) * learnt.GradeMpa, (1 + Plausibility.PanelShare) * learnt.GradeMpa);
        var isWeak = learnt.EffectiveMpa.Value < low || alone.High < low;
        if (isWeak || learnt.EffectiveMpa.Value > high || alone.Low > high)
        {
            var thickness = job.Pull.Panel.Sheet.ThicknessMm * learnt.UsedMpa / alone.Value;
            var likelier = isWeak
                ? "A thicker sheet, a shorter lever or folds closed too far"
                : "A thinner sheet, a longer lever, a clamp that slipped or folds too open";
            var then = job.IsFormMeasured ? "check" : "measure the folds, and check";
            yield return new("yield-implausible", $"The readings ask for a yield of {Figure.Stress(alone.Value)}; the grade has {Figure.Stress(learnt.GradeMpa)}. {likelier} is likelier. Measure the sheet with a micrometer first: {Figure.Length(thickness)} in place of {Figure.Length(job.Pull.Panel.Sheet.ThicknessMm)} would explain it as well. Then {then} where the clamp and the hand were.");
        }
        else if (job.Pull.Panel.Springback.YieldMpa is { } measured
            && Math.Abs(posterior.Alone!.Value.LnFactor) > 3 * Math.Sqrt((prior.Effective * prior.Effective) + AloneVariance(posterior)))
        {
            yield return new("contradicts-strips", $"The readings ask for a yield of {Figure.Stress(alone.Value)}, the strips for {Figure.Stress(measured)}. Measure the panel's thickness and the strips' with a micrometer: they may be of two sheets.");
        }

        if (job.Measured is { Sweep: not null, RadiusMm: not null }
            && Plausibility.Apart([.. posterior.Each().Take(2).Select(one =>
                (one.LnLow ?? double.NegativeInfinity, one.LnHigh ?? double.PositiveInfinity))]) is not null)
        {
            yield return new("readings-apart", $"No one yield explains both the sweep and the radius. Measure both again, and {(job.IsFormMeasured ? "check that the radius was read between the folds named" : "measure the form's folds")}: a fold that is off changes one and not the other.");
        }

        if (job.Measured.Points is { } points && points.Count > 4
            && posterior.Misfit > ChiSquared.InvCDF(Math.Max(1, posterior.Residuals.Count - 4), 1 - FalseAlarms))
        {
            yield return new("template-rough", $"The points lie further off any panel that this form makes than their error of {Figure.Length(job.Measured.PointErrorMm)}: look for a misread point, or give the error that they have.");
        }
    }

    private static double AloneVariance(YieldPosterior posterior)
    {
        var alone = posterior.Alone!.Value;
        var half = Math.Max(alone.LnHigh - alone.LnFactor ?? 1, alone.LnFactor - alone.LnLow ?? 1) / YieldPosterior.TwoSided;
        return half * half;
    }
}
