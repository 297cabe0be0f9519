using FormApi.Http;
using FormApi.Http.Results;
using Forming.Verification;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FormApi.Features.Verification;

/// <summary><c>/health/live</c>: the process answers. <c>/health/startup</c>: every check value was computed. <c>/health/ready</c>: each
/// is right, and so is a known plan.</summary>
internal static class Health
{
    /// <summary>Adds the routes.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/health/live", Live)
            .Describe("getLiveness", "Operations", "Whether the process answers.");
        routes.MapGet("/health/startup", Started)
            .Describe("getStartup", "Operations", "Whether the process has computed every check value; the first call computes them.");
        routes.MapGet("/health/ready", Ready)
            .Describe("getReadiness", "Operations", "Whether every check value of /v1/verification, a known plan and the conversion of units are right.");
    }

    private static HealthResult<HealthAnswer> Live() => new(new("live", EngineVersion.Current), VerificationAnswerJson.Default.HealthAnswer);

    // Right or wrong is for readiness to say: a process that started wrong would start wrong again.
    private static HealthResult<HealthAnswer> Started(EngineVerification verification, KnownPlan plan)
    {
        _ = (verification.Report, plan.ComesOut);
        return new(new("started", EngineVersion.Current), VerificationAnswerJson.Default.HealthAnswer);
    }

    private static Results<HealthResult<ReadinessAnswer>, NotReadyResult> Ready(
        EngineVerification verification, KnownPlan plan, IHostApplicationLifetime lifetime)
    {
        var report = verification.Report;
        var stops = lifetime.ApplicationStopping.IsCancellationRequested;
        var ready = report.Verdict == CheckVerdict.Pass && plan.ComesOut && !stops;
        var answer = new ReadinessAnswer(
            ready ? "ready" : "not-ready",
            EngineVersion.Current,
            report.Values.Count,
            [.. report.Failed, .. plan.ComesOut ? Array.Empty<string>() : ["known-plan"], .. stops ? ["stopping"] : Array.Empty<string>()]);
        return ready
            ? new HealthResult<ReadinessAnswer>(answer, VerificationAnswerJson.Default.ReadinessAnswer)
            : new NotReadyResult(answer);
    }
}
