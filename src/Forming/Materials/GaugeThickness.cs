namespace Forming.Materials;

/// <summary>The thickness of one gauge number.</summary>
/// <param name="Gauge">Gauge number.</param>
/// <param name="Inch">Thickness with the digits that were published [in].</param>
/// <param name="Source">Key of the source in which it was read.</param>
public sealed record GaugeThickness(int Gauge, decimal Inch, string Source)
{
    /// <summary>The published inch times 25.4, exact before it becomes a double [mm].</summary>
    public double Millimetres => (double)(Inch * 25.4m);
}
