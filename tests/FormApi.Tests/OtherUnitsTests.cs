using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>A job in the other units is the same job.</summary>
public sealed class OtherUnitsTests(Service service) : IClassFixture<Service>
{
    public static TheoryData<string> Examples => [.. Directory.GetFiles(Repository.PathOf("openapi", "examples"), "computeForm.*.request.json").Select(path => Path.GetFileName(path)!)];

    [Theory]
    [MemberData(nameof(Examples))]
    [Trait("Category", "Long")]
    public async Task A_job_in_the_other_units_has_the_same_plan(string example)
    {
        var request = JsonNode.Parse(await File.ReadAllTextAsync(Repository.PathOf("openapi", "examples", example)))!;
        // What is left out has another default in other units, and a tape of its own other marks.
        var (before, wasIn) = await Filled(request);
        var other = await In(before, wasIn == "mm" ? "in" : "mm");
        Assert.NotEqual(wasIn, (string)other["units"]!);
        var (there, _) = await Filled(other);
        var factor = wasIn == "mm" ? 25.4 : 1 / 25.4;
        var (first, second) = (await service.Form(before), await service.Form(there));
        Near((double)first["form"]!["sweep"]!, (double)second["form"]!["sweep"]!);
        Near((double)first["form"]!["blank"]!["length"]!, factor * (double)second["form"]!["blank"]!["length"]!);
        Near((double)first["panel"]!["blank"]!["length"]!, factor * (double)second["panel"]!["blank"]!["length"]!);
        Assert.Equal((string)first["verdict"]!, (string)second["verdict"]!);

        var back = await In(other, wasIn);
        Near((double)first["form"]!["sweep"]!, (double)(await service.Form(back))["form"]!["sweep"]!);
    }

    [Fact]
    public async Task Units_that_are_not_known_are_refused()
    {
        using var response = await service.Post("/page/units?units=cm", Requests.Arc().ToJsonString());
        Assert.Equal(400, (int)response.StatusCode);
    }

    private async Task<(JsonNode Request, string Units)> Filled(JsonNode request)
    {
        var shown = (await service.Form(request))["request"]!;
        return (shown, (string)shown["units"]!);
    }

    private Task<JsonNode> In(JsonNode request, string units) => service.Answer("/page/units?units=" + units, request);

    private static void Near(double expected, double actual) => Assert.InRange(actual, expected - (1e-4 * Math.Abs(expected)), expected + (1e-4 * Math.Abs(expected)));
}
