using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FormApi.Contract;

namespace FormApi.Tests;

/// <summary>
/// Everything that a person may read is plain: <c>texts.txt</c> lists every text of the source once, for a person to read;
/// the words and the digits are read here in what the service really answers.
/// </summary>
public sealed partial class PlainWordsTests(Service service) : IClassFixture<Service>
{
    // Words that stood for everything, and the phrases in which they mean what they say.
    private static readonly (string Word, string Phrases, string Why)[] Banned =
    [
        ("stands?|stood|standing", "stand(s)? (between|clear|in line|in its swing)|nobody stand|operator stands|standing (person|people|crew)|225 N, standing", "people do stand"),
        ("comes?|came|coming", "comes? (off|first|out and goes in|out in front)|ram comes down|panel coming off|panel to come|service (it )?comes from", "a panel comes off a form, a part out of a brake; the law comes first"),
        ("tells?|told|telling", "", ""),
        (
            "holds?|held|holding",
            "hold(s|ing)? (it|narrow strips|the sheet|the panel|the whole|the blank|the job|all blanks|form and panel|down|up|4096|more than|no request|a (chain|link|request)|about)|hold-down|held-out|has to hold|to hold|strip held|"
            + "link holds|(can|cannot) hold a|folds hold",
            "hands, clamps and links hold something"),
        ("goes with|go with|went with", "", ""),
        ("(of|on) (its|his|their) own", "", ""),
        ("dear|spoilt|spoils?|anew|endways|afresh|reckon(s|ed)?|by itself", "(closes?|K) by itself|±[0-9.]+ by itself|lies? by itself|operation gives by itself", "alone"),
        ("figures?", "fig(ure)? [0-9]|[Ff]igures? [0-9]", "of a book; numbers are numbers or values"),
        ("(is|are) no", "(there|it) (is|are) no|(is|are) no (longer|less|limit)|stretch, no friction", "there is none of it"),
    ];

