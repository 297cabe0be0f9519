using FormApi.Http.Problems;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FormApi.Hosting;

/// <summary><c>GET /problems/{code}</c>: what a problem means and what to do.</summary>
internal static class ProblemsEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapProblems(this IEndpointRouteBuilder routes) => routes.MapGet("/problems/{code}", Explain)
        .Describe("explainProblem", "Operations", "What a problem's type means and what to do about it.")
        .WithMetadata(new MediaTypes("application/json", "text/plain"));

    /// <summary>Explains a kind of problem.</summary>
    /// <param name="code">The last part of the problem's type.</param>
    /// <param name="context">The request.</param>
    private static Results<TableResult<ProblemKind>, ContentHttpResult, NotFoundResult> Explain(string code, HttpContext context)
    {
        if (ProblemKinds.Find(code) is not { } kind)
            return new NotFoundResult("Unknown kind of problem.");
        var media = context.GetEndpoint()!.Metadata.GetMetadata<MediaTypes>()!.Choose(context.Request);
        return media == "text/plain"
            ? TypedResults.Text($"{kind.Status} {kind.Title}\n\n{kind.Text}\n")
            : new TableResult<ProblemKind>($"problem-{code}", () => kind, ProblemJson.Default.ProblemKind);
    }
}
