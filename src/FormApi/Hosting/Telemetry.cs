using System.Diagnostics;
using FormApi.Http;
using OpenTelemetry.Exporter;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace FormApi.Hosting;

/// <summary>
/// What an operator sees from outside: metrics always, and spans where they are wanted. Nothing is sent before one of the standard
/// <c>OTEL_EXPORTER_OTLP_…ENDPOINT</c> variables names a collector.
/// </summary>
internal static class Telemetry
{
    private const string Service = "formapi";

    /// <summary>Adds metrics, and spans where a collector is named.</summary>
    /// <param name="builder">The service being built.</param>
    public static void AddTelemetry(this WebApplicationBuilder builder)
    {
        var settings = builder.Configuration;
        var telemetry = builder.Services.AddOpenTelemetry()
            // The environment has the last word: OTEL_SERVICE_NAME, OTEL_RESOURCE_ATTRIBUTES.
            .ConfigureResource(
                resource => resource.AddService(Service, serviceVersion: EngineVersion.Current).AddEnvironmentVariableDetector())
            .WithMetrics(metrics =>
            {
                metrics.Measure();
                if (IsSent(settings, "METRICS"))
                    metrics.AddOtlpExporter(options => SendTo(options, settings, "METRICS"));
            });
        if (IsSent(settings, "TRACES"))
        {
            telemetry.WithTracing(traces => traces
                .AddSource(Calculations.Meter)
                .AddAspNetCoreInstrumentation(options =>
                {
                    options.Filter = context => !RequestLog.IsOfOperators(context);
                    options.EnrichWithHttpResponse = Name;
                })
                .AddOtlpExporter(options => SendTo(options, settings, "TRACES")));
        }
    }

    // The same name as in the log and in the answer.
    private static void Name(Activity span, HttpResponse response) =>
        span.SetTag("formapi.fingerprint", RequestTrace.FingerprintOf(response.HttpContext));

    private static bool IsSent(ConfigurationManager settings, string signal) =>
        !settings.GetValue("OTEL_SDK_DISABLED", false)
        && settings[$"OTEL_{signal}_EXPORTER"] != "none"
        && (EndpointOf(settings, signal) ?? settings["OTEL_EXPORTER_OTLP_ENDPOINT"]) is { Length: > 0 };

    private static void SendTo(OtlpExporterOptions options, ConfigurationManager settings, string signal)
    {
        // The exporter itself reads only the one for all signals.
        if (EndpointOf(settings, signal) is { Length: > 0 } endpoint)
            options.Endpoint = new(endpoint);
    }

    private static string? EndpointOf(ConfigurationManager settings, string signal) => settings[$"OTEL_EXPORTER_OTLP_{signal}_ENDPOINT"];
}
