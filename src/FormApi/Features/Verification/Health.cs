using FormApi.Http;
using FormApi.Http.Results;
using Forming.Verification;

namespace FormApi.Features.Verification;

/// <summary><c>/health/live</c>: the process answers. <c>/health/ready</c>: every check value and a known plan come out.</summary>
internal static class Health
{
    /// <summary>Adds the routes.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/health/live", () => Results.Json(new HealthAnswer("live", EngineVersion.Current), VerificationAnswerJson.Default.HealthAnswer))
            .Describe<HealthAnswer>("getLiveness", "Operations", "Whether the process answers.");
        routes.MapGet("/health/ready", Ready)
            .Describe<ReadinessAnswer>("getReadiness", "Operations", "Whether every check value of /v1/verification, a known plan and the conversion of units are right.")
            .Produces<ReadinessAnswer>(503, "application/json");
    }

    private static IResult Ready(EngineVerification verification, KnownPlan plan)
    {
        var report = verification.Report;
        var ready = report.Verdict == CheckVerdict.Pass && plan.ComesOut;
        var answer = new ReadinessAnswer(
            ready ? "ready" : "not-ready",
            EngineVersion.Current,
            report.Values.Count,
            [.. report.Failed, .. plan.ComesOut ? Array.Empty<string>() : ["known-plan"]]);
        return Results.Json(answer, VerificationAnswerJson.Default.ReadinessAnswer, statusCode: ready ? 200 : 503);
    }
}
