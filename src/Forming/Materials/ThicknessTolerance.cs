namespace Forming.Materials;

/// <summary>How far a sheet's thickness may be off by the standard it is sold to.</summary>
/// <remarks>Source: key <c>en-485-4</c>; cold-rolled aluminium only. Nothing is read outside the rows of the table.</remarks>
public static class ThicknessTolerance
{
    private static readonly Row[] Rows = [.. CsvTable.ReadEmbedded("thickness-tolerances.csv").Rows.Select(row => new Row(
        row.Text("alloys").Split(' '), row.Number("from_mm"), row.Number("up_to_mm"), row.Number("tolerance_mm"), row.Text("source")))];

    /// <summary>The tolerance of a sheet.</summary>
    /// <param name="sheet">The sheet; its material is looked up by the alloy number in its id.</param>
    /// <returns>Tolerance to either side [mm] and the key of its source, or null where no table was read.</returns>
    public static (double Mm, string Source)? Of(Sheet sheet)
    {
        if (sheet.Material.Family != MetalFamily.Aluminium)
            return null;
        foreach (var row in Rows)
        {
            if (sheet.ThicknessMm >= row.FromMm
                && sheet.ThicknessMm <= row.UpToMm
                && row.Alloys.Any(alloy => sheet.Material.Id.Contains(alloy, StringComparison.Ordinal)))
                return (row.ToleranceMm, row.Source);
        }

        return null;
    }

    private sealed record Row(string[] Alloys, double FromMm, double UpToMm, double ToleranceMm, string Source);
}
