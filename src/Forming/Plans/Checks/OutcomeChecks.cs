using Forming.Checks;
using Forming.Prediction;
using Forming.Results;

namespace Forming.Plans.Checks;

/// <summary>Whether the panel that comes off a form solved on the simulated pull is the one that is wanted.</summary>
internal static class OutcomeChecks
{
    public static void AddTo(List<Check> checks, PredictedShape shape)
    {
        var sweep = Math.Abs((shape.Sweep - shape.WantedSweep).Radians);
        var allowed = FinishedTolerance.Sweep.Radians;
        checks.Add(PlanChecks.AtMost(
            CheckIds.FinishedSweep,
            Verdict.Warn,
            sweep,
            allowed,
            $"the panel comes off at {Figure.Angle(shape.Sweep.Radians)}, {Figure.Angle(sweep)} from the sweep asked for ({Figure.Angle(allowed)} allowed)"));
        if (FinishedTolerance.RadiusMiss(shape) is { } miss)
        {
            checks.Add(PlanChecks.AtMost(
                CheckIds.FinishedRadius,
                Verdict.Warn,
                miss,
                FinishedTolerance.RadiusShare,
                $"the panel comes off at a radius of {Figure.Length(shape.RadiusMm!.Value)} over its middle folds, {miss:P1} from the radius asked for ({FinishedTolerance.RadiusShare:P0} allowed)"));
        }

        var profile = FinishedTolerance.ProfileMm(shape);
        checks.Add(PlanChecks.AtMost(
            CheckIds.FinishedShape,
            Verdict.Warn,
            shape.MissMm,
            profile,
            $"the panel lies up to {Figure.Length(shape.MissMm)} off the finished curve ({Figure.Length(profile)} allowed)"));
    }
}
