using Forming.Materials;
using Forming.Verification;

namespace Forming.Tests.Materials;

/// <summary>The catalogue's least radii against the printed tables.</summary>
public class PublishedRadiiTests
{
    private static readonly CsvTable DesignManual = CheckTable.File("aluminum-association-2005-table-3-1");
    private static readonly CsvTable FederalAviation = CheckTable.File("faa-1998-ac-43-13-1b-table-4-6");

    private static readonly Material[] Alloys =
        [.. MaterialCatalog.Default.All.Where(material => material.Family == MetalFamily.Aluminium)];

    public static TheoryData<string> Aluminium() => [.. Alloys.Select(alloy => alloy.Id)];

    [Theory]
    [MemberData(nameof(Aluminium))]
    public void Every_aluminium_stands_in_the_table_that_it_cites(string id)
    {
        var table = Find(id).Provenance["minRadiusOverThickness"].Source switch
        {
            "aa-adm-2005" => DesignManual,
            "faa-ac-43-13-1b" => FederalAviation,
            var other => throw new KeyNotFoundException(other),
        };
        Assert.Contains(table.Rows, row => IdOf(row.Text("alloy")) == id);
    }

    [Fact]
    public void Harder_tempers_and_thicker_sheets_need_more_radius()
    {
        string[] columns = [.. DesignManual.Header.Where(column => column is not ("alloy" or "note" or "source" or "status"))];
        foreach (var row in DesignManual.Rows)
        {
            double[] radii = [.. columns.Select(row.OptionalNumber).OfType<double>()];
            Assert.Equal(radii.Order(), radii);
        }

        Assert.True(Find("al-5052-o").MinRadiusOverThickness < Find("al-5052-h32").MinRadiusOverThickness);
        Assert.True(Find("al-5052-h32").MinRadiusOverThickness < Find("al-5052-h34").MinRadiusOverThickness);
        Assert.True(Find("al-6061-o").MinRadiusOverThickness < Find("al-6061-t4").MinRadiusOverThickness);
        Assert.True(Find("al-6061-t4").MinRadiusOverThickness < Find("al-6061-t6").MinRadiusOverThickness);
    }

    private static string IdOf(string alloy) => $"al-{alloy.ToLowerInvariant()}";

    private static Material Find(string id) =>
        MaterialCatalog.Default.TryFind(id, out var material) ? material : throw new KeyNotFoundException(id);
}
