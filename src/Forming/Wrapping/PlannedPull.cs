using Forming.Folds;
using Forming.Jobs;
using Forming.Prediction;
using Forming.Pulling;

namespace Forming.Wrapping;

/// <summary>The pull of a panel over the form that was planned for it.</summary>
internal static class PlannedPull
{
    /// <summary>The panel pulled over and let go.</summary>
    /// <param name="wrapped">The form.</param>
    /// <param name="job">What was asked.</param>
    /// <param name="fold">Shape of its folds.</param>
    /// <param name="work">What the pull may take.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static PanelPrediction Predict(
        WrappedForm wrapped, FormJob job, FoldShape fold, PullWork work, CancellationToken cancellation) =>
        PanelPrediction.Of(JobOf(wrapped, job, fold), work, cancellation);

    /// <summary>What is pulled over what.</summary>
    /// <param name="wrapped">The form.</param>
    /// <param name="job">What was asked.</param>
    /// <param name="fold">Shape of its folds.</param>
    public static PredictionJob JobOf(WrappedForm wrapped, FormJob job, FoldShape fold)
    {
        var longest = Lever.LongestMm(wrapped.Contact.Extremes, wrapped.Contact.MidMm);
        return new()
        {
            Panel = job.Panel,
            Form = FormOf(wrapped, fold),
            Beam = FormBeam.Of(job),
            Ends = job.Form.Stepping.Ends,
            LeverMm = wrapped.Judge.LeverMm,
            LongestLeverMm = double.IsFinite(longest) ? Math.Max(0, longest) : null,
        };
    }

    /// <summary>The form as it will stand.</summary>
    /// <param name="wrapped">The form.</param>
    /// <param name="fold">Shape of its folds.</param>
    public static StandingForm FormOf(WrappedForm wrapped, FoldShape fold) =>
        new(wrapped.Folds.Polygon.Facets, wrapped.Folds.Polygon.Angles, fold.OuterRadiusMm);
}
