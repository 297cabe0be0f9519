using Forming.Checks;
using Forming.Jobs;
using Forming.Plans.Drafts;
using Forming.Prediction;
using Forming.Results;

namespace Forming.Plans.Checks;

/// <summary>Whether the panel that comes off the form is the one that is wanted.</summary>
internal static class OutcomeChecks
{
    public static void AddTo(List<Check> checks, PlanDraft draft)
    {
        if (draft.WhyNotSimulated is { } why)
            checks.Add(new(CheckIds.Outcome, Verdict.Warn, null, null, $"what comes off is not known: {why}"));
        if (draft.Prediction?.Shape is { } shape)
            checks.AddRange(Of(shape, draft.Panel.Tolerance));
    }

    /// <summary>Sweep, radius and shape of a panel against what it may miss.</summary>
    /// <param name="shape">The panel let go.</param>
    /// <param name="tolerance">What it may miss.</param>
    public static IEnumerable<Check> Of(PredictedShape shape, FinishedTolerance tolerance)
    {
        var sweep = Math.Abs(shape.SweepMiss.Radians);
        var allowed = tolerance.Sweep.Radians;
        yield return PlanChecks.AtMost(
            CheckIds.FinishedSweep,
            Verdict.Warn,
            sweep,
            allowed,
            shape.Ends is null
                ? $"the panel comes off at {Figure.Angle(shape.Sweep.Radians)}, {Figure.Angle(sweep)} from the sweep asked for ({Figure.Angle(allowed)} allowed)"
                : (FormattableString)$"the panel's face turns {Figure.Angle(shape.Sweep.Radians)} square to the fold lines, {Figure.Angle(sweep)} from what the sweep asked for makes it turn ({Figure.Angle(allowed)} allowed)");
        if (shape.RadiusMiss is { } miss)
        {
            yield return PlanChecks.AtMost(
                CheckIds.FinishedRadius,
                Verdict.Warn,
                miss,
                tolerance.RadiusShare,
                $"the panel comes off at a radius of {Figure.Length(shape.RadiusMm!.Value)} over its middle folds, {miss:P1} from the radius asked for ({tolerance.RadiusShare:P0} allowed)");
        }

        var profile = tolerance.ProfileOver(shape.WantedLengthMm);
        yield return PlanChecks.AtMost(
            CheckIds.FinishedShape,
            Verdict.Warn,
            shape.MissMm,
            profile,
            $"the panel lies up to {Figure.Length(shape.MissMm)} off the finished curve ({Figure.Length(profile)} allowed)");
    }
}
