namespace Forming.Estimates;

/// <summary>How a form compares with another method, over all counts of panels.</summary>
public enum BreakEvenOutcome
{
    /// <summary>Cheaper at every count.</summary>
    Always,

    /// <summary>Cheaper from some count on.</summary>
    From,

    /// <summary>Cheaper up to some count only.</summary>
    UpTo,

    /// <summary>Cheaper up to some count, dearer beyond it, cheaper again from a larger one on.</summary>
    UpToAndFrom,

    /// <summary>Cheaper at no count.</summary>
    Never,

    /// <summary>Cheaper at no count within the horizon; beyond it not known.</summary>
    NotWithinHorizon,
}

/// <summary>From how many panels on a form is cheaper in total than another method.</summary>
/// <param name="Outcome">The result.</param>
/// <param name="From">Smallest count from which the form is cheaper and stays so, or null.</param>
/// <param name="UpTo">Largest count up to which it is cheaper first, where it is not for good; or null.</param>
/// <param name="IsProven">Whether the outcome holds for all counts, and not only up to the horizon.</param>
public sealed record BreakEven(BreakEvenOutcome Outcome, int? From, int? UpTo, bool IsProven)
{
    /// <summary>Counts looked at where nothing settles the matter before.</summary>
    public const int Horizon = 100_000;

    /// <summary>The outcome in words.</summary>
    public FormattableString Text => (Outcome, IsProven) switch
    {
        (BreakEvenOutcome.Always, true) => $"the form is cheaper at every count of panels",
        (BreakEvenOutcome.Always, false) => $"the form is cheaper at every count up to {Horizon}; a panel still costs more there than the other method's, so it may not be for ever",
        (BreakEvenOutcome.From, _) => $"the form is cheaper from {From} panels on",
        (BreakEvenOutcome.UpTo, true) => $"the form is cheaper up to {UpTo} panels, and never beyond",
        (BreakEvenOutcome.UpTo, false) => $"the form is cheaper up to {UpTo} panels, and not again up to {Horizon}",
        (BreakEvenOutcome.UpToAndFrom, _) => $"the form is cheaper up to {UpTo} panels, and again, with what is learnt, from {From} on",
        (BreakEvenOutcome.Never, _) => $"the form is not cheaper at any count of panels: it costs more to begin with, and its panels never make up for it",
        _ => $"the form is not cheaper up to {Horizon} panels; each later panel gains so little that it would be only far beyond",
    };

    // Cheaper by less than rounding is not cheaper.
    private const double Tie = 1e-9;

    /// <summary>Searches count by count on the cumulative costs.</summary>
    /// <param name="form">The form's cost.</param>
    /// <param name="other">The other method's cost.</param>
    /// <param name="horizon">Largest count looked at, at least 1.</param>
    /// <remarks>
    /// Once the form is cheaper and no later panel costs more than the other's, it stays cheaper; once it is not cheaper and no later
    /// panel costs less, it never will be.
    /// </remarks>
    public static BreakEven Search(CostLine form, CostLine other, int horizon = Horizon)
    {
        int? upTo = null, from = null;
        double mine = form.Begin, others = other.Begin;
        var isCheaper = false;
        for (var n = 1; n <= horizon; n++)
        {
            mine += form.Own(n);
            others += other.Own(n);
            var was = isCheaper;
            isCheaper = mine < others - (Tie * Math.Max(mine, others));
            if (isCheaper && !was)
                from = n;
            else if (was && !isCheaper)
                (upTo, from) = (n - 1, null);
            var (least, most) = form.Over(other, n);
            if (isCheaper ? most <= 0 : least >= 0)
                return new(OutcomeOf(from, upTo, isSettled: true), from, upTo, IsProven: true);
            // What is left of the horizon cannot change it.
            var left = horizon - n;
            var slack = Tie * (others + (left * other.Own(n + 1)));
            if (isCheaper ? mine - others + (left * most) < -slack : mine - others + (left * least) >= 0)
                break;
        }

        return new(OutcomeOf(from, upTo, isSettled: false), from, upTo, IsProven: false);
    }

    private static BreakEvenOutcome OutcomeOf(int? from, int? upTo, bool isSettled) => (from, upTo) switch
    {
        (1, null) => BreakEvenOutcome.Always,
        (not null, null) => BreakEvenOutcome.From,
        (not null, not null) => BreakEvenOutcome.UpToAndFrom,
        (null, not null) => BreakEvenOutcome.UpTo,
        _ => isSettled ? BreakEvenOutcome.Never : BreakEvenOutcome.NotWithinHorizon,
    };
}
