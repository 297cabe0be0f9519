using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;
using Forming.Results;

namespace Forming.Materials;

/// <summary>The gauge systems as published: nothing is interpolated, nothing is added.</summary>
public static class Gauges
{
    private static readonly GaugeSystem[] Rows = ReadEmbedded();

    private static readonly FrozenDictionary<string, GaugeSystem> ById =
        Rows.ToFrozenDictionary(system => system.Id, StringComparer.Ordinal);

    /// <summary>All systems.</summary>
    public static IReadOnlyList<GaugeSystem> Systems { get; } = Rows.AsReadOnly();

    /// <summary>Looks a system up.</summary>
    /// <param name="systemId">Id, as in <see cref="GaugeSystem.Id"/>.</param>
    /// <param name="system">The system, or null where there is none.</param>
    /// <returns>Whether a system has this id.</returns>
    public static bool TryFind(string systemId, [NotNullWhen(true)] out GaugeSystem? system) =>
        ById.TryGetValue(systemId, out system);

    /// <summary>Thickness of a gauge.</summary>
    /// <param name="systemId">Id, as in <see cref="GaugeSystem.Id"/>.</param>
    /// <param name="gauge">Gauge number.</param>
    /// <param name="millimetres">Nominal thickness [mm], the published inch times 25.4; 0 where there is none.</param>
    /// <returns>Whether the system lists this gauge.</returns>
    public static bool TryThickness(string systemId, int gauge, out double millimetres)
    {
        var found = TryFind(systemId, out var system)
            ? system.Thicknesses.FirstOrDefault(thickness => thickness.Gauge == gauge)
            : null;
        millimetres = found?.Millimetres ?? 0;
        return found is not null;
    }

    private static GaugeSystem[] ReadEmbedded()
    {
        var thicknesses = CsvTable.ReadEmbedded("gauges.csv").Rows.ToLookup(row => row.Text("system"), ReadThickness);
        return [.. CsvTable.ReadEmbedded("gauge-systems.csv").Rows.Select(row => ReadSystem(row, thicknesses[row.Text("id")]))];
    }

    private static GaugeSystem ReadSystem(CsvRow row, IEnumerable<GaugeThickness> thicknesses) => new(
        row.Text("id"),
        row.Text("name"),
        row.Text("law"),
        row.Text("source"),
        row.Word<Status>("status"),
        thicknesses.ToArray().AsReadOnly());

    private static GaugeThickness ReadThickness(CsvRow row) =>
        new(row.Integer("gauge"), row.Decimal("inch"), row.Text("source"));
}

/// <summary>A system of sheet gauges. The same number means another thickness in another system.</summary>
/// <param name="Id">Stable id such as <c>brown-sharpe</c>.</param>
/// <param name="Name">Name, and the sheet it is used for.</param>
/// <param name="Law">The law behind the published table, in words.</param>
/// <param name="Source">Key of the source of the system.</param>
/// <param name="Status">How well the table is supported.</param>
/// <param name="Thicknesses">The published table, gauge numbers rising and thickness falling.</param>
/// <seealso cref="GaugeLaw"/>
public sealed record GaugeSystem(
    string Id,
    string Name,
    string Law,
    string Source,
    Status Status,
    IReadOnlyList<GaugeThickness> Thicknesses);

/// <summary>The thickness of one gauge number.</summary>
/// <param name="Gauge">Gauge number.</param>
/// <param name="Inch">Thickness with the digits that were published [in].</param>
/// <param name="Source">Key of the source in which it was read.</param>
public sealed record GaugeThickness(int Gauge, decimal Inch, string Source)
{
    /// <summary>The published inch times 25.4, exact before it becomes a double [mm].</summary>
    public double Millimetres => (double)(Inch * 25.4m);
}
