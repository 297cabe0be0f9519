using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace FormApi.Tests;

/// <summary>What the README shows is what the service takes and answers.</summary>
public sealed partial class ReadmeTests(Service service) : IClassFixture<Service>
{
    [Fact]
    public async Task The_first_request_gets_the_answer_shown()
    {
        var blocks = JsonBlocks().Matches(await File.ReadAllTextAsync(Repository.PathOf("README.md")))
            .Select(match => JsonNode.Parse(match.Groups[1].Value)!).ToArray();
        Assert.Equal(2, blocks.Length);
        var committed = JsonNode.Parse(await File.ReadAllTextAsync(
            Repository.PathOf("openapi", "examples", "computeForm.cab-corner-arc.request.json")));
        Assert.True(JsonNode.DeepEquals(committed, blocks[0]));
        AssertContains(await service.Form(blocks[0]), blocks[1], "");
    }

    // Everything shown is in the answer; lists are shown from their beginning.
    private static void AssertContains(JsonNode? answer, JsonNode? shown, string place)
    {
        switch (shown)
        {
            case JsonObject fields:
                foreach (var (name, value) in fields)
                    AssertContains(answer![name], value, place + "/" + name);
                break;
            case JsonArray items:
                for (var i = 0; i < items.Count; i++)
                    AssertContains(answer![i], items[i], place + "/" + i);
                break;
            default:
                Assert.True(JsonNode.DeepEquals(answer, shown), $"{place}: {answer} is shown as {shown}");
                break;
        }
    }

    [GeneratedRegex("```json\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex JsonBlocks();
}
