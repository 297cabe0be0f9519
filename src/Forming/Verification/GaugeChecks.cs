using System.Globalization;
using Forming.Materials;

namespace Forming.Verification;

/// <summary>Every published thickness of every gauge system against the law it was rounded from.</summary>
internal static class GaugeChecks
{
    private const string Statute = "us-1893-standard-gauge";

    /// <summary>The tables: one for each system.</summary>
    public static IEnumerable<CheckTable> Tables()
    {
        var ounces = CheckTable.File(Statute);
        var byGauge = ounces.Rows.ToDictionary(row => row.Integer("gauge"), row => row.Number("ounces"));
        return Gauges.Systems.Select(system => new CheckTable(
            "gauges-" + system.Id,
            system.Name,
            $"Thickness as published: {SourceCatalog.Find(system.Source).Citation}. Recomputed by the law: {system.Law}. Ounces: {ounces.Head}",
            [.. system.Thicknesses.Select(printed => Check(system, printed, byGauge[printed.Gauge]))]));
    }

    private static CheckValue Check(GaugeSystem system, GaugeThickness printed, double ounces) => new()
    {
        Id = $"gauges-{system.Id}.{printed.Gauge.ToString(CultureInfo.InvariantCulture)}",
        Quantity = "thickness by the law, rounded as printed",
        Given = $"gauge {printed.Gauge.ToString(CultureInfo.InvariantCulture)}"
            + (system.Id == "brown-sharpe" ? "" : $", {ounces.ToString(CultureInfo.InvariantCulture)} oz/ft²"),
        Expected = (double)printed.Inch,
        Tolerance = 0,
        Unit = "in",
        Source = printed.Source,
        Status = SourceCatalog.Find(printed.Source).Status,
        Compute = () => (double)Math.Round((decimal)Law(system.Id, printed.Gauge, ounces), system.Id == "us-standard" ? 7 : 4),
    };

    private static double Law(string systemId, int gauge, double ounces) => systemId switch
    {
        "manufacturers-standard" => GaugeLaw.ManufacturersStandard(ounces),
        "galvanized" => GaugeLaw.Galvanized(ounces),
        "us-standard" => GaugeLaw.UsStandard(ounces),
        "brown-sharpe" => GaugeLaw.BrownSharpe(gauge),
        _ => double.NaN,
    };
}
