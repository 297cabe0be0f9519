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
    public void Thirty_materials_are_listed_each_once()
    {
        var ids = MaterialCatalog.Default.All.Select(material => material.Id).ToArray();
        Assert.Equal(30, ids.Length);
        Assert.Equal(30, ids.Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(EveryId))]
    public void Properties_are_those_of_a_metal(string id)
    {
        var material = Find(id);
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
    public void Every_value_names_a_known_source_and_claims_no_more_than_it(string id)
    {
        var material = Find(id);
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

    // The published word counts whether the text itself or a quotation of it was read.
    [Theory]
    [InlineData("youngsModulus", 29, 1, 0)]
    [InlineData("poissonRatio", 30, 0, 0)]
    [InlineData("yield", 19, 11, 0)]
    [InlineData("ultimate", 19, 11, 0)]
    [InlineData("elongation", 19, 11, 0)]
    [InlineData("density", 16, 14, 0)]
    [InlineData("minRadiusOverThickness", 23, 2, 5)]
    [InlineData("strengthCoefficient", 12, 0, 0)]
    [InlineData("strainHardening", 12, 0, 0)]
    [InlineData("gaugeSystem", 0, 0, 30)]
    public void So_many_values_were_read_remembered_or_are_common_practice(string property, int read, int remembered, int practice)
    {
        var statuses = MaterialCatalog.Default.All
            .Where(material => material.Provenance.ContainsKey(property))
            .Select(material => material.Provenance[property].Status)
            .ToArray();
        Assert.Equal(read, statuses.Count(status => status is Status.Published or Status.PublishedAsQuoted));
        Assert.Equal(remembered, statuses.Count(status => status == Status.FromMemory));
        Assert.Equal(practice, statuses.Count(status => status == Status.CommonPractice));
        Assert.Equal(read + remembered + practice, statuses.Length);
    }

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
