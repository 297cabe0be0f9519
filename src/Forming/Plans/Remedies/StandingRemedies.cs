using Forming.Checks;
using Forming.Facets;
using Forming.Jobs;
using Forming.Plans.Checks;
using Forming.Prediction;
using Forming.Results;

namespace Forming.Plans.Remedies;

/// <summary>What may be changed about the pull over a form that already exists: its folds stay as they are.</summary>
internal static class StandingRemedies
{
    /// <summary>A shorter lever than this is none [mm].</summary>
    private const double LeastLeverMm = 1;

    /// <summary>The checks, those that did not pass with what was tried and cures them.</summary>
    /// <param name="job">Panel and form.</param>
    /// <param name="prediction">How the panel comes off it.</param>
    /// <param name="checks">The checks.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static List<Check> Added(PredictionJob job, PanelPrediction prediction, List<Check> checks, CancellationToken cancellation) =>
    [
        .. checks.Select(check => check switch
        {
            { Verdict: Verdict.Pass } => check,
            { Id: "wrap-order" } => check with { Remedy = ShorterLever(job, prediction, checks, cancellation) ?? None },
            { Id: "form-yield" } => check with { Remedy = Ribs(job, checks, cancellation) ?? None },
            _ => check with { Remedy = Allowed(job, prediction) ?? None },
        }),
    ];

    private static Remedy None => new($"no change of the pull or the finish was found that passes this check: it needs another form", []);

    private static Remedy? ShorterLever(PredictionJob job, PanelPrediction prediction, List<Check> checks, CancellationToken cancellation)
    {
        if (prediction.LongestLeverMm is not { } longest || !(longest * FacetJudge.LeverShare > LeastLeverMm) || longest >= job.LeverMm)
            return null;
        var values = RemedyValues.Down(
            job.Units.FromMm(job.LeverMm),
            job.Units.FromMm(longest * FacetJudge.LeverShare),
            job.Units.FromMm(LeastLeverMm),
            RemedyValues.Tape(job.Units));
        if (values.Numbers.Count == 0)
            return null;
        var value = values.Numbers[values.Start];
        var lever = job.Units.ToMm(value);
        var again = new List<Check>();
        PredictionChecks.AddTo(
            again, PanelPrediction.Of(job with { LeverMm = lever, Panel = job.Panel with { LeverMm = lever } }, cancellation), job.Panel);
        return again[0].Verdict == Verdict.Pass
            && again.All(now => now.Verdict <= (checks.Find(before => before.Id == now.Id)?.Verdict ?? Verdict.Pass))
            ? new($"pull {Figure.Length(lever)} past the end of the curve", [new(JobField.PanelLever, value)])
            : null;
    }

    // Over ribs the form is rigid: nothing else may get worse by it.
    private static Remedy? Ribs(PredictionJob job, List<Check> checks, CancellationToken cancellation)
    {
        var again = new List<Check>();
        PredictionChecks.AddTo(again, PanelPrediction.Of(job with { Beam = null }, cancellation), job.Panel);
        return again.All(now => now.Verdict <= (checks.Find(before => before.Id == now.Id)?.Verdict ?? Verdict.Pass))
            ? new($"put ribs under the form before anyone pulls on it", [new(JobField.FormBacking, null, FormBacking.Ribs)])
            : null;
    }

    private static Remedy? Allowed(PredictionJob job, PanelPrediction prediction)
    {
        if (prediction.Ripple is not { HeightMm: { } height, Slope: { } slope })
            return null;
        var candidate = PlainerFinish.For(job.Units, job.Panel.Finish, height, slope);
        for (var i = candidate.Start; i < candidate.Count; i++)
        {
            var changed = candidate.At(i).Aggregate(job.Panel.Finish, (finish, change) => change.Field == JobField.PanelAllowedRipple
                ? finish with { RippleMm = job.Units.ToMm(change.Number!.Value) }
                : finish with { Slope = Angle.FromDegrees(change.Number!.Value) });
            if (prediction.Passes(changed))
                return new(candidate.TextAt(i), candidate.At(i));
        }

        return null;
    }
}
