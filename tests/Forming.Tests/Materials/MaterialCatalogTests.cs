using Forming.Materials;
using Forming.Results;

namespace Forming.Tests.Materials;

public class MaterialCatalogTests
{
    private static readonly Dictionary<string, Func<Material, object?>> Properties = new()
    {
        ["youngsModulus"] = material => material.YoungsModulusMpa,
        ["poissonRatio"] = material => material.PoissonRatio,
        ["yield"] = material => material.YieldMpa,
        ["ultimate"] = material => material.UltimateMpa,
        ["elongation"] = material => material.ElongationPercent,
        ["strengthCoefficient"] = material => material.StrengthCoefficientMpa,
        ["strainHardening"] = material => material.StrainHardening,
        ["density"] = material => material.DensityKgPerCubicMetre,
        ["minRadiusOverThickness"] = material => material.MinRadiusOverThickness,
    };

    public static TheoryData<string> EveryId() => [.. MaterialCatalog.Default.All.Select(material => material.Id)];

    [Fact]
    public void Each_material_is_listed_once()
    {
        var ids = MaterialCatalog.Default.All.Select(material => material.Id).ToArray();
        Assert.NotEmpty(ids);
        Assert.Equal(ids.Distinct(), ids);
    }

    // The recipe for contributors, followed to the letter on a copy of the tables.
    [Fact]
    public void A_material_is_added_by_a_row_and_where_each_value_comes_from()
    {
        var materials = Table("materials.csv", "al-3105-h14,Aluminium 3105-H14,aluminium,69000,0.33,152,172,5,,,2720,1,brown-sharpe,Deburr the edges.,");
        string[] properties = ["youngsModulus", "poissonRatio", "yield", "ultimate", "elongation", "density", "minRadiusOverThickness", "gaugeSystem"];
        var provenance = Table("material-provenance.csv", [.. properties.Select(property =>
            $"al-3105-h14,{property},{(property == "gaugeSystem" ? "common-practice,common-practice" : "aa-standards-data,from-memory")},")]);
        var catalog = MaterialCatalog.Of(materials, provenance, CsvTable.ReadEmbedded("material-aliases.csv"));
        Assert.Equal(MaterialCatalog.Default.All.Count + 1, catalog.All.Count);
        Assert.True(catalog.TryFind("al-3105-h14", out var added));

        HasTheValuesOfAMetal(added);
        NamesItsSources(added);
        var plan = Workshop.Plan(Workshop.Panel(Workshop.Arc(150, 60)) with { Sheet = new(added, 1.5) });
        Assert.NotEmpty(plan.Form.Stations);
        Assert.Contains(plan.Basis, basis => basis.Quantity == "panel.material.yield" && basis.Status == Status.FromMemory);
    }

    private static CsvTable Table(string name, params string[] added)
    {
        using var stream = typeof(MaterialCatalog).Assembly.GetManifestResourceStream("Forming.Materials.Tables." + name)!;
        using var reader = new StreamReader(stream);
        return CsvTable.Read(new StringReader(reader.ReadToEnd().TrimEnd() + "\n" + string.Join('\n', added) + "\n"), name);
    }

    [Theory]
    [MemberData(nameof(EveryId))]
    public void Properties_are_those_of_a_metal(string id) => HasTheValuesOfAMetal(Find(id));

    private static void HasTheValuesOfAMetal(Material material)
    {
        Assert.InRange(material.YoungsModulusMpa, 40_000, 215_000);
        Assert.InRange(material.PoissonRatio, 0.25, 0.4);
        Assert.InRange(material.YieldMpa, 30, 600);
        Assert.InRange(material.UltimateMpa, 80, 700);
        Assert.InRange(material.DensityKgPerCubicMetre, 1700, 9000);
        Assert.InRange(material.MinRadiusOverThickness, 0, 6);
        Assert.InRange(material.ElongationPercent!.Value, 5, 60);
        Assert.NotEmpty(material.Name);
        Assert.NotEqual(MetalFamily.Other, material.Family);
    }

    [Theory]
    [MemberData(nameof(EveryId))]
    public void A_metal_yields_before_it_breaks(string id) => Assert.True(Find(id).YieldMpa < Find(id).UltimateMpa);

    [Theory]
    [MemberData(nameof(EveryId))]
    public void A_flow_curve_is_whole_or_absent(string id)
    {
        var material = Find(id);
        Assert.Equal(material.StrengthCoefficientMpa is null, material.StrainHardening is null);
        if (material.StrainHardening is not { } exponent) return;
        Assert.InRange(exponent, 0.01, 0.6);
        Assert.True(material.StrengthCoefficientMpa > material.UltimateMpa);
    }

    [Theory]
    [MemberData(nameof(EveryId))]
    public void Every_value_names_a_known_source_and_claims_no_more_than_it(string id) => NamesItsSources(Find(id));

