using Forming.Jobs;
using Forming.Prediction;
using Forming.Springback;

namespace Forming.Outlook;

/// <summary>The outlook of a panel in pure bending at the form's mean curvature: an estimate, for plans that are not simulated.</summary>
/// <remarks>
/// At a fixed form <c>kappa_f = kappa_i - M/(E'I)</c>. Without hardening the slope in the yield stress is
/// <c>dlnR/dlnY = 1.5 m (1 - m²)/Ks</c> with m = ky/kappa_i; here it is taken from the law itself to both sides.
/// </remarks>
internal static class ClosedOutlook
{
    /// <summary>Steps to both sides, in standard deviations.</summary>
    private const double Deviations = 1.5;

    /// <summary>The outlook.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="form">Its form.</param>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="bend">How it bends.</param>
    public static PanelOutlook Of(PanelSpec panel, StandingForm form, BendingLaw law, MeanBend bend)
    {
        var (finished, loaded, sweep, hasRadius) = bend;
        if (form.Folds < 2)
            return PanelOutlook.Unknown($"single folds leave no facets for the panel to wrap over");
        if (PanelPrediction.RadiusOf(finished, panel) is not { } radius)
            return PanelOutlook.Unknown($"next to nothing of the bend stays where the curve ends flat");
        var scatter = ScatterDefaults.Of(panel);
        var thickness = scatter.ThicknessMm / panel.Sheet.ThicknessMm;
        var released = law.Release(loaded);
        var plan = new Outcome(Math.Log(radius), sweep, 0, 0);
        var isOneSided = false;
        var influences = new List<Influence>(5);
        if (!Add(ScatterCause.Yield, scatter.Yield, by => law.Stronger(by).Release(loaded))
            // Strains grow with the thickness as with the curvature.
            || !Add(ScatterCause.Thickness, thickness, by => law.Release(by * loaded) / by)
            // Moment over stiffness is that of a sheet so much weaker.
            || !Add(ScatterCause.Modulus, scatter.Modulus, by => law.Stronger(1 / by).Release(loaded)))
        {
            return PanelOutlook.Unknown($"a panel of a slightly different sheet stays flat on this form");
        }

        influences.AddRange(FoldErrors.Of(form, scatter, law, loaded, hasRadius ? finished : 0, [], panel.Finish));
        var sums = new OutlookSums(plan, influences);
        var after = panel.HasMeasuredSpringback ? null : sums.AfterStrip(law, loaded, scatter.Yield);
        return new()
        {
            IsEstimated = true,
            IsCoarse = isOneSided || finished < PanelOutlook.CoarseFactor * loaded,
            IsMeasured = panel.HasMeasuredSpringback,
            SpringbackFactor = finished / loaded,
            RadiusMm = hasRadius ? sums.Radius : null,
            Sweep = sums.Sweep,
            ChanceOfSweep = sums.ChanceOfSweep(sweep, panel.Tolerance.Sweep.Radians),
            Shares = sums.Shares(hasRadius),
            AfterStrip = after is null ? null : new(hasRadius ? after.Radius : null, after.Sweep),
        };

        bool Add(ScatterCause cause, double deviation, Func<double, double> release)
        {
            if (!(deviation > 0))
                return true;
            var step = Deviations * deviation;
            var (ahead, behind) = (At(1 + step), At(1 - step));
            if (Influence.Between(cause, plan, ahead, behind, Deviations) is not { } influence)
                return false;
            isOneSided |= ahead is null || behind is null;
            influences.Add(influence);
            return true;

            // A measured factor and the law need not agree: what the law changes is added to what was measured.
            Outcome? At(double by)
            {
                var curvature = by > 0 ? finished + release(by) - released : 0;
                return curvature > 0
                    ? new(plan.LnRadius - Math.Log(curvature / finished), sweep * curvature / finished, 0, 0)
                    : null;
            }
        }
    }
}

/// <summary>How a panel bends, on the mean of its mid surface.</summary>
/// <param name="Finished">Curvature wanted [1/mm].</param>
/// <param name="Loaded">Curvature under load [1/mm].</param>
/// <param name="Sweep">Sweep wanted [rad].</param>
/// <param name="HasOneRadius">Whether a radius can be told: a taper has one at every ruling.</param>
internal readonly record struct MeanBend(double Finished, double Loaded, double Sweep, bool HasOneRadius);
