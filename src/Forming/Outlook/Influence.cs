namespace Forming.Outlook;

/// <summary>What of a panel is looked at, as it is taken to be normal; also a change of it.</summary>
/// <param name="LnRadius">Logarithm of the radius; 0 where there is none.</param>
/// <param name="Sweep">Sweep [rad].</param>
/// <param name="LnShare">Logarithm of the largest share of the finish's limits that a facet uses; 0 where ripple is not known.</param>
/// <param name="LnHeight">Logarithm of the largest ripple; 0 where it is not known.</param>
internal readonly record struct Outcome(double LnRadius, double Sweep, double LnShare, double LnHeight)
{
    public static Outcome operator +(Outcome a, Outcome b) =>
        new(a.LnRadius + b.LnRadius, a.Sweep + b.Sweep, a.LnShare + b.LnShare, a.LnHeight + b.LnHeight);

    public static Outcome operator -(Outcome a, Outcome b) => a + (-1 * b);

    public static Outcome operator *(double by, Outcome a) => new(by * a.LnRadius, by * a.Sweep, by * a.LnShare, by * a.LnHeight);

    /// <summary>Each squared.</summary>
    public Outcome Squared => new(LnRadius * LnRadius, Sweep * Sweep, LnShare * LnShare, LnHeight * LnHeight);
}

/// <summary>What one cause does.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="First">Change for one standard deviation of it: its own standard deviation in each outcome.</param>
/// <param name="Shift">Shift of the mean by its second-order term.</param>
internal readonly record struct Influence(ScatterCause Cause, Outcome First, Outcome Shift)
{
    /// <summary>From what the panel does a step to either side of the plan.</summary>
    /// <param name="cause">The cause.</param>
    /// <param name="plan">The outcome as planned.</param>
    /// <param name="ahead">The outcome a step ahead, or null where it cannot be followed.</param>
    /// <param name="behind">The same a step behind.</param>
    /// <param name="deviations">The step in standard deviations.</param>
    /// <returns>Null where neither side can be followed.</returns>
    public static Influence? Between(ScatterCause cause, Outcome plan, Outcome? ahead, Outcome? behind, double deviations) =>
        (ahead, behind) switch
        {
            ({ } up, { } down) => new(
                cause, 1 / (2 * deviations) * (up - down), 1 / (2 * deviations * deviations) * (up + down - (2 * plan))),
            ({ } up, null) => new(cause, 1 / deviations * (up - plan), default),
            (null, { } down) => new(cause, 1 / deviations * (plan - down), default),
            _ => null,
        };

    /// <summary>The same cause with less scatter.</summary>
    /// <param name="share">New standard deviation over the old one.</param>
    public Influence Narrower(double share) => this with { First = share * First, Shift = share * share * Shift };
}
