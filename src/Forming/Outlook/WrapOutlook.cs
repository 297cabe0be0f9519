using Forming.Jobs;
using Forming.Materials;
using Forming.Prediction;
using Forming.Results;

namespace Forming.Outlook;

/// <summary>The outlook of a panel on the simulated pull: the form stays, the sheet differs.</summary>
internal static class WrapOutlook
{
    /// <summary>
    /// Steps of this many standard deviations to both sides carry slope and bend over a band; of no less than <see cref="LeastStep"/>.
    /// </summary>
    private const double Deviations = 1.5;

    /// <summary>Smaller steps drown in the solver's own tolerance, as a share.</summary>
    private const double LeastStep = 0.005;

    /// <summary>The outlook.</summary>
    /// <param name="job">Panel and form, with the lever of the prediction.</param>
    /// <param name="prediction">How the nominal panel comes off.</param>
    /// <param name="work">What up to six more pulls may take.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static PanelOutlook Of(PredictionJob job, PanelPrediction prediction, PullWork work, CancellationToken cancellation)
    {
        if (prediction.Shape is not { } shape)
            return PanelOutlook.Unknown(prediction.WhyNot!);
        if (SumsOf(job, prediction, work, cancellation) is not var (sums, isOneSided))
            return PanelOutlook.Unknown($"a panel of a slightly different sheet cannot be followed over this form");
        var scatter = ScatterDefaults.Of(job.Panel);
        var loaded = LoadedOf(job, shape);
        var factor = shape.WantedLengthMm > 0 ? shape.Sweep.Radians / (loaded * shape.WantedLengthMm) : 0;
        var after = job.Panel.HasMeasuredSpringback ? null : sums.AfterStrip(job.Panel.Law(), loaded, scatter.Yield);
        var (hasRadius, isRippleKnown) = (shape.RadiusMm is not null, prediction.Ripple.HeightMm > 0);
        return new()
        {
            IsCoarse = isOneSided || factor < PanelOutlook.CoarseFactor,
            IsMeasured = job.Panel.HasMeasuredSpringback,
            SpringbackFactor = factor,
            RadiusMm = hasRadius ? sums.Radius : null,
            Sweep = sums.Sweep,
            Ripple = isRippleKnown ? sums.Ripple : null,
            ChanceOfFacets = isRippleKnown ? sums.ChanceOfFacets : null,
            ChanceOfSweep = sums.ChanceOfSweep(shape.WantedSweep.Radians, job.Panel.Tolerance.Sweep.Radians),
            Shares = sums.Shares(hasRadius),
            AfterStrip = after is null ? null : new(hasRadius ? after.Radius : null, after.Sweep),
        };
    }

    /// <summary>What each cause does to the panel.</summary>
    /// <param name="job">Panel and form, with the lever of the prediction.</param>
    /// <param name="prediction">How the nominal panel comes off.</param>
    /// <param name="work">What the pulls may take.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <returns>Null where a panel that differs cannot be followed to either side.</returns>
    public static (OutlookSums Sums, bool IsOneSided)? SumsOf(
        PredictionJob job, PanelPrediction prediction, PullWork work, CancellationToken cancellation)
    {
        if (OutcomeOf(prediction, job.Panel) is not { } plan)
            return null;
        var panel = job.Panel with { LeverMm = prediction.LeverMm };
        var standing = job with { LeverMm = prediction.LeverMm!.Value };
        var (scatter, sheet) = (ScatterDefaults.Of(panel), panel.Sheet);
        var isOneSided = false;
        var influences = new List<Influence>(5);
        if (!Add(ScatterCause.Yield, scatter.Yield, by => panel with { StrengthFactor = panel.StrengthFactor * by })
            || !Add(ScatterCause.Thickness, scatter.ThicknessMm / sheet.ThicknessMm, by => panel with { Sheet = Thicker(sheet, by) })
            || !Add(ScatterCause.Modulus, scatter.Modulus, by => panel with { Sheet = Stiffer(sheet, by) }))
        {
            return null;
        }

        var shape = prediction.Shape!;
        var curvature = shape.RadiusMm is { } radius ? 1 / radius : 0;
        influences.AddRange(
            FoldErrors.Of(job.Form, scatter, panel.Law(), LoadedOf(job, shape), curvature, shape.Facets, panel.Finish));
        return (new(plan, influences), isOneSided);

        bool Add(ScatterCause cause, double deviation, Func<double, PanelSpec> panelBy)
        {
            // A cause that does not vary needs no pull.
            if (!(deviation > 0))
                return true;
            var step = Math.Max(Deviations * deviation, LeastStep);
            var (ahead, behind) = (At(1 + step), At(1 - step));
            if (Influence.Between(cause, plan, ahead, behind, step / deviation) is not { } influence)
                return false;
            isOneSided |= ahead is null || behind is null;
            influences.Add(influence);
            return true;

            Outcome? At(double by)
            {
                if (!(by > 0))
                    return null;
                try
                {
                    return OutcomeOf(PanelPrediction.Of(standing with { Panel = panelBy(by) }, work, cancellation), panel);
                }
                catch (NoSolutionException)
                {
                    // A sheet so much thicker does not bend to the curve that is wanted.
                    return null;
                }
            }
        }
    }

    private static Sheet Thicker(Sheet sheet, double by) => sheet with { ThicknessMm = by * sheet.ThicknessMm };

    private static Sheet Stiffer(Sheet sheet, double by) =>
        sheet with { Material = sheet.Material with { YoungsModulusMpa = by * sheet.Material.YoungsModulusMpa } };

    private static double LoadedOf(PredictionJob job, PredictedShape shape) => job.Form.FoldAngles.Sum() / shape.WantedLengthMm;

    private static Outcome? OutcomeOf(PanelPrediction prediction, PanelSpec panel)
    {
        if (prediction.Shape is not { } shape)
            return null;
        var ripple = prediction.Ripple;
        var isKnown = ripple.HeightMm > 0;
        return new(
            shape.RadiusMm is { } radius ? Math.Log(radius) : 0,
            shape.Sweep.Radians,
            isKnown ? Math.Log(Share()) : 0,
            isKnown ? Math.Log(ripple.HeightMm!.Value) : 0);

        double Share() =>
            Math.Max(ripple.HeightMm!.Value / panel.Finish.RippleMm, ripple.Slope!.Value.Radians / panel.Finish.Slope.Radians);
    }
}
