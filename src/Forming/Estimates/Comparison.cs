namespace Forming.Estimates;

/// <summary>Another way to make the same panels, by its maker's own values.</summary>
/// <param name="Name">Its name.</param>
/// <param name="FixedCost">Once, whatever the count [money], at least 0.</param>
/// <param name="CostPerPiece">For each panel, its sheet included [money], at least 0.</param>
/// <param name="MinutesPerPiece">Labour for each panel beside that, at the same rate [min], at least 0.</param>
public sealed record OtherMethod(string Name, double FixedCost, double CostPerPiece, double MinutesPerPiece = 0)
{
    /// <summary>Its cost of each panel, labour included [money].</summary>
    /// <param name="labourPerHour">An hour of labour [money].</param>
    public double EachPiece(double labourPerHour) => CostPerPiece + (MinutesPerPiece * labourPerHour / 60);
}

/// <summary>A form held against another method.</summary>
/// <param name="Other">The other method.</param>
/// <param name="OtherTotal">What it costs for the batch [money].</param>
/// <param name="Saving">What the form saves on the batch; below 0 it costs more [money]. The other method's values are taken as given; low
/// is the saving where the form's are high.</param>
/// <param name="Low">Break-even where all of the form's values are low.</param>
/// <param name="Likely">Break-even at the likely values.</param>
/// <param name="High">Break-even where all of the form's values are high.</param>
public sealed record Comparison(OtherMethod Other, double OtherTotal, Band Saving, BreakEven Low, BreakEven Likely, BreakEven High);

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

    /// <summary>Searches count by count on the actual cumulative costs.</summary>
    /// <param name="form">The form's cost.</param>
    /// <param name="otherFixed">What the other method costs once [money].</param>
    /// <param name="otherEach">What it costs for each panel [money].</param>
    /// <param name="horizon">Largest count looked at, at least 1.</param>
    /// <remarks>
    /// A panel's own cost never rises with the count, so the form's total less the other's is a concave row. Once the form is cheaper and
    /// its
    /// next panel is no dearer than the other's, it stays cheaper; once it is not cheaper and no later panel is, it never will be.
    /// </remarks>
    public static BreakEven Search(CostLine form, double otherFixed, double otherEach, int horizon = Horizon)
    {
        int? upTo = null, from = null;
        double mine = form.Fixed, next = form.Own(1);
        var isCheaper = false;
        for (var n = 1; n <= horizon; n++)
        {
            mine += next;
            next = form.Own(n + 1);
            var others = otherFixed + (otherEach * n);
            var was = isCheaper;
            isCheaper = mine < others - (Tie * Math.Max(mine, others));
            if (isCheaper && !was)
                from = n;
            else if (was && !isCheaper)
                (upTo, from) = (n - 1, null);
            if (isCheaper ? next <= otherEach : form.Floor >= otherEach)
                return new(OutcomeOf(from, upTo, isSettled: true), from, upTo, IsProven: true);
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
