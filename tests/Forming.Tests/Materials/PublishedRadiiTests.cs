using System.Globalization;
using Forming.Materials;
using Forming.Results;
using Forming.Verification;

namespace Forming.Tests.Materials;

/// <summary>The catalogue's least radii against the printed tables.</summary>
public class PublishedRadiiTests
{
    private static readonly CsvTable DesignManual = CheckTable.File("aluminum-association-2005-table-3-1");
    private static readonly CsvTable FederalAviation = CheckTable.File("faa-1998-ac-43-13-1b-table-4-6");

    private static readonly Material[] Alloys =
        [.. MaterialCatalog.Default.All.Where(material => material.Family == MetalFamily.Aluminium)];

    // One whose radius is from memory cites no table.
    public static TheoryData<string> Aluminium() => [.. Alloys
        .Where(alloy => alloy.Provenance["minRadiusOverThickness"].Status is Status.Published or Status.PublishedAsQuoted)
        .Select(alloy => alloy.Id)];

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

    [Fact]
    public void Every_aluminium_lies_within_the_advisory_circulars_range()
    {
        foreach (var row in FederalAviation.Rows.Where(row => MaterialCatalog.Default.TryFind(IdOf(row.Text("alloy")), out _)))
        {
            double[] range = [.. row.Text("0.064").Split('-').Select(end => double.Parse(end, CultureInfo.InvariantCulture))];
            Assert.InRange(Find(IdOf(row.Text("alloy"))).MinRadiusOverThickness, range[0], range[^1]);
        }
    }

    [Theory]
    [InlineData("aluminium alloys", "al-1100-o", "al-6061-t6", "al-2024-t3", "al-7075-t6")]
    [InlineData("brass, low-leaded", "brass-c260-soft", "brass-c260-half-hard")]
    [InlineData("austenitic stainless steel", "ss-304", "ss-316")]
    [InlineData("low-carbon, low-alloy and HSLA steel", "steel-cr-cs", "steel-dc04", "steel-hrpo", "steel-galvanized", "steel-hsla-340", "steel-4130-annealed")]
    [InlineData("magnesium", "mg-az31b-o")]
    [InlineData("titanium", "ti-cp2")]
    public void Every_metal_lies_within_the_textbooks_range_from_soft_to_hard(string metal, params string[] ids)
    {
        var row = CheckTable.File("kalpakjian-schmid-table-16-3").Rows.Single(row => row.Text("metal") == metal);
        Assert.All(ids, id => Assert.InRange(Find(id).MinRadiusOverThickness, row.Number("soft"), row.Number("hard")));
    }

    private static string IdOf(string alloy) => $"al-{alloy.ToLowerInvariant()}";

    private static Material Find(string id) =>
        MaterialCatalog.Default.TryFind(id, out var material) ? material : throw new KeyNotFoundException(id);
}
