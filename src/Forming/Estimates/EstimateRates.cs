namespace Forming.Estimates;

/// <summary>What work takes and what labour and sheet cost.</summary>
public sealed record EstimateRates
{
    /// <summary>Times of building a form.</summary>
    public FormRates Form { get; init; } = FormRates.Default;

    /// <summary>Times of a panel.</summary>
    public PanelRates Panel { get; init; } = PanelRates.Default;

    /// <summary>An hour of one person's work [money], at least 0.</summary>
    public double LabourPerHour { get; init; } = NominalPrices.LabourPerHour;

    /// <summary>Price of the form's sheet; null takes the nominal price of its metal.</summary>
    public SheetPrice? FormSheet { get; init; }

    /// <summary>Price of the panel's sheet; null takes the nominal price of its metal.</summary>
    public SheetPrice? PanelSheet { get; init; }
}
