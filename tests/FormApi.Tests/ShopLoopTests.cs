using System.Text.Json.Nodes;
using Forming.Materials;
using Forming.Springback;

namespace FormApi.Tests;

/// <summary>From plan to strip, plan, form, inspection, panel, correction and plan: what each answer pastes goes into the next request as it
/// is, and where to send it is said.</summary>
public sealed class ShopLoopTests(Service service) : IClassFixture<Service>
{
    private const double Stronger = 1.12;

    private const double Thinner = 0.96;

    private const double Thickness = 0.9;

    // Of the folds, as the brake left them [°].
    private static readonly double[] FoldErrors = [0.2, -0.3, 0.1, -0.1, 0.3, 0.2, -0.4, 0.1, -0.2, 0.3, 0.1, -0.1];

    [Fact]
    public async Task Every_answer_leads_to_the_next_request()
    {
        var request = Requests.Arc()
            .With("/panel/material", """{"id":"steel-cr-cs"}""").With("/panel/thickness", "0.9")
            .With("/panel/curve", """{"type":"arc","radius":200,"sweep":90}""").With("/form/backing", "\"ribs\"").With("/brake/stopResolution", "0.1");
        var plan = await service.Answer("/v1/forms", request);
        var bend = StepOf(plan, "bend-strip");

        var strips = new JsonObject
        {
            ["units"] = "mm",
            ["material"] = request["panel"]!["material"]!.DeepClone(),
            ["thickness"] = Thickness,
            ["strips"] = new JsonArray(Strip((double)bend["firstStrip"]!["radius"]!)),
        };
        var lesson = await service.Answer((string)bend["link"]!, strips);
        Merge(request, lesson["paste"]!);
        plan = await service.Answer((string)StepOf(lesson, "plan-form")["link"]!, request);
        Assert.True((bool)plan["panel"]!["outcome"]!["solved"]!);

        var stations = plan["form"]!["stations"]!.AsArray();
        double[] angles = [.. stations.Select((station, i) => (double)station!["angle"]! + FoldErrors[i % FoldErrors.Length])];
        var inspection = request.DeepClone().AsObject();
        inspection["measured"] = new JsonObject { ["angles"] = new JsonArray([.. angles.Select(angle => JsonValue.Create(angle))]) };
        inspection["tolerance"] = new JsonObject { ["vertex"] = 2 };
        var inspected = await service.Answer("/v1/inspections", inspection);
        Assert.True((bool)inspected["withinTolerance"]!, inspected["checks"]!.ToJsonString());

        var standing = Standing(request, plan, new JsonArray([.. stations.Select((station, i) =>
            new JsonObject { ["angle"] = angles[i], ["facetAfter"] = station!["facetAfter"]!.DeepClone() })]));
        var panel = await Truth(standing);
        Assert.True(Math.Abs((double)panel["sweep"]! - 90) > 0.1);
        var measured = standing.DeepClone().AsObject();
        measured["measured"] = new JsonObject { ["sweep"] = panel["sweep"]!.DeepClone(), ["radius"] = panel["radius"]!.DeepClone() };
        measured["corrections"] = new JsonObject { ["step"] = 0.1 };
        measured["panel"]!["tolerance"] = new JsonObject { ["angle"] = 0.2, ["radius"] = 0.01 };
        var corrected = await service.Answer((string)StepOf(inspected, "measure-panel")["link"]!, measured);
        Assert.True((bool)corrected["meets"]!, corrected.ToJsonString());
        var truth = Steel().YieldMpa * Stronger / Thinner;
        Assert.InRange(truth, 0.98 * (double)corrected["yield"]!["value"]!, 1.02 * (double)corrected["yield"]!["value"]!);

        // The form as corrected, the panel as it comes off it.
        standing["stations"] = corrected["stations"]!.DeepClone();
        var next = await Truth(standing);
        Assert.InRange((double)next["sweep"]!, 89.7, 90.3);
        Assert.InRange((double)next["radius"]!, 198, 202);

        // And the next plan, that is right from the start.
        Merge(request, corrected["paste"]!);
        plan = await service.Answer("/v1/forms", request);
        Assert.True((bool)plan["panel"]!["outcome"]!["solved"]!);
        var fresh = await Truth(Standing(request, plan, new JsonArray([.. plan["form"]!["stations"]!.AsArray().Select(station =>
            new JsonObject { ["angle"] = station!["angle"]!.DeepClone(), ["facetAfter"] = station["facetAfter"]!.DeepClone() })])));
        Assert.InRange((double)fresh["sweep"]!, 89.4, 90.6);
        Assert.InRange((double)fresh["radius"]!, 196, 204);
    }

    private static JsonObject Strip(double bar)
    {
        var half = Thinner * Thickness / 2;
        var law = BendingLaw.Of(new(Steel(), 2 * half)).Stronger(Stronger);
        return new() { ["formRadius"] = bar, ["finishedRadius"] = (1 / law.Release(1 / (bar + half))) - half };
    }

    private static JsonObject Standing(JsonObject request, JsonNode plan, JsonArray stations)
    {
        var standing = request.DeepClone().AsObject();
        standing.Remove("brake");
        standing["panel"]!["lever"] = plan["panel"]!["pull"]!["lever"]!.DeepClone();
        standing["stations"] = stations;
        return standing;
    }

    private static JsonObject StepOf(JsonNode answer, string id) =>
        answer["next"]!.AsArray().Single(step => (string)step!["id"]! == id)!.AsObject();

    // As RFC 7396 merges.
    private static void Merge(JsonObject request, JsonNode paste)
    {
        foreach (var (name, value) in paste.AsObject())
        {
            if (value is JsonObject part && request[name] is JsonObject there)
                Merge(there, part);
            else
                request[name] = value?.DeepClone();
        }
    }

    private async Task<JsonNode> Truth(JsonObject standing)
    {
        var real = standing.DeepClone().AsObject();
        real["panel"]!["thickness"] = Thinner * Thickness;
        real["panel"]!["springback"] = new JsonObject { ["effectiveYield"] = Stronger * Steel().YieldMpa };
        return await service.Answer("/v1/forms/prediction", real);
    }

    private static Material Steel() =>
        MaterialCatalog.Default.TryFind("steel-cr-cs", out var material) ? material : throw new KeyNotFoundException();
}