    private static void NamesItsSources(Material material)
    {
        foreach (var (property, value) in Properties)
            Assert.Equal(value(material) is not null, material.Provenance.ContainsKey(property));
        Assert.Contains("gaugeSystem", material.Provenance.Keys);

        foreach (var (_, from) in material.Provenance)
        {
            var source = SourceCatalog.Find(from.Source);
            if (from.Status == Status.Published) Assert.Equal(Status.Published, source.Status);
            if (from.Status == Status.PublishedAsQuoted) Assert.Equal(Status.PublishedAsQuoted, source.Status);
        }
    }

    [Fact]
    public void Every_line_of_the_provenance_table_belongs_to_a_value()
    {
        foreach (var row in CsvTable.ReadEmbedded("material-provenance.csv").Rows)
        {
            var property = row.Text("property");
            Assert.True(property == "gaugeSystem" || Properties[property](Find(row.Text("material"))) is not null);
        }
    }

    // A value was read, quoted or remembered; only which gauge a trade orders by, and bend radii of a few grades, are common practice.
    [Fact]
    public void A_value_was_read_or_is_said_to_be_remembered()
    {
        foreach (var (property, from) in MaterialCatalog.Default.All.SelectMany(material => material.Provenance))
        {
            Assert.True(
                property == "gaugeSystem"
                    ? from.Status == Status.CommonPractice
                    : from.Status is Status.Published or Status.PublishedAsQuoted or Status.FromMemory
                        || (from.Status == Status.CommonPractice && property == "minRadiusOverThickness"),
                $"{property}: {from.Status}");
        }
    }

    // Hardening that nobody read decides forces and springback unseen: it stays empty, and the plan estimates it and says so.
    [Fact]
    public void A_flow_curve_was_read_somewhere() => Assert.All(
        MaterialCatalog.Default.All.SelectMany(material => material.Provenance).Where(value => value.Key is "strengthCoefficient" or "strainHardening"),
        value => Assert.True(value.Value.Status is Status.Published or Status.PublishedAsQuoted));

    [Theory]
    [InlineData("steel-galvanized", MetalFamily.GalvanizedSteel, "galvanized")]
    [InlineData("steel-dc04", MetalFamily.Steel, "manufacturers-standard")]
    [InlineData("ss-304", MetalFamily.Stainless, "us-standard")]
    [InlineData("brass-c260-soft", MetalFamily.Brass, "brown-sharpe")]
    [InlineData("cu-c110-soft", MetalFamily.Copper, "brown-sharpe")]
    [InlineData("al-5052-h32", MetalFamily.Aluminium, "brown-sharpe")]
    [InlineData("ti-cp2", MetalFamily.Titanium, null)]
    [InlineData("mg-az31b-o", MetalFamily.Magnesium, null)]
    public void Each_metal_is_ordered_by_the_gauge_of_its_trade(string id, MetalFamily family, string? gaugeSystem)
    {
        Assert.Equal(family, Find(id).Family);
        Assert.Equal(gaugeSystem, Find(id).GaugeSystem);
    }

    [Fact]
    public void Every_gauge_system_that_a_material_names_is_listed()
    {
        var named = MaterialCatalog.Default.All.Select(material => material.GaugeSystem).OfType<string>();
        Assert.All(named, system => Assert.True(Gauges.TryFind(system, out _)));
    }

    [Theory]
    [MemberData(nameof(EveryId))]
    public void Every_sheet_comes_with_cautions(string id) =>
        Assert.All(Find(id).Cautions, caution => Assert.EndsWith(".", caution));

    [Fact]
    public void Dust_of_magnesium_and_titanium_burns()
    {
        Assert.Contains(Find("mg-az31b-o").Cautions, caution => caution.Contains("never water"));
        Assert.Contains(Find("ti-cp2").Cautions, caution => caution.Contains("burn"));
    }

    [Fact]
    public void Type_304_is_as_printed()
    {
        var material = Find("ss-304");
        Assert.Equal(193_000, material.YoungsModulusMpa);
        Assert.Equal(290, material.YieldMpa);
        Assert.Equal(1275, material.StrengthCoefficientMpa);
        Assert.Equal(0.45, material.StrainHardening);
        Assert.Equal(new Provenance("kalpakjian-schmid", Status.Published), material.Provenance["strainHardening"]);
        Assert.Equal("Table 2.3.", material.ProvenanceNotes["strainHardening"]);
    }

    [Theory]
    [InlineData("SS-304")]
    [InlineData("unobtainium")]
    [InlineData("")]
    public void An_unknown_id_is_not_found(string id) => Assert.False(MaterialCatalog.Default.TryFind(id, out _));

    private static Material Find(string id) =>
        MaterialCatalog.Default.TryFind(id, out var material) ? material : throw new KeyNotFoundException(id);
}
