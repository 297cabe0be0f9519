using FormApi.Http.Problems;
using FormApi.Http.Results;
using Forming.Verification;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FormApi.Features.Verification;

/// <summary><c>GET /v1/verification</c>: the running engine against every check value, published or computed by a second method.</summary>
internal static class VerificationEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapVerification(this IEndpointRouteBuilder routes) => routes.MapGet("/v1/verification", Verify)
        .Describe("verifyEngine", "Verification", "The check values, recomputed by the running engine.")
        .WithDescription(
            "Expected, got, difference, tolerance and verdict of every value that the project's own tests compare the engine with, with source and status. "
            + "Recomputed once a process, at the first call of this path or of /health/ready, which answers 503 if one value fails.");

    private static Results<ReportResult, ProblemResult> Verify(
        HttpContext context, EngineVerification verification, IReadOnlyList<CheckTable> tables, string? table = null)
    {
        if (table is not null && tables.All(one => one.Id != table))
        {
            var known = string.Join(", ", tables.Select(one => one.Id));
            return new ProblemResult(
                ProblemKinds.BadRequest, "The query names an unknown table.", [new("", ProblemKinds.UnknownValue.Code, "table is not known.", null, known)]);
        }

        return new ReportResult(VerificationAnswer.From(verification.Report, table));
    }
}
