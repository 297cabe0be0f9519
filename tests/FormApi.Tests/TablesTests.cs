using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>The tables, each value with its source.</summary>
public sealed class TablesTests(Service service) : IClassFixture<Service>
{
    private static readonly string[] Properties =
        ["youngsModulus", "poissonRatio", "yield", "ultimate", "elongation", "strengthCoefficient", "strainHardening", "density", "minRadiusOverThickness"];

    [Fact]
    public async Task Every_value_of_every_material_cites_a_source_that_is_listed()
    {
        var keys = (await Get("/v1/references"))["references"]!.AsArray().Select(source => (string)source!["key"]!).ToHashSet();
        var materials = (await Get("/v1/materials"))["materials"]!.AsArray();
        Assert.NotEmpty(materials);
        foreach (var material in materials)
        {
            foreach (var property in Properties)
            {
                if (material![property] is { } value)
                    Assert.Contains((string)value["source"]!, keys);
            }
        }

        foreach (var system in (await Get("/v1/gauges"))["systems"]!.AsArray())
        {
            Assert.Contains((string)system!["source"]!, keys);
            Assert.All(system["gauges"]!.AsArray(), gauge => Assert.Contains((string)gauge!["source"]!, keys));
        }
    }

    [Fact]
    public async Task One_material_is_as_it_stands_in_the_list()
    {
        var list = (await Get("/v1/materials?units=in"))["materials"]!.AsArray();
        var one = await Get("/v1/materials/al-5052-h32?units=in");
        Assert.Equal(list.Single(material => (string?)material!["id"] == "al-5052-h32")!.ToJsonString(), one.ToJsonString());
    }

    [Fact]
    public async Task Gauges_convert_exactly()
    {
        var inch = (await Get("/v1/gauges?units=in"))["systems"]!.AsArray().First(system => (string?)system!["id"] == "manufacturers-standard");
        var sixteen = inch!["gauges"]!.AsArray().First(gauge => (int)gauge!["gauge"]! == 16);
        Assert.Equal(0.0598, (double)sixteen!["thickness"]!);
    }

    private async Task<JsonNode> Get(string path) => JsonNode.Parse(await service.Client.GetStringAsync(path))!;
}
