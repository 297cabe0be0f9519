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

    /// <summary>Panels of the batch, at least 1.</summary>
    public int Pieces { get; init; } = 1;

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

    /// <summary>Another method to hold the form against, or null.</summary>
    public OtherMethod? Other { get; init; }

    /// <summary>Price of the form's sheet.</summary>
    internal SheetPrice FormSheet => Rates.FormSheet ?? new PricePerKg(NominalPrices.SheetPerKg(Form.Sheet.Material.Family));

    /// <summary>Price of the panel's sheet.</summary>
    internal SheetPrice PanelSheet => Rates.PanelSheet ?? new PricePerKg(NominalPrices.SheetPerKg(Panel.Sheet.Material.Family));
}
