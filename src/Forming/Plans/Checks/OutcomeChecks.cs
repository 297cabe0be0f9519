using Forming.Checks;
using Forming.Prediction;
using Forming.Results;

namespace Forming.Plans.Checks;

/// <summary>Whether the panel that comes off a form solved on the simulated pull is the one that is wanted.</summary>
internal static class OutcomeChecks
{
    /// <summary>Allowed miss of the sweep [rad]: an assumption; ISO 2768-1 class v allows it for legs of 50 to 120 mm.</summary>
    private const double SweepTolerance = Math.PI / 180;

    /// <summary>Allowed miss of the radius, as a share: an assumption.</summary>
    private const double RadiusTolerance = 0.02;

    /// <summary>Allowed distance from the finished curve for its developed length, and the least that is asked [mm]: assumptions.</summary>
    private const double ProfilePerLength = 0.003;

    private const double LeastProfileMm = 0.3;

    public static void AddTo(List<Check> checks, PredictedShape shape)
    {
        var sweep = Math.Abs((shape.Sweep - shape.WantedSweep).Radians);
        checks.Add(PlanChecks.AtMost(
            CheckIds.FinishedSweep,
            Verdict.Warn,
            sweep,
            SweepTolerance,
            $"the panel comes off at {Figure.Angle(shape.Sweep.Radians)}, {Figure.Angle(sweep)} from the sweep that is wanted ({Figure.Angle(SweepTolerance)} allowed)"));
        if (shape is { RadiusMm: { } radius, WantedRadiusMm: { } wanted })
        {
            var miss = Math.Abs((radius / wanted) - 1);
            checks.Add(PlanChecks.AtMost(
                CheckIds.FinishedRadius,
                Verdict.Warn,
                miss,
                RadiusTolerance,
                $"the panel comes off at a radius of {Figure.Length(radius)} over its middle folds, {miss:P1} from {Figure.Length(wanted)} ({RadiusTolerance:P0} allowed)"));
        }

        var profile = Math.Max(LeastProfileMm, ProfilePerLength * shape.WantedLengthMm);
        checks.Add(PlanChecks.AtMost(
            CheckIds.FinishedShape,
            Verdict.Warn,
            shape.MissMm,
            profile,
            $"the panel lies up to {Figure.Length(shape.MissMm)} off the finished curve ({Figure.Length(profile)} allowed)"));
    }
}
