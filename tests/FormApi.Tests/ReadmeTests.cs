using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Forming.Results;
using Forming.Verification;

namespace FormApi.Tests;

/// <summary>What the README shows is what the service takes and answers.</summary>
public sealed partial class ReadmeTests(Service service) : IClassFixture<Service>
{
    [Fact]
    public void The_client_that_is_shown_is_the_one_that_is_run() => Assert.Contains(
        File.ReadAllText(Repository.PathOf("tests", "clients", "sample.ts")).Trim(),
        File.ReadAllText(Repository.PathOf("README.md")),
        StringComparison.Ordinal);

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

    [Fact]
    public async Task The_batch_command_names_a_file_that_is_answered()
    {
        var command = BatchCommand().Match(await File.ReadAllTextAsync(Repository.PathOf("README.md")));
        Assert.True(command.Success);
        var body = await File.ReadAllBytesAsync(Repository.PathOf(command.Groups["file"].Value));
        using var response = await service.Post(command.Groups["path"].Value, body, command.Groups["media"].Value);
        var answers = (await response.Content.ReadAsStringAsync()).TrimEnd('\n').Split('\n').Select(line => JsonNode.Parse(line)!).ToArray();
        Assert.Contains(answers, answer => (int)answer["status"]! == 200);
        Assert.All(answers, answer => Assert.True(answer["answer"] is null != answer["problem"] is null));
    }

    [Fact]
    public async Task Every_command_that_sends_a_request_is_answered()
    {
        var commands = PostCommands().Matches(await File.ReadAllTextAsync(Repository.PathOf("README.md")));
        Assert.Equal(4, commands.Count);
        foreach (var command in commands.Cast<Match>())
        {
            var body = command.Groups["file"] is { Success: true, Value: var file }
                ? await File.ReadAllTextAsync(Repository.PathOf(file))
                : command.Groups["body"].Value;
            await service.Answer(command.Groups["path"].Value, JsonNode.Parse(body)!);
        }
    }

    [Fact]
    public async Task What_is_said_to_be_learnt_is_what_is_learnt()
    {
        var text = (await File.ReadAllTextAsync(Repository.PathOf("README.md"))).ReplaceLineEndings(" ");
        var learnt = await service.Answer("/v1/test-strips/springback", Requests.Example("learnSpringback", "cab-corner-panel"));
        var effectiveYield = (double)learnt["paste"]!["panel"]!["springback"]!["effectiveYield"]!;
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"\"effectiveYield\":{effectiveYield:0.0}"), text, StringComparison.Ordinal);
        var corrected = await service.Answer("/v1/panels/corrections", Requests.Example("correctPanel", "cab-corner-open"));
        var step = (string)corrected["next"]!.AsArray().Single(one => (string)one!["id"]! == "correct-folds")!["text"]!;
        Assert.Contains(step[(step.IndexOf(": ", StringComparison.Ordinal) + 3)..].TrimEnd('.'), text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_check_values_are_counted_by_how_they_were_come_by()
    {
        var counted = CheckValues().Match(await File.ReadAllTextAsync(Repository.PathOf("README.md")));
        Assert.True(counted.Success);
        var values = CheckTables.All.SelectMany(table => table.Values).ToArray();
        int Told(string name) => int.Parse(counted.Groups[name].Value, CultureInfo.InvariantCulture);
        int Are(Status status) => values.Count(value => value.Status == status);
        Assert.Equal(values.Length, Told("all"));
        Assert.Equal(
            (Are(Status.Published), Are(Status.PublishedAsQuoted), Are(Status.FromMemory), Are(Status.Computed), Are(Status.Model)),
            (Told("published"), Told("quoted"), Told("memory"), Told("computed"), Told("model")));
        Assert.Equal(values.Length, Told("published") + Told("quoted") + Told("memory") + Told("computed") + Told("model"));
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

    [GeneratedRegex(@"^curl -sN http://localhost:8080(?<path>\S+) -H 'Content-Type: (?<media>[^']+)' -T (?<file>\S+) -X POST$", RegexOptions.Multiline)]
    private static partial Regex BatchCommand();

    [GeneratedRegex(@"^curl -s http://localhost:8080(?<path>\S+) (-H '[^']+' )+\\\n  -d (@(?<file>\S+)|'(?<body>[^']+)')$", RegexOptions.Multiline)]
    private static partial Regex PostCommands();

    [GeneratedRegex(@"(?<all>\d+) check values, .*: (?<published>\d+) published, (?<quoted>\d+) quoted, (?<memory>\d+) from memory, (?<computed>\d+) computed by hand or by a second method, (?<model>\d+) from the project's own model")]
    private static partial Regex CheckValues();

    [GeneratedRegex("```json\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex JsonBlocks();
}
