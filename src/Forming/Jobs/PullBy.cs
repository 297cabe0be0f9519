using Forming.Results;

namespace Forming.Jobs;

/// <summary>Who or what pulls the panel and lifts the blanks.</summary>
/// <param name="People">How many people, 1 to <see cref="MostPeople"/>.</param>
/// <param name="RatedN">What a winch, press or hoist in their place is rated for [N], &gt; 0; null where people pull.</param>
public sealed record PullBy(int People, double? RatedN = null)
{
    /// <summary>More than this many find no room along one edge: an assumption.</summary>
    public const int MostPeople = 6;

    /// <summary>One person.</summary>
    public static PullBy OnePerson { get; } = new(1);

    /// <summary>The largest hand force that is allowed [N].</summary>
    public double LimitN => RatedN ?? (People * WorkingLimits.HandForceN);

    /// <summary>The heaviest blank that is allowed [kg]; what is rated for the pull lifts no more than that either.</summary>
    public double LimitKg => RatedN is { } rated ? rated / WorkingLimits.Gravity : Math.Min(People, WorkingLimits.MostLifters) * WorkingLimits.LiftKg;
}