    public static TheoryData<string> Examples => [.. Directory.GetFiles(Repository.PathOf("openapi", "examples"), "*.request.json")
        .Select(path => Path.GetFileName(path).Replace(".request.json", "", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    [Fact]
    public void Every_text_of_the_source_is_listed_once() => Repository.Compare(
        Repository.PathOf("tests", "FormApi.Tests", "texts.txt"),
        Encoding.UTF8.GetBytes(string.Concat(SourceTexts.All.Select(text => text.ReplaceLineEndings("\\n") + "\n"))));

    [Fact]
    public void The_source_is_written_in_plain_words() => AssertPlain(SourceTexts.All);

    [Fact]
    public async Task The_contract_is_written_in_plain_words()
    {
        var contract = JsonNode.Parse((await ContractFile.Make(service.Services)).Json)!;
        var texts = Described(contract).Distinct().ToArray();
        Assert.True(texts.Length > 500, "The descriptions were not found.");
        AssertPlain(texts);
    }

    [Theory]
    [InlineData("README.md")]
    [InlineData("DEVELOPERS.md")]
    [InlineData("CONTRIBUTING.md")]
    [InlineData("SECURITY.md")]
    public void What_is_written_for_people_is_in_plain_words(string file) => AssertPlain(Fenced().Replace(File.ReadAllText(Repository.PathOf(file)), "").Split("\n\n"));

    [Theory]
    [MemberData(nameof(Examples))]
    [Trait("Category", "Long")]
    public async Task Answers_are_in_plain_words_with_digits_that_a_person_can_use(string name)
    {
        var body = File.ReadAllBytes(Repository.PathOf("openapi", "examples", name + ".request.json"));
        var operation = name.Split('.')[0];
        var texts = operation is "drawForm" ? [] : Strings(JsonNode.Parse(await Answer(Requests.PathOf(operation), body, "application/json"))).ToList();
        if (operation is "drawForm" or "computeForm" or "programBrake")
            texts.AddRange(TextsOf(await Answer(operation == "programBrake" ? "/v1/programs" : "/v1/forms/drawing", body, "image/svg+xml")));
        // A row of a comparison has no text but where it has a problem.
        Assert.True(texts.Count > 0 || operation == "compareJobs");
        AssertPlain(texts);
        AssertUsable(texts);
    }

    [Fact]
    public async Task Problems_are_in_plain_words_with_digits_that_a_person_can_use()
    {
        var texts = new List<string>();
        foreach (var (pointer, value, _, _, _) in BadBodiesTests.Changes.Select(row => ((string)row[0], (string?)row[1], row[2], row[3], row[4])))
            texts.AddRange(Strings(JsonNode.Parse(await Answer("/v1/forms", Encoding.UTF8.GetBytes(Changed(pointer, value)), "application/json"))));
        Assert.True(texts.Count > 300, "The problems were not found.");
        AssertPlain(texts);
        AssertUsable(texts);
    }

    [Theory]
    [InlineData("the pull stands at 5 N")]
    [InlineData("the pull comes to about 5 N")]
    [InlineData("the ripple cannot be told")]
    [InlineData("the limit holds near eight times")]
    [InlineData("these figures are estimates")]
    [InlineData("the value is no text")]
    [InlineData("slide it off endways")]
    public void A_banned_word_is_found(string text) => Assert.NotNull(Fault(text));

    [Theory]
    [InlineData("the pull is 1848.9 N")]
    [InlineData("the form's end turns 3.843°")]
    [InlineData("the facet is 17.205 mm wide")]
    [InlineData("the stop is at 9.3182 in")]
    [InlineData("the blank weighs 3.4265 kg")]
    public void Digits_that_nobody_can_use_are_found(string text) => Assert.NotNull(TooFine(text));

    private static void AssertPlain(IEnumerable<string> texts)
    {
        var faults = texts.Select(Fault).OfType<string>().ToArray();
        Assert.True(faults.Length == 0, string.Join(Environment.NewLine, faults));
    }

    private static void AssertUsable(IEnumerable<string> texts)
    {
        var faults = texts.Select(TooFine).OfType<string>().ToArray();
        Assert.True(faults.Length == 0, string.Join(Environment.NewLine, faults));
    }

    private static string? Fault(string text)
    {
        foreach (var (word, phrases, _) in Banned)
        {
            var rest = phrases.Length == 0 ? text : Regex.Replace(text, $"(?i)(?:{phrases})", "");
            if (Regex.Match(rest, $@"(?i)(?<![\w/`.-])(?:{word})(?![\w`-])") is { Success: true } found)
                return $"“{found.Value}” in: {text}";
        }

        return null;
    }

    // Hundredths of a mm; thousandths of an inch, ten-thousandths under a tenth as gauge tables print; hundredths of a degree; three digits of what is weighed and pulled.
    private static string? TooFine(string text)
    {
        foreach (Match match in Quantities().Matches(text))
        {
            var (number, unit) = (match.Groups[1].Value, match.Groups[2].Value);
            var value = double.Parse(number, CultureInfo.InvariantCulture);
            var decimals = number.Contains('.', StringComparison.Ordinal) ? number.Length - number.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
            // The decimals of the first digit: what is smaller than a step keeps one digit.
            var one = value > 0 ? -(int)Math.Floor(Math.Log10(value)) : 0;
            var most = unit switch
            {
                "mm" => Math.Max(2, one),
                "in" => Math.Max(value < 0.1 ? 4 : 3, one),
                "°" => Math.Max(2, one),
                _ => Math.Max(0, 2 + one),
            };
            if (decimals > most)
                return $"{match.Value} in: {text}";
        }

        return null;
    }

    private async Task<string> Answer(string path, byte[] body, string accept)
    {
        using var content = new ByteArrayContent(body);
        content.Headers.ContentType = new("application/json");
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = content };
        request.Headers.Accept.Add(new(accept));
        using var response = await service.Client.SendAsync(request);
        return await response.Content.ReadAsStringAsync();
    }

    private static string Changed(string pointer, string? value)
    {
        var request = Requests.Arc();
        JsonNode at = request;
        var steps = pointer.Split('/')[1..].Select(step => step.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal)).ToArray();
        foreach (var step in steps[..^1])
            at = at is JsonArray list ? list[int.Parse(step, CultureInfo.InvariantCulture)]! : at[step] ??= new JsonObject();
        if (value is null)
            at.AsObject().Remove(steps[^1]);
        else
            at[steps[^1]] = JsonNode.Parse(value);
        return request.ToJsonString();
    }

    private static IEnumerable<string> Described(JsonNode? node) => node switch
    {
        JsonObject map => map.Where(entry => entry.Key is not ("example" or "examples")).SelectMany(entry =>
            entry is { Key: "description" or "summary" or "title", Value: JsonValue text } && text.GetValueKind() == JsonValueKind.String ? [text.GetValue<string>()] : Described(entry.Value)),
        JsonArray list => list.SelectMany(Described),
        _ => [],
    };

    // What is a sentence: names, ids and citations with their page hold no habits.
    private static IEnumerable<string> Strings(JsonNode? node) => node switch
    {
        JsonObject map => map.Where(entry => entry.Key is not ("source" or "citation" or "given")).SelectMany(entry => Strings(entry.Value)),
        JsonArray list => list.SelectMany(Strings),
        JsonValue value when value.GetValueKind() == JsonValueKind.String && value.GetValue<string>().Contains(' ', StringComparison.Ordinal) => [value.GetValue<string>()],
        _ => [],
    };

    // A long text is drawn in lines.
    private static string[] TextsOf(string svg) =>
        [string.Join(' ', XDocument.Parse(svg).Descendants().Where(node => node.Name.LocalName is "text" or "title" or "desc").Select(node => node.Value))];

    [GeneratedRegex("```.*?```|`[^`]*`|<!-- arrows.*?<!-- end", RegexOptions.Singleline)]
    private static partial Regex Fenced();

    [GeneratedRegex(@"(?<![\w.])(\d+(?:\.\d+)?) ?(mm|in|°|N|lbf|kg|lb|J|ft·lbf|MPa|psi)(?![\w/·²])")]
    private static partial Regex Quantities();
}
