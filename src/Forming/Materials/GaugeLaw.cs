namespace Forming.Materials;

/// <summary>The laws from which the published gauge tables were rounded, for comparison; the tables themselves decide.</summary>
/// <remarks>
/// Three of the four rest on the legal series of ounces avoirdupois per square foot. Results are in inch, as the tables are printed.
/// </remarks>
/// <seealso cref="Gauges"/>
public static class GaugeLaw
{
    private const double OuncesPerPound = 16;

    // Pounds per square foot of steel sheet one inch thick, by which the trade weighs it.
    private const double PoundsPerSquareFootInch = 41.82;

    // Allowance for the zinc, ounces per square foot.
    private const double ZincOunces = 2.5;

    /// <summary>Uncoated steel sheet.</summary>
    /// <param name="ouncesPerSquareFoot">Ounces per square foot of the gauge, &gt; 0.</param>
    /// <returns>Thickness [in], unrounded.</returns>
    /// <remarks>(oz / 16) / 41.82. Source: key <c>msg-charts</c>.</remarks>
    public static double ManufacturersStandard(double ouncesPerSquareFoot) =>
        ouncesPerSquareFoot / OuncesPerPound / PoundsPerSquareFootInch;

    /// <summary>Zinc-coated steel sheet, coating included.</summary>
    /// <param name="ouncesPerSquareFoot">Ounces per square foot of the gauge, without the zinc, &gt; 0.</param>
    /// <returns>Thickness [in], unrounded.</returns>
    /// <remarks>((oz + 2.5) / 16) / 41.82. Source: key <c>duct-gauge-table</c>.</remarks>
    public static double Galvanized(double ouncesPerSquareFoot) =>
        ManufacturersStandard(ouncesPerSquareFoot + ZincOunces);

    /// <summary>Stainless sheet, and the legal gauge of 1893 for iron and steel.</summary>
    /// <param name="ouncesPerSquareFoot">Ounces per square foot of the gauge, &gt; 0.</param>
    /// <returns>Thickness [in], exact.</returns>
    /// <remarks>oz / 640, one inch being 640 ounces per square foot. Source: key <c>usc-15-206</c>.</remarks>
    public static double UsStandard(double ouncesPerSquareFoot) => ouncesPerSquareFoot / 640;

    /// <summary>Aluminium, copper and brass sheet.</summary>
    /// <param name="gauge">Gauge number.</param>
    /// <returns>Thickness [in], unrounded.</returns>
    /// <remarks>
    /// 0.005 × 92^((36 − n) / 39): gauge 36 is 0.005 in and 39 equal ratios below 0000, which is 0.46 in. Source: key <c>astm-b258</c>.
    /// </remarks>
    public static double BrownSharpe(int gauge) => 0.005 * Math.Pow(92, (36 - gauge) / 39.0);
}
