using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;
using FormApi.Hosting;
using Forming.Verification;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using OpenTelemetry.Metrics;
using OpenTelemetry.Trace;

namespace FormApi.Tests;

/// <summary>What an operator sees of the service from outside. Whoever measures measures the whole process, so each test has it alone.</summary>
[Collection(Alone.Name)]
public sealed class SightTests : IDisposable
{
    private const string Requested = @"http_server_request_duration_seconds_count\{[^}]*";

    private readonly Service _service = Service.OnPort(("Limits:Seconds", "60"), ("Limits:Concurrent", "1"), ("Limits:HalfClosedSeconds", "0"));

    private static string Arc { get; } = Requests.Arc().ToJsonString();

    public void Dispose() => _service.Dispose();

    [Fact]
    public async Task Requests_are_counted_and_timed_by_route_status_and_problem()
    {
        using (await _service.Post("/v1/forms", Arc)) { }
        using (await _service.Post("/v1/forms", "{}")) { }
        using var response = await _service.Client.GetAsync("/metrics");
        Assert.Equal("text/plain", response.Content.Headers.ContentType!.MediaType);
        var figures = await response.Content.ReadAsStringAsync();
        Assert.Matches(Requested + @"http_request_method=""POST"",http_response_status_code=""200"",http_route=""/v1/forms""[^}]*\} [1-9]", figures);
        Assert.Matches(
            Requested + @"formapi_problem=""missing-field"",http_request_method=""POST"",http_response_status_code=""400"",http_route=""/v1/forms""[^}]*\} [1-9]",
            figures);
        Assert.Matches(@"http_server_request_duration_seconds_bucket\{[^}]*le=""0.0005""\}", figures);
        Assert.Contains("dotnet_process_cpu_time_seconds_total", figures, StringComparison.Ordinal);
        Assert.Contains("kestrel_active_connections", figures, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Calculations_are_counted_by_outcome_whoever_asks_for_them()
    {
        var planned = await _service.Form(Requests.Arc());
        var verdict = (string)planned["verdict"]!;
        var before = await Count($@"formapi_calculations_total\{{[^}}]*formapi_calculation=""form"",formapi_outcome=""{verdict}""\}}");
        using (await _service.Post("/v1/forms", Arc)) { }
        using (await _service.Post("/v1/batches", Encoding.UTF8.GetBytes($$"""{"operation":"form","request":{{Arc}}}""" + "\n"), "application/x-ndjson")) { }
        using (await _service.Client.GetAsync((string)planned["links"]!["form"]!)) { }
        var after = await Count($@"formapi_calculations_total\{{[^}}]*formapi_calculation=""form"",formapi_outcome=""{verdict}""\}}");
        Assert.True(after >= before + 3, $"{before}, {after}");
    }

    [Fact]
    public async Task The_engines_work_is_counted_by_folds_planned_and_panels_wrapped()
    {
        var (folds, wraps) = (await Count(@"forming_folds_total\{[^}]*\}"), await Count(@"forming_wraps_total\{[^}]*\}"));
        var planned = await _service.Form(Requests.Arc());
        Assert.True(await Count(@"forming_folds_total\{[^}]*\}") >= folds + planned["form"]!["stations"]!.AsArray().Count);
        Assert.True(await Count(@"forming_wraps_total\{[^}]*\}") > wraps);
    }

    [Fact]
    public async Task Turns_are_counted_as_running_and_waiting()
    {
        var figures = await Figures();
        foreach (var state in (string[])["running", "waiting"])
            Assert.Matches($@"formapi_turns\{{[^}}]*formapi_turn_state=""{state}""\}} \d", figures);
    }

    [Fact]
    public async Task Methods_that_somebody_made_up_are_not_kept_among_the_figures()
    {
        foreach (var method in (string[])["BREW1", "BREW2", "pOST"])
        {
            using var request = new HttpRequestMessage(new(method), "/v1/brews");
            using var response = await _service.Client.SendAsync(request);
            Assert.InRange((int)response.StatusCode, 400, 499);
        }

        var figures = await Figures();
        Assert.DoesNotContain("BREW", figures, StringComparison.Ordinal);
        Assert.DoesNotContain("pOST", figures, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_bug_is_a_500_among_the_figures_and_says_what_was_thrown()
    {
        using var broken = Service.With(new NoTables());
        using var response = await broken.Client.GetAsync("/v1/verification?table=any");
        Assert.Equal(HttpStatusCode.InternalServerError, response.StatusCode);
        var figures = await broken.Client.GetStringAsync("/metrics");
        Assert.Matches(
            @"http_server_request_duration_seconds_count\{[^}]*error_type=""System.NotSupportedException""[^}]*http_response_status_code=""500""[^}]*\} [1-9]", figures);
    }

    [Fact]
    public async Task A_caller_who_hangs_up_is_not_counted_among_our_errors()
    {
        // Somebody else has the only turn, so that the caller waits.
        var turn = new TaskCompletionSource();
        var other = _service.Services.GetRequiredService<Turns>().CallAsync(
            EndpointFilterInvocationContext.Create(new DefaultHttpContext(), CancellationToken.None),
            async _ =>
            {
                await turn.Task;
                return null;
            });
        using (var socket = new Socket(SocketType.Stream, ProtocolType.Tcp))
        {
            await socket.ConnectAsync(IPAddress.Loopback, _service.Client.BaseAddress!.Port);
            var head = $"POST /v1/forms HTTP/1.1\r\nHost: here\r\nContent-Type: application/json\r\nContent-Length: {Arc.Length}\r\n\r\n";
            await socket.SendAsync(Encoding.ASCII.GetBytes(head + Arc));
            await Until(@"formapi_turns\{[^}]*""waiting""\} 1");
            // Closing resets the connection.
            socket.LingerState = new(true, 0);
        }

        await Until(Requested + @"formapi_aborted=""true"",http_request_method=""POST"",http_response_status_code=""499"",http_route=""/v1/forms""");
        turn.SetResult();
        await other;
        Assert.DoesNotMatch(@"http_response_status_code=""5\d\d"",http_route=""/v1/forms""", await Figures());
    }

    [Fact]
    public async Task Nothing_is_sent_before_a_collector_is_named_and_then_spans_and_figures_are()
    {
        Assert.Null(_service.Services.GetService<TracerProvider>());

        await using var collector = await Collector.StartAsync();
        using var seen = Service.With(
            ("OTEL_EXPORTER_OTLP_ENDPOINT", collector.Address), ("OTEL_EXPORTER_OTLP_PROTOCOL", "http/protobuf"), ("OTEL_SERVICE_NAME", "forms-of-ours"));
        using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/forms") { Content = new StringContent(Arc, Encoding.UTF8, "application/json") };
        request.Headers.Add("traceparent", "00-0af7651916cd43dd8448eb211c80319c-b7ad6b7169203331-01");
        using var answered = await seen.Client.SendAsync(request);
        var fingerprint = (string)JsonNode.Parse(await answered.Content.ReadAsStringAsync())!["fingerprint"]!;
        using (await seen.Client.GetAsync("/health/live")) { }
        await Flushed(seen, () => collector.Received("/v1/traces").Contains("/v1/forms", StringComparison.Ordinal));

        var traces = collector.Received("/v1/traces");
        Assert.Contains("/v1/forms", traces, StringComparison.Ordinal);
        Assert.Contains("calculate", traces, StringComparison.Ordinal);
        Assert.Contains(fingerprint, traces, StringComparison.Ordinal);
        Assert.Contains("forms-of-ours", traces, StringComparison.Ordinal);
        // The caller's own trace goes on.
        Assert.Contains(Encoding.Latin1.GetString(Convert.FromHexString("0af7651916cd43dd8448eb211c80319c")), traces, StringComparison.Ordinal);
        Assert.DoesNotContain("/health/live", traces, StringComparison.Ordinal);
        Assert.Contains("formapi.calculations", collector.Received("/v1/metrics"), StringComparison.Ordinal);
    }

    // A request's span ends once its answer is sent, which may be after the caller has it.
    private static async Task Flushed(Service seen, Func<bool> isThere)
    {
        for (var turn = 0; turn < 100 && !isThere(); turn++)
        {
            Assert.True(seen.Services.GetRequiredService<TracerProvider>().ForceFlush(10_000), "spans");
            await Task.Delay(50);
        }

        seen.Services.GetRequiredService<MeterProvider>().ForceFlush(10_000);
    }

    [Fact]
    public async Task A_collector_for_spans_alone_gets_no_figures()
    {
        await using var collector = await Collector.StartAsync();
        using var seen = Service.With(
            ("OTEL_EXPORTER_OTLP_TRACES_ENDPOINT", collector.Address + "/spans"), ("OTEL_EXPORTER_OTLP_PROTOCOL", "http/protobuf"));
        using (await seen.Client.GetAsync("/v1/gauges")) { }
        await Flushed(seen, () => collector.Paths.Any());
        Assert.Equal(["/spans"], collector.Paths);
    }

    [Theory]
    [InlineData("urls", "http://0.0.0.0:8080", "http://localhost:8080/")]
    [InlineData("urls", "http://[::]:9090;https://*:9443", "http://localhost:9090/")]
    [InlineData("urls", "https://+:9443", "https://localhost:9443/")]
    [InlineData("http_ports", "8081", "http://localhost:8081/")]
    [InlineData("http_ports", "8081;8082", "http://localhost:8081/")]
    [InlineData("Kestrel:Endpoints:Own:Url", "http://127.0.0.1:7000", "http://127.0.0.1:7000/")]
    [InlineData("none", "none", "http://localhost:8080/")]
    public void A_probe_asks_where_the_service_listens(string key, string value, string asked)
    {
        var settings = new ConfigurationBuilder().AddInMemoryCollection([new(key, value)]).Build();
        Assert.Equal(asked, Probe.AddressOf(settings).AbsoluteUri);
    }

    [Fact]
    public async Task A_health_check_needs_no_other_tool_than_the_service_itself()
    {
        Assert.Equal((0, "200"), await Probed(_service.Client.BaseAddress!, "/health/live"));
        Assert.Equal((0, "200"), await Probed(_service.Client.BaseAddress!, null));
        Assert.Equal((1, "404"), await Probed(_service.Client.BaseAddress!, "/health/none"));
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var closed = new Uri($"http://127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}");
        listener.Stop();
        Assert.Equal(1, (await Probed(closed, null)).Code);
    }

    private static async Task<(int Code, string Last)> Probed(Uri address, string? path)
    {
        var start = new ProcessStartInfo("dotnet", [typeof(Program).Assembly.Location, "--probe", .. path is null ? Array.Empty<string>() : [path]])
        {
            RedirectStandardOutput = true,
            Environment = { ["ASPNETCORE_URLS"] = address.GetLeftPart(UriPartial.Authority) },
        };
        using var process = Process.Start(start)!;
        var text = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return (process.ExitCode, text.TrimEnd().Split(' ')[^1]);
    }

    private async Task Until(string pattern)
    {
        var figures = "";
        for (var i = 0; i < 200; i++)
        {
            figures = await Figures();
            if (System.Text.RegularExpressions.Regex.IsMatch(figures, pattern))
                return;
            await Task.Delay(50);
        }

        Assert.Matches(pattern, figures);
    }

    private Task<string> Figures() => _service.Client.GetStringAsync("/metrics");

    private async Task<double> Count(string series)
    {
        var match = System.Text.RegularExpressions.Regex.Match(await Figures(), series + @" (?<value>[\d.e+]+)");
        return match.Success ? double.Parse(match.Groups["value"].Value, System.Globalization.CultureInfo.InvariantCulture) : 0;
    }

    /// <summary>Tables that cannot even be looked through.</summary>
    private sealed class NoTables : IReadOnlyList<CheckTable>
    {
        public int Count => 0;

        public CheckTable this[int index] => throw new NotSupportedException();

        public IEnumerator<CheckTable> GetEnumerator() => throw new NotSupportedException();

        System.Collections.IEnumerator System.Collections.IEnumerable.GetEnumerator() => GetEnumerator();
    }
}
