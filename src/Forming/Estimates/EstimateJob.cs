using Forming.Jobs;
using Forming.Plans;

namespace Forming.Estimates;

/// <summary>A planned job whose time and cost are wanted.</summary>
public sealed record EstimateJob
{
    /// <summary>The plan.</summary>
    public required FormPlan Plan { get; init; }

    /// <summary>The panel it was made for.</summary>
    public required PanelSpec Panel { get; init; }

    /// <summary>The form as it was asked for.</summary>
    public required FormSpec Form { get; init; }

    /// <summary>What the asker left open in panel, form and brake.</summary>
    public IReadOnlyList<OpenValue> Assumed { get; init; } = [];

    /// <summary>Counts of panels that a price is wanted for, each at least 1.</summary>
    public IReadOnlyList<int> Pieces { get; init; } = OnePiece;

    /// <summary>What work takes and what labour and sheet cost.</summary>
    public EstimateRates Rates { get; init; } = new();

    /// <summary>Whether the prices are somebody's own even where they equal the nominal ones.</summary>
    public bool HasOwnPrices { get; init; }

    /// <summary>Counts that the caller knows better.</summary>
    public WorkCounts Counts { get; init; } = new();

    /// <summary>How panels get faster.</summary>
    public LearningCurve Learning { get; init; } = LearningCurve.None;

    /// <summary>How far the values may be out.</summary>
    public EstimateSpreads Spreads { get; init; } = EstimateSpreads.Default;

    /// <summary>Bumping the panel, to hold the form against; null takes the usual rules for its sheet.</summary>
    public Bumping? Bumping { get; init; }

    /// <summary>Rolling it, or null where nobody gives its times.</summary>
    public Rolling? Rolling { get; init; }

    /// <summary>Another method to hold the form against, or null.</summary>
    public OtherMethod? Other { get; init; }

    /// <summary>A single panel.</summary>
    public static IReadOnlyList<int> OnePiece { get; } = [1];

    /// <summary>How the form's sheet is bought.</summary>
    internal SheetPurchase FormSheet =>
        Rates.FormSheet ?? new(new PricePerKg(NominalPrices.SheetPerKg(Form.Sheet.Material.Family)));

    /// <summary>How the panel's sheet is bought.</summary>
    internal SheetPurchase PanelSheet =>
        Rates.PanelSheet ?? new(new PricePerKg(NominalPrices.SheetPerKg(Panel.Sheet.Material.Family)));

    /// <summary>Panels bent before the first good one.</summary>
    internal int Trials => Counts.Trials ?? WorkCounts.TrialsByDefault;

    /// <summary>Least price of a job [money].</summary>
    internal double MinimumCharge => Rates.MinimumCharge ?? EstimateRates.StandardMinimum(Rates.LabourPerHour);

    /// <summary>Bumping with the usual rules where nobody gave others.</summary>
    internal Bumping Bumped => Bumping ?? new() { PitchMm = Estimates.Bumping.PitchFor(Panel.Sheet.ThicknessMm) };
}
