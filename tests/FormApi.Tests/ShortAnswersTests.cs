using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace FormApi.Tests;

/// <summary>Answers for callers who want them short (RFC 7240), and what to do next in every plan.</summary>
public sealed class ShortAnswersTests(Service service) : IClassFixture<Service>
{
    private static readonly string[] LeftOut = ["request", "basis", "links", "section", "outline"];

    public static TheoryData<string> Operations() => [.. Requests.Paths.Keys.Where(operation => operation is not ("drawForm" or "compareJobs"))];

    private async Task<(HttpResponseMessage Response, string Text)> Ask(string path, string body, string? prefer, string media = "application/json")
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new StringContent(body, Encoding.UTF8, media) };
        if (prefer is not null)
            request.Headers.Add("Prefer", prefer);
        var response = await service.Client.SendAsync(request);
        return (response, await response.Content.ReadAsStringAsync());
    }

    [Theory]
    [MemberData(nameof(Operations))]
    [Trait("Category", "Long")]
    public async Task A_short_answer_is_the_full_one_with_less(string operation)
    {
        foreach (var (name, body) in Requests.Examples(operation))
        {
            var (full, whole) = await Ask(Requests.PathOf(operation), body.ToJsonString(), null);
            var (response, text) = await Ask(Requests.PathOf(operation), body.ToJsonString(), "return=minimal");
            using (full)
            using (response)
            {
                Assert.Equal("return=minimal", response.Headers.GetValues("Preference-Applied").Single());
                Assert.False(full.Headers.Contains("Preference-Applied"));
                Assert.Contains("Prefer", full.Headers.Vary);
                Assert.NotEqual(full.Headers.ETag, response.Headers.ETag);
                Assert.True(text.Length < 0.7 * whole.Length, $"{name}: {text.Length} of {whole.Length}");
                var answer = JsonNode.Parse(text)!;
                AssertWithin(answer, JsonNode.Parse(whole)!, name);
                Assert.All(LeftOut, field => Assert.Null(answer[field]));
                Assert.DoesNotContain(answer["checks"]?.AsArray() ?? [], check => (string)check!["verdict"]! == "pass");
            }
        }
    }

    [Fact]
    public async Task Ten_folds_take_three_kilobytes()
    {
        // With few warnings and with five.
        foreach (var (material, springback, width) in
            from material in (string[])["al-3003-h14", "steel-cr-cs", "ss-304"]
            from springback in (string[])["{}", """{"model":"pure-bending"}"""]
            from width in (int[])[300, 1200]
            select (material, springback, width))
        {
            var body = Requests.Arc().With("/form/stepping", """{"folds":10}""").With("/panel/material/id", $"\"{material}\"")
                .With("/panel/springback", springback).With("/panel/width", $"{width}").ToJsonString();
            var (response, text) = await Ask("/v1/forms", body, "return=minimal");
            using (response)
            {
                Assert.InRange(Encoding.UTF8.GetByteCount(text), 1000, 3072);
                Assert.Equal(10, (int)JsonNode.Parse(text)!["form"]!["folds"]!);
            }
        }
    }

    [Theory]
    [InlineData("return=representation", false)]
    [InlineData("respond-async, return=minimal", true)]
    [InlineData("Return = \"minimal\"; foo", true)]
    [InlineData("return=representation, return=minimal", false)]
    public async Task Preferences_are_read_as_the_standard_says(string prefer, bool isMinimal)
    {
        var (response, text) = await Ask("/v1/forms", Requests.Arc().ToJsonString(), prefer);
        using (response)
            Assert.Equal(isMinimal, JsonNode.Parse(text)!["request"] is null);
    }

    [Fact]
    public async Task A_batch_is_answered_short_as_a_whole()
    {
        var line = $$"""{"operation":"form","request":{{Requests.Arc().ToJsonString()}}}""";
        var (batch, lines) = await Ask("/v1/batches", line + "\n" + line, "return=minimal", "application/x-ndjson");
        var (single, text) = await Ask("/v1/forms", Requests.Arc().ToJsonString(), "return=minimal");
        using (batch)
        using (single)
        {
            Assert.Equal("return=minimal", batch.Headers.GetValues("Preference-Applied").Single());
            Assert.All(lines.TrimEnd('\n').Split('\n'), answer => Assert.EndsWith($"\"answer\":{text}}}", answer, StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task A_job_is_said_in_a_sentence_and_followed_by_steps()
    {
        var ready = await service.Form(Requests.Arc().With("/panel/pull", """{"by":{"rated":20000}}""").With("/panel/springback", """{"effectiveYield":290}""")
            .With("/form/backing", "\"ribs\"").With("/form/stop", """{"offset":0.3,"slope":1.02}"""));
        Assert.Equal("ready", (string)ready["verdict"]!);
        Assert.Equal(
            $"Ready: {ready["form"]!["folds"]} folds in {ready["form"]!["stopSettings"]!.AsArray().Count} stop settings.", (string)ready["text"]!);
        Assert.Equal(["make-ribs", "print-sheet", "run-program"], IdsOf(ready));
        Assert.Equal((string)ready["links"]!["program"]!, (string)ready["next"]![2]!["link"]!);

        var open = await service.Form(JsonNode.Parse("""
            {"units":"mm","panel":{"material":{"id":"al-3003-h14"},"thickness":1.2,"width":600,"curve":{"type":"arc","radius":150,"sweep":90}}}
            """)!.AsObject());
        Assert.StartsWith("Look first: ", (string)open["text"]!, StringComparison.Ordinal);
        Assert.Equal(["bend-strip", "fold-strips", "make-ribs"], IdsOf(open));
        var fold = open["next"]![1]!["firstStrip"]!;
        Assert.Contains((double)fold["stopSetting"]!, open["form"]!["stopSettings"]!.AsArray().Select(setting => (double)setting!["stopSetting"]!));
        Assert.Equal((double)open["form"]!["thickness"]!, (double)fold["thickness"]!);
    }

    [Fact]
    public async Task A_job_that_cannot_be_made_says_what_to_change_and_the_change_cures_it()
    {
        var request = Requests.Arc().With("/brake/length", "100");
        var answer = await service.Form(request);
        Assert.StartsWith("Cannot be made: ", (string)answer["text"]!, StringComparison.Ordinal);
        var step = answer["next"]!.AsArray().Single()!;
        Assert.Equal("change-job", (string)step["id"]!);
        var changed = answer["request"]!.DeepClone().AsObject();
        foreach (var change in step["remedy"]!["changes"]!.AsArray())
            changed = changed.With((string)change!["pointer"]!, change["value"]!.ToJsonString());
        Assert.NotEqual("cannot-be-made", (string)(await service.Form(changed))["verdict"]!);
    }

    [Fact]
    public async Task A_program_is_followed_by_folding_and_measuring()
    {
        var (_, body) = Requests.Examples("programBrake").First();
        var answer = JsonNode.Parse(await (await service.Post("/v1/programs", body.ToJsonString())).Content.ReadAsStringAsync())!;
        Assert.Equal(["run-program", "inspect-form"], IdsOf(answer));
        Assert.Equal((string)answer["links"]!["program"]!, (string)answer["next"]![0]!["link"]!);
        Assert.Equal("/v1/inspections", (string)answer["next"]![1]!["link"]!);
    }

    [Theory]
    [InlineData("[0, 0]", "pull-panel")]
    [InlineData("[-1.5, -0.5]", "correct-folds")]
    [InlineData("[3, -1]", "change-job")]
    [Trait("Category", "Long")]
    public async Task A_measured_form_is_pulled_over_or_corrected(string errors, string next)
    {
        var (_, body) = Requests.Examples("inspectForm").First();
        var planned = JsonNode.Parse(await (await service.Post("/v1/inspections", body.ToJsonString())).Content.ReadAsStringAsync())!;
        var angles = planned["folds"]!.AsArray().Select(fold => (double)fold!["planned"]!).ToArray();
        var off = JsonNode.Parse(errors)!.AsArray();
        for (var i = 0; i < off.Count; i++)
            angles[i + 2] += (double)off[i]!;
        var measured = body.With("/measured", JsonSerializer.Serialize(new { angles }));
        var answer = JsonNode.Parse(await (await service.Post("/v1/inspections", measured.ToJsonString())).Content.ReadAsStringAsync())!;
        Assert.Equal(next == "pull-panel" ? [next, "measure-panel"] : [next], IdsOf(answer));
        Assert.Equal(next == "pull-panel", (bool)answer["withinTolerance"]!);
        // Nothing in the request would cure it.
        Assert.True(next != "change-job" || ((string)answer["next"]![0]!["text"]!).StartsWith("Pull no panel over it: ", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_prediction_is_followed_by_the_pull_or_by_the_change_that_its_worst_check_asks_for()
    {
        foreach (var (name, body) in Requests.Examples("predictPanel"))
        {
            var answer = JsonNode.Parse(await (await service.Post("/v1/forms/prediction", body.ToJsonString())).Content.ReadAsStringAsync())!;
            var open = answer["checks"]!.AsArray().Any(check => (string)check!["verdict"]! != "pass");
            Assert.Equal([open ? "change-job" : "pull-panel"], IdsOf(answer));
            Assert.True(!open || (string)answer["next"]![0]!["link"]! == "/v1/forms/prediction", name);
        }
    }

    private static string[] IdsOf(JsonNode answer) => [.. answer["next"]!.AsArray().Select(step => (string)step!["id"]!)];

    // Every field of the short answer is in the full one, and says the same to four decimals.
    private static void AssertWithin(JsonNode part, JsonNode whole, string because)
    {
        switch (part)
        {
            case JsonObject fields:
                foreach (var (name, value) in fields)
                {
                    Assert.True(whole.AsObject().TryGetPropertyValue(name, out var there), $"{because}: {name}");
                    if (value is null && there is null)
                        continue;
                    if (name == "checks")
                        there = new JsonArray([.. there!.AsArray().Where(check => (string)check!["verdict"]! != "pass").Select(check => check!.DeepClone())]);
                    AssertWithin(value!, there!, because + "/" + name);
                }

                break;
            case JsonArray items:
                Assert.Equal(items.Count, whole.AsArray().Count);
                foreach (var (one, other) in items.Zip(whole.AsArray()))
                {
                    if (one is not null)
                        AssertWithin(one, other!, because);
                }

                break;
            case JsonValue value when value.TryGetValue<double>(out var number):
                Assert.Equal((double)whole, number, 5.1e-5);
                break;
            default:
                Assert.True(JsonNode.DeepEquals(part, whole), because);
                break;
        }
    }
}
