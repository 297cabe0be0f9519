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

/// <summary>What panels cost together: something once, and for each panel labour that may fall with practice, and sheet.</summary>
/// <param name="Fixed">Once [money].</param>
/// <param name="FirstLabour">Labour of the first panel [money].</param>
/// <param name="Material">What does not fall with practice, for each panel [money].</param>
/// <param name="Learning">How labour falls.</param>
public sealed record CostLine(double Fixed, double FirstLabour, double Material, LearningCurve Learning)
{
    /// <summary>Cost of one panel, without what is paid once.</summary>
    /// <param name="n">Which panel, from 1.</param>
    public double Own(int n) => (FirstLabour * Learning.Unit(n)) + Material;

    /// <summary>What a panel's own cost falls to, and never below.</summary>
    public double Floor => Material + (Learning.Learns ? 0 : FirstLabour);
}
