namespace Forming.Estimates;

/// <summary>What a number of panels costs [money].</summary>
/// <param name="FormLabour">Building the form.</param>
/// <param name="FormMaterial">Its sheet.</param>
/// <param name="SetUpLabour">Getting the bench ready.</param>
/// <param name="TrialLabour">Bending the trial panels.</param>
/// <param name="PanelLabour">Bending the good panels.</param>
/// <param name="PanelMaterial">Sheet of all panels, trials too.</param>
/// <param name="Overhead">What rent, power and the office add.</param>
public sealed record EstimateCosts(
    Band FormLabour, Band FormMaterial, Band SetUpLabour, Band TrialLabour, Band PanelLabour, Band PanelMaterial, Band Overhead)
{
    /// <summary>All of it.</summary>
    public Band Total => FormLabour + FormMaterial + SetUpLabour + TrialLabour + PanelLabour + PanelMaterial + Overhead;
}

/// <summary>What one number of panels takes and costs.</summary>
public sealed record PriceRow
{
    /// <summary>Good panels, at least 1.</summary>
    public required int Pieces { get; init; }

    /// <summary>Form, bench, trial panels and good panels together [min].</summary>
    public required Band Minutes { get; init; }

    /// <summary>The last panel [min].</summary>
    public required Band LastPanelMinutes { get; init; }

    /// <summary>Sheet for forms and panels.</summary>
    public required IReadOnlyList<MaterialLine> Materials { get; init; }

    /// <summary>What it costs.</summary>
    public required EstimateCosts Costs { get; init; }

    /// <summary>What to ask for it: its cost, or the minimum charge where that is more [money].</summary>
    public required Band Price { get; init; }

    /// <summary>Whether the likely price is the minimum charge.</summary>
    public required bool IsMinimum { get; init; }

    /// <summary>A panel on the average, all that is paid once shared out [money].</summary>
    public Band EachPrice => 1.0 / Pieces * Price;
}
