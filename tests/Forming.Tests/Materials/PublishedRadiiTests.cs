using System.Globalization;
using Forming.Materials;

namespace Forming.Tests.Materials;

/// <summary>The catalogue's least radii against the printed tables.</summary>
public class PublishedRadiiTests
{
    private static readonly CsvTable DesignManual = PublishedTable.Read("aluminum-association-2005-table-3-1.csv");
    private static readonly CsvTable FederalAviation = PublishedTable.Read("faa-1998-ac-43-13-1b-table-4-6.csv");

    private static readonly Material[] Alloys =
        [.. MaterialCatalog.Default.All.Where(material => material.Family == MetalFamily.Aluminium)];

    public static TheoryData<string> Aluminium() => [.. Alloys.Select(alloy => alloy.Id)];

    public static TheoryData<string> AluminiumOfTheDesignManual() =>
        [.. Alloys.Where(alloy => alloy.Provenance["minRadiusOverThickness"].Source == "aa-adm-2005").Select(alloy => alloy.Id)];

    public static TheoryData<string> AluminiumOfTheAdvisoryCircular() =>
        [.. FederalAviation.Rows.Select(row => IdOf(row.Text("alloy"))).Where(id => MaterialCatalog.Default.TryFind(id, out _))];

    [Theory]
    [MemberData(nameof(AluminiumOfTheDesignManual))]
    public void Aluminium_takes_the_design_manuals_figure_for_a_sixteenth_of_an_inch(string id)
    {
        var printed = DesignManual.Rows.Single(row => IdOf(row.Text("alloy")) == id);
        Assert.Equal(printed.Number("1/16"), Find(id).MinRadiusOverThickness);
    }

    [Theory]
    [MemberData(nameof(AluminiumOfTheAdvisoryCircular))]
    public void Aluminium_lies_within_the_range_of_the_advisory_circular_at_0_064_inch(string id)
    {
        var printed = FederalAviation.Rows.Single(row => IdOf(row.Text("alloy")) == id);
        var (least, greatest) = Range(printed.Text("0.064"));
        Assert.InRange(Find(id).MinRadiusOverThickness, least, greatest);
    }

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

    [Theory]
    [InlineData("aluminium alloys", "al-1100-o", "al-6061-t6", "al-2024-t3", "al-7075-t6")]
    [InlineData("brass, low-leaded", "brass-c260-soft", "brass-c260-half-hard")]
    [InlineData("austenitic stainless steel", "ss-304", "ss-316")]
    [InlineData("low-carbon, low-alloy and HSLA steel", "steel-cr-cs", "steel-dc04", "steel-hrpo", "steel-galvanized", "steel-hsla-340", "steel-4130-annealed")]
    [InlineData("magnesium", "mg-az31b-o")]
    [InlineData("titanium", "ti-cp2")]
    public void Each_metal_lies_between_soft_and_hard_of_the_textbook(string metal, params string[] ids)
    {
        var printed = PublishedTable.Read("kalpakjian-schmid-table-16-3.csv").Rows.Single(row => row.Text("metal") == metal);
        Assert.All(ids, id => Assert.InRange(Find(id).MinRadiusOverThickness, printed.Number("soft"), printed.Number("hard")));
    }

    // 0.094 in at 0.063 in is 1.49 t; the catalogue has 1.5 t.
    [Fact]
    public void Annealed_4130_takes_the_figure_of_the_aircraft_shops()
    {
        var printed = PublishedTable.Read("aircraft-shop-bend-radii.csv").Rows.Single(row => row.Text("metal").Contains("4130 annealed"));
        Assert.Equal(printed.Number("0.063") / 0.063, Find("steel-4130-annealed").MinRadiusOverThickness, 0.01);
    }

    [Fact]
    public void Harder_tempers_and_thicker_sheets_need_more_radius()
    {
        string[] columns = [.. DesignManual.Header.Where(column => column is not ("alloy" or "note"))];
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

    private static (double Least, double Greatest) Range(string printed)
    {
        var ends = printed.Split('-').Select(end => double.Parse(end, CultureInfo.InvariantCulture)).ToArray();
        return (ends[0], ends[^1]);
    }

    private static Material Find(string id) =>
        MaterialCatalog.Default.TryFind(id, out var material) ? material : throw new KeyNotFoundException(id);
}
