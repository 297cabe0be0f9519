using FormApi.Http;
using FormApi.Operations;
using Forming.Verification;

namespace FormApi.Features.Verification;

/// <summary><c>GET /v1/verification</c>: the running engine against every published check value.</summary>
internal static class VerificationEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Where to.</param>
    public static void MapVerification(this IEndpointRouteBuilder routes) => routes.MapGet("/v1/verification", Verify)
        .Describe<VerificationAnswer>("verifyEngine", "Verification", "The published check values, recomputed by the running engine.", 400)
        .WithDescription(
            "Expected, got, difference, tolerance and verdict of every value that the project's own tests hold the engine against, with source and status. "
            + "Recomputed once a process, at the first call of this path or of /health/ready, which answers 503 if one value fails.");

    private static IResult Verify(HttpContext context, EngineVerification verification, IReadOnlyList<CheckTable> tables, string? table = null)
    {
        if (table is not null && tables.All(one => one.Id != table))
        {
            var known = string.Join(", ", tables.Select(one => one.Id));
            return new ProblemResult(
                Problems.BadRequest, "The query's table is not there.", [new("", Problems.UnknownValue.Code, "table is not known.", null, known)]);
        }

        var report = verification.Report;
        if (report.Verdict == CheckVerdict.Fail)
        {
            // One machine's failure is not for every caller behind a cache, nor for a day.
            context.Response.Headers.CacheControl = "no-store";
            return Results.Json(VerificationAnswer.From(report, table), AnswerJson.Default.VerificationAnswer);
        }

        return new TableResult<VerificationAnswer>(
            "verification" + (table is null ? "" : "-" + table),
            () => VerificationAnswer.From(report, table),
            AnswerJson.Default.VerificationAnswer);
    }
}
