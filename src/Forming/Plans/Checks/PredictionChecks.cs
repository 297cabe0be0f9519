using Forming.Checks;
using Forming.Facets;
using Forming.Jobs;
using Forming.Prediction;
using Forming.Results;

namespace Forming.Plans.Checks;

/// <summary>Whether the panel lies over the form and looks as it should; appearance warns and never fails.</summary>
internal static class PredictionChecks
{
    /// <summary>Whether a check is one of these.</summary>
    /// <param name="check">The check.</param>
    public static bool IsOfPrediction(Check check) =>
        check.Kind == CheckIds.WrapOrder || check.Kind == CheckIds.FacetsShow;

    public static void AddTo(List<Check> checks, PanelPrediction prediction, PanelSpec panel)
    {
        checks.Add(WrapOrder(prediction));
        if (prediction.Wraps)
            checks.Add(Ripple(prediction, panel.Finish));
    }

    private static Check WrapOrder(PanelPrediction prediction)
    {
        var (lever, longest) = (prediction.LeverMm, prediction.LongestLeverMm);
        if (prediction is { WhyNot: { } lost, GaveUp: true } && !(longest < lever))
            return new(CheckIds.WrapSolver, Verdict.Warn, lever, longest, lost, $"one fold more or fewer, or a slightly different lever; or wrap a scrap first");
        if (prediction.LeastLeverMm is { } least)
        {
            return new(
                CheckIds.WrapOrder,
                Verdict.Warn,
                lever,
                longest,
                prediction.WhyNot ?? $"with the shorter lever of the plan the hand meets the form first; predicted with the hand {Figure.Length(least)} past the end of the curve",
                $"pull {Figure.Length(least)} past the end of the curve");
        }

        if (prediction.WhyNot is { } why)
        {
            return new(
                CheckIds.WrapOrder,
                Verdict.Warn,
                lever,
                longest,
                why);
        }

        if (!prediction.LandsInOrder)
        {
            return new(
                CheckIds.WrapOrder,
                Verdict.Warn,
                lever,
                longest,
                $"the simulated panel arches over folds and lands on others after them: it touches {prediction.FoldsReached} of {prediction.Folds}");
        }

        return new(
            CheckIds.WrapOrder,
            Verdict.Pass,
            lever,
            lever > longest ? null : longest,
            prediction.FoldsReached < prediction.Folds
                ? $"the simulated panel lands on the folds one after another, and on the lead-out before it touches the last {prediction.Folds - prediction.FoldsReached} of {prediction.Folds}"
            : lever is { } pulled
                ? $"the simulated panel lands on the folds one after another with the hand {Figure.Length(pulled)} past the end of the curve"
                : (FormattableString)$"the simulated panel lands on the folds one after another");
    }

    private static Check Ripple(PanelPrediction prediction, Finish finish)
    {
        if (prediction.Ripple is not { HeightMm: { } height, Slope: { } slope })
            return new(CheckIds.FacetsShow, Verdict.Warn, null, null, $"predicted ripple is not known: {prediction.Ripple.WhyUnknown}");
        var share = Math.Max(height / finish.RippleMm, slope.Radians / finish.Slope.Radians);
        return PlanChecks.AtMost(
            CheckIds.FacetsShow,
            Verdict.Warn,
            share,
            1,
            prediction.Ripple.Facet is { } facet
                ? $"the panel let go has a ripple of up to {Figure.Length(height)} ({Figure.Length(finish.RippleMm)} allowed) and a slope of up to {Figure.Angle(slope.Radians)} ({Figure.Angle(finish.Slope.Radians)} allowed) for a {finish.Name} finish; the facet after fold {facet} is nearest to the limit; not yet checked against measured panels"
                : (FormattableString)$"no facet of the panel let go shows");
    }
}
