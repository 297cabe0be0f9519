using Forming.Blanks;
using Forming.Curves;
using Forming.Facets;
using Forming.Materials;
using Forming.Pulling;
using Forming.Results;
using Forming.Springback;

namespace Forming.Jobs;

/// <summary>The finished panel that is wanted, and how it will be pulled.</summary>
public sealed record PanelSpec
{
    /// <summary>Material and thickness.</summary>
    public required Sheet Sheet { get; init; }

    /// <summary>The finished curve.</summary>
    public required PanelCurve Curve { get; init; }

    /// <summary>The face on which the curve was measured.</summary>
    public Surface Surface { get; init; } = Surface.Inside;

    /// <summary>Width along the folds [mm], &gt; 0.</summary>
    public required double WidthMm { get; init; }

    /// <summary>Flat before the curve [mm], at least 0.</summary>
    public required double LeadInMm { get; init; }

    /// <summary>Flat after the curve [mm], at least 0; with <see cref="Mirrored"/> the single flat between the two curves.</summary>
    public required double LeadOutMm { get; init; }

    /// <summary>Material left on for trimming at each end of the blank [mm], at least 0.</summary>
    public double TrimMm { get; init; }

    /// <summary>Whether the panel carries the curve twice, symmetric about its centre line.</summary>
    public bool Mirrored { get; init; }

    /// <summary>What may show in the finished panel.</summary>
    public required Finish Finish { get; init; }

    /// <summary>How the folds lie to the panel's rolling direction.</summary>
    public Grain Grain { get; init; } = Grain.Unknown;

    /// <summary>Hand to the end of the curve [mm], at least 0; null lets the plan choose.</summary>
    public double? LeverMm { get; init; }

    /// <summary>The clamp on the lead-in.</summary>
    public Clamp Clamp { get; init; } = Clamp.Default;

    /// <summary>Who or what pulls it.</summary>
    public PullBy PullBy { get; init; } = PullBy.OnePerson;

    /// <summary>How far what comes off may miss what is wanted.</summary>
    public FinishedTolerance Tolerance { get; init; } = FinishedTolerance.Default;

    /// <summary>How much its sheet and the form's folds differ from what is planned; null takes the defaults.</summary>
    public Scatter? Scatter { get; init; }

    /// <summary>
    /// How much stronger this sheet is than its material says: its whole flow curve, the yield stress with it, times this; &gt; 0.
    /// </summary>
    public double StrengthFactor { get; init; } = 1;

    /// <summary>Whether its yield stress or its springback was measured on the coil.</summary>
    public bool HasMeasuredSpringback => Springback is MeasuredFactor or { YieldMpa: not null };

    /// <summary>How springback is found.</summary>
    public SpringbackChoice Springback { get; init; } = new SolvedOnWrap();

    /// <summary>Whether the panel is pulled over the planned form in simulation where its springback is not found that way.</summary>
    public bool Predict { get; init; }

    /// <summary>
    /// Sheet past the end of the curve that a hand can pull on [mm]: lead-out and trim, or the flat between the two curves.
    /// </summary>
    public double SheetPastCurveMm => LeadOutMm + (Mirrored ? 0 : TrimMm);

    /// <summary>Sheets that blanks are cut from.</summary>
    public IReadOnlyList<StockSheet> StockSheets { get; init; } = StockSheet.Defaults;

    /// <summary>How its sheet bends, by its own yield stress or by one that test strips measured.</summary>
    public BendingLaw Law()
    {
        var law = Springback.YieldMpa is { } measured ? BendingLaw.WithYield(Sheet, measured) : BendingLaw.Of(Sheet);
        return StrengthFactor == 1 ? law : law.Stronger(StrengthFactor);
    }
}

/// <summary>How the folds lie to the rolling direction.</summary>
public enum Grain
{
    /// <summary>Not known; treated as along.</summary>
    Unknown,

    /// <summary>Folds square to the rolling direction.</summary>
    Across,

    /// <summary>Folds parallel to the rolling direction.</summary>
    Along,
}

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
    public double LimitKg =>
        RatedN is { } rated ? rated / WorkingLimits.Gravity : Math.Min(People, WorkingLimits.MostLifters) * WorkingLimits.LiftKg;
}
