using Forming.Curves;
using Forming.Folds;
using Forming.Jobs;
using Forming.Prediction;

namespace Forming.Wrapping;

/// <summary>One pull over folds near those that a solve would end with: what can be followed there can mostly be solved.</summary>
internal static class FirstPull
{
    /// <summary>A single pull that is worth following takes far less.</summary>
    private const long MostWork = PullWork.MostOfSolving / 20;

    private const int LeastFolds = 3;

    /// <summary>Pulls.</summary>
    /// <param name="job">What is asked; solved on the simulated pull.</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <param name="whole">What this work is a part of.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <returns>How the panel comes off; null where it cannot be followed.</returns>
    public static PanelPrediction? Of(FormJob job, FoldShape fold, PullWork whole, CancellationToken cancellation)
    {
        var finished = FinishedCurve.On(job.Panel.Curve, job.Panel.Surface, job.Panel.Sheet.ThicknessMm, cancellation);
        var closed = WrappedForm.Solve(finished, job, fold, cancellation);
        if (closed.Folds.HasSingleFold || closed.Folds.Polygon.Angles.Length > SolvedCount.MostFolds)
            return null;
        if (job.Form.Stepping is { Folds: null, FoldAngle: null, SpacingMm: null })
        {
            var folds = (int)Math.Ceiling(SolvedCount.GuessShare * closed.Folds.Polygon.Angles.Length);
            job = job with { Form = job.Form with { Stepping = job.Form.Stepping with { Folds = Math.Max(LeastFolds, folds) } } };
            closed = WrappedForm.Solve(finished, job, fold, cancellation);
        }

        return new WrapSolver(closed, finished, job, fold, new(MostWork, whole), cancellation).First()?.Prediction;
    }
}
