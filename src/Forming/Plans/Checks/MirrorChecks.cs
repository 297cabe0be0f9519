using Forming.Checks;
using Forming.Jobs;
using Forming.Plans.Drafts;
using Forming.Results;

namespace Forming.Plans.Checks;

/// <summary>Whether the second half of a mirrored panel can be pulled with the finished half swinging along.</summary>
internal static class MirrorChecks
{
    /// <summary>A finger caught in less is crushed [mm]: ISO 13854, from memory.</summary>
    private const double FingerRoomMm = 25;

    public static void AddTo(List<Check> checks, PlanDraft draft)
    {
        checks.Add(Pull(draft.SecondHalf, draft.Panel.PullBy));
        checks.Add(Clearance(draft.SecondHalf));
    }

    // Warns, as the first pull does: more people or a winch pull what those who are there cannot.
    private static Check Pull(SecondHalf? half, PullBy by)
    {
        if (half is null)
            return NotKnown(CheckIds.SecondHalfPull);
        var pull = PullChecks.HandForce(half.ForceN, by);
        return pull with
        {
            Kind = CheckIds.SecondHalfPull,
            Text = by switch
            {
                { RatedN: { } rated } => $"the second half takes {Figure.Force(half.ForceN)} to pull, as the finished half of {Figure.Mass(half.MassKg)} swings with it; what pulls it is rated for {Figure.Force(rated)}",
                { People: 1 } => $"the second half takes {Figure.Force(half.ForceN)} to pull, as the finished half of {Figure.Mass(half.MassKg)} swings with it; one person should not pull more than {Figure.Force(pull.Limit!.Value)}",
                _ => (FormattableString)$"the second half takes {Figure.Force(half.ForceN)} to pull, as the finished half of {Figure.Mass(half.MassKg)} swings with it; {by.People} people should not pull more than {Figure.Force(pull.Limit!.Value)}",
            },
        };
    }

    // Fails where the finished half strikes: the second half cannot be pulled down then.
    private static Check Clearance(SecondHalf? half) => half is null
        ? NotKnown(CheckIds.SecondHalfClearance)
        : PlanChecks.AtLeast(
            CheckIds.SecondHalfClearance,
            half.ClearanceMm > 0 ? Verdict.Warn : Verdict.Fail,
            half.ClearanceMm,
            FingerRoomMm,
            half.ClearanceMm > 0
                ? $"the finished half passes form, clamp and bench with {Figure.Length(half.ClearanceMm)} to spare while the second is pulled"
                : (FormattableString)$"the finished half strikes the form, the clamp or the bench while the second is pulled");

    private static Check NotKnown(CheckId id) => new(
        id, Verdict.Warn, null, null, $"how the finished half of a tapered panel swings is not worked out: swing it through by hand first, with its weight on a hoist");
}
