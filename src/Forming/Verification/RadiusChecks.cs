using Forming.Materials;

namespace Forming.Verification;

/// <summary>The catalogue's least radii against the printed tables, and the textbook's formulas for them.</summary>
internal static class RadiusChecks
{
    private const string Quantity = "least radius over thickness";

    /// <summary>The textbook's metals, each with the materials of the catalogue that take its softest value.</summary>
    private static readonly Dictionary<string, string[]> OfMetal = new(StringComparer.Ordinal)
    {
        ["brass, low-leaded"] = ["brass-c260-soft"],
        ["low-carbon, low-alloy and HSLA steel"] = ["steel-cr-cs", "steel-dc04"],
        ["magnesium"] = ["mg-az31b-o"],
    };

    /// <summary>The tables.</summary>
    public static IEnumerable<CheckTable> Tables() =>
    [
        CheckTable.Read(
            "aluminum-association-2005-table-3-1",
            "Least radii of aluminium by the design manual",
            "{alloy}, 1/16 in",
            row => Catalogued(row) is { } alloy && alloy.Provenance["minRadiusOverThickness"].Source == "aa-adm-2005"
                ? [row.Check("radius", Quantity, "", row["1/16"], 0, () => alloy.MinRadiusOverThickness)]
                : []),
        CheckTable.Read(
            "faa-1998-ac-43-13-1b-table-4-6",
            "Recommended radii of aluminium by the advisory circular",
            "{alloy}, 0.064 in: printed range {0.064}",
            row => row.Optional("taken") is { } taken && Catalogued(row) is { } alloy
                ? [row.Check("radius", Quantity, "", taken, 0, () => alloy.MinRadiusOverThickness)]
                : []),
        CheckTable.Read(
            "kalpakjian-schmid-table-16-3",
            "Least radii by metal, soft to hard",
            "{metal}, soft {soft} to hard {hard}; the catalogue takes the softest",
            row => OfMetal.GetValueOrDefault(row.Text("metal"), [])
                .Select(id => row.Check(id, $"{Quantity} of {id}", "", row["soft"], 0, () => Find(id).MinRadiusOverThickness))),
        CheckTable.Read(
            "aircraft-shop-bend-radii",
            "Bend radii of aircraft shops",
            "{metal}, 0.063 in: {0.063} in",
            row => row.Text("metal").Contains("4130 annealed", StringComparison.Ordinal)
                ? [row.Check("radius", Quantity, "", row["0.063"] / 0.063, 0.01, () => Find("steel-4130-annealed").MinRadiusOverThickness)]
                : []),
        CheckTable.Read(
            "kalpakjian-schmid-eq-16-4",
            "Strain of the outer face",
            "inside radius over thickness {radius_over_thickness}",
            row => [row.Within("strain", "strain of the outer face", "", row["tolerance"], () => MinimumRadius.OuterFibreStrain(row["radius_over_thickness"]))]),
        CheckTable.Read(
            "kalpakjian-schmid-eq-16-5",
            "Least radius from ductility",
            "reduction of area {reduction_percent} %",
            row => [row.Within("radius_over_thickness", Quantity, "", row["tolerance"], () => MinimumRadius.OverThickness(row["reduction_percent"]))]),
    ];

    private static Material? Catalogued(PrintedRow row) =>
        MaterialCatalog.Default.TryFind($"al-{row.Text("alloy").ToLowerInvariant()}", out var alloy) ? alloy : null;

    private static Material Find(string id) =>
        MaterialCatalog.Default.TryFind(id, out var material) ? material : throw new KeyNotFoundException(id);
}
