using System.Globalization;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Xunit.Abstractions;

namespace FormApi.Tests;

/// <summary>
/// A hunt for the dearest request and for any 5xx: extreme values to every operation in every media type, one after the other, the work
/// measured as processor time. A 503 is the deadline's; nothing may cost much more than the deadline, and nothing else may be a 5xx.
/// </summary>
[Collection(Alone.Name)]
public sealed class HuntTests(ITestOutputHelper output)
{
    private const int Rounds = 2000;
    private const int Seed = 20261126;

    // The deadline, and what a calculation may take to notice it [s].
    private const double Deadline = 1;
    private const double Notice = 0.5;

    private static readonly string[] Pictures = ["image/svg+xml", "application/pdf", "image/vnd.dxf", "text/csv", "model/gltf-binary"];

    [Fact]
    [Trait("Category", "Long")]
    public Task No_request_costs_more_than_its_deadline_or_breaks_the_service() => Hunt(Rounds, Seed);

    [Fact]
    [Trait("Category", "Slow")]
    public Task No_request_of_very_many_does()
    {
        var seed = uint.Parse(Environment.GetEnvironmentVariable("PROPERTY_SEED") ?? "1", CultureInfo.InvariantCulture);
        var rounds = int.Parse(Environment.GetEnvironmentVariable("HUNT_ROUNDS") ?? "100000", CultureInfo.InvariantCulture);
        return Hunt(rounds, unchecked((int)seed));
    }

    private async Task Hunt(int rounds, int seed)
    {
        using var service = Service.With(("Limits:Seconds", Deadline.ToString(CultureInfo.InvariantCulture)));
        var operations = Operations();
        // What is compiled at its first use is no cost of a request.
        foreach (var operation in operations)
        {
            foreach (var (i, body) in operation.Bodies.Index())
                await Send(service, operation, operation.Media[i % operation.Media.Length], Encoding.UTF8.GetBytes(body.ToJsonString()));
        }

        var random = new Random(seed);
        var found = new List<Found>();
        var tally = new SortedDictionary<int, int>();
        var most = 0.0;
        for (var round = 0; round < rounds; round++)
        {
            var operation = operations[random.Next(operations.Length)];
            var sent = Extremes.Drive(
                Spoiling.MostlyQuick(operation.Bodies[random.Next(operation.Bodies.Length)], round), random, operation.Extras);
            var media = operation.Media[random.Next(operation.Media.Length)];
            var (status, text, seconds) = await Send(service, operation, media, sent);
            tally[status] = tally.GetValueOrDefault(status) + 1;
            var one = new Found(seconds, status, $"{operation.Path} {media}", Encoding.UTF8.GetString(sent), text);
            if (status is >= 500 and not 503 || !IsWhole(one.Answer, media, status))
                Log("broken", one.ToString());
            if (seconds > most)
                Log("dearest", one.ToString());
            if (round % 1000 == 999)
                Log("done", string.Join(", ", tally));
            most = Math.Max(most, seconds);
            found.Add(one);
            if (found.Count > 1000)
                found = Dearest(found);
        }

        found = Dearest(found);
        output.WriteLine(string.Join(", ", tally));
        foreach (var one in found.Take(10))
            output.WriteLine(one.ToString());

        Assert.True(tally.GetValueOrDefault(200) > rounds / 20, "Too few requests got through to the calculation.");
        Assert.All(found, one =>
        {
            Assert.True(one.Status is 200 or 400 or 413 or 422 or 503, one.ToString());
            Assert.True(IsWhole(one.Answer, one.Where.Split(' ')[1], one.Status), one.ToString());
            Assert.True(one.Seconds < Deadline + Notice, one.ToString());
        });
    }

    // All that broke, and then the dearest.
    private static List<Found> Dearest(List<Found> found) =>
        [.. found.OrderByDescending(one => one.Status >= 500 && one.Status != 503).ThenByDescending(one => one.Seconds).Take(100)];

    private static bool IsWhole(string answer, string media, int status)
    {
        if (status == 200 && media != "application/json")
            return answer.Length > 0;
        try
        {
            using var document = JsonDocument.Parse(answer);
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    private static async Task<(int Status, string Text, double Seconds)> Send(Service service, Operation operation, string media, byte[] body)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, operation.Path) { Content = new ByteArrayContent(body) };
        request.Content.Headers.ContentType = new("application/json");
        request.Headers.Accept.Add(MediaTypeWithQualityHeaderValue.Parse(media));
        // The lesser of both: on a busy machine the clock counts what others do, on an idle one the processor counts the compiler's own threads.
        var (before, started) = (Environment.CpuUsage.TotalTime, System.Diagnostics.Stopwatch.GetTimestamp());
        using var response = await service.Client.SendAsync(request);
        var text = await response.Content.ReadAsStringAsync();
        var (worked, waited) = (Environment.CpuUsage.TotalTime - before, System.Diagnostics.Stopwatch.GetElapsedTime(started));
        return ((int)response.StatusCode, text, Math.Min(worked.TotalSeconds, waited.TotalSeconds));
    }

    private static Operation[] Operations() =>
    [
        new("/v1/forms", ["application/json"], [.. Requests.Examples().Select(example => example.Body), Requests.Arc()], FuzzTests.Extras),
        new("/v1/forms/drawing", Pictures, [.. Requests.Examples().Select(example => example.Body), Requests.Arc()], FuzzTests.Extras),
        new("/v1/forms/prediction", ["application/json"], [.. Requests.Predictions().Select(example => example.Body), Requests.Standing()], FuzzTests.Extras),
        new("/v1/programs", ["application/json", "text/csv", "image/svg+xml", "application/pdf"], [.. Requests.Programs().Select(example => example.Body), Requests.Program(), Requests.Hoop()], FuzzTests.ProgramExtras),
        .. Requests.Paths.Where(path => path.Key.StartsWith("learn", StringComparison.Ordinal)).Select(path => Of(path, Requests.StripExamples(), FuzzTests.StripExtras)),
        .. Requests.Paths.Where(path => path.Key is "correctPanel").Select(path => Of(path, Requests.PanelExamples(), FuzzTests.PanelExtras)),
        .. Requests.Paths.Where(path => path.Key is "computeTolerances" or "inspectForm").Select(path => Of(path, Requests.AccuracyExamples(), FuzzTests.AccuracyExtras)),
        .. Requests.Paths.Where(path => path.Key == "estimateJob").Select(path => Of(path, Requests.EstimateExamples(), FuzzTests.EstimateExtras)),
    ];

    private static Operation Of(KeyValuePair<string, string> path, TheoryData<string, string> examples, string[] extras) => new(
        path.Value,
        ["application/json"],
        [.. examples.Where(example => (string)example[0] == path.Key).Select(example => Requests.Example(path.Key, (string)example[1]))],
        extras);

    // A long hunt tells what it found as it goes.
    private static void Log(string what, string text)
    {
        if (Environment.GetEnvironmentVariable("HUNT_LOG") is { Length: > 0 } file)
            File.AppendAllText(file, $"{what} {text}\n");
    }

    private sealed record Operation(string Path, string[] Media, JsonObject[] Bodies, string[] Extras);

    private sealed record Found(double Seconds, int Status, string Where, string Sent, string Answer)
    {
        public override string ToString() => string.Create(
            CultureInfo.InvariantCulture, $"{Seconds:0.000} s {Status} {Where}\n  {Short(Sent)}\n  {Short(Answer, 300)}");

        private static string Short(string text, int most = 3000) => text.Length <= most ? text : text[..most] + "…";
    }
}
