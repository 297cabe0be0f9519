namespace Forming.Estimates;

/// <summary>What a batch costs [money].</summary>
/// <param name="FormLabour">Building the form.</param>
/// <param name="FormMaterial">Its sheet.</param>
/// <param name="PanelLabour">All panels of the batch.</param>
/// <param name="PanelMaterial">Their sheet.</param>
public sealed record EstimateCosts(Band FormLabour, Band FormMaterial, Band PanelLabour, Band PanelMaterial)
{
    /// <summary>All of it.</summary>
    public Band Total => FormLabour + FormMaterial + PanelLabour + PanelMaterial;
}
