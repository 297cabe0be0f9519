using FormApi.Features.Batches;
using FormApi.Http;
using FormApi.Http.Callers;
using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Results;
using Forming.Drawing.Csv;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Options;

namespace FormApi.Features.Comparisons;

/// <summary><c>POST /v1/comparisons</c>: one request with values to try, a compact row for every combination.</summary>
internal static class ComparisonsEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapComparisons(this IEndpointRouteBuilder routes) => routes.MapPost("/v1/comparisons", CompareAsync)
        .Describe(
            "compareJobs",
            "Comparisons",
            "Many variants of one request side by side, a row each.",
            "Takes one request and lists of values for places in it, and answers every combination, up to 500, by one compact row: verdict, checks that did not pass, folds, what comes off, blanks, build minutes and cost. "
            + "The rows that none beats in folds, ripple and build minutes together are named. "
            + "A combination that cannot be answered has a problem in its own row only. "
            + "By Accept: application/json; text/csv, a line for every row. "
            + "Rows are calculated on every core, each within Limits:Seconds (10 s); a comparison takes one of the places of batches, Limits:Batches (4).")
        .Refuses(429);

    private static async Task<Results<AnswerResult<ComparisonAnswer>, ComparisonFileResult, ProblemResult>> CompareAsync(
        JsonBody<ComparisonRequest> body, BatchPlaces places, CallerLimits callers, IOptions<Limits> limits, HttpContext context)
    {
        if (body.Problem is { } problem)
            return problem;
        if (callers.Count(context) is { } tooMany)
            return tooMany;
        using var place = places.TryTake();
        if (place is null)
            return places.TooMany();
        var request = body.Value;
        var job = new ComparedJob(request, context.Request.Path, RequestTrace.IdOf(context));
        var rows = await RowsAsync(job, (int)request.Combinations(), limits.Value, context.RequestAborted);
        var shown = NormalizedRequest.Of(request);
        var answer = new ComparisonAnswer(
            EngineVersion.Current, shown.Fingerprint, [.. request.Vary.Select(vary => vary.Pointer)], rows, BestRows.Of(rows));
        if (ComparisonFileResult.Offered.Choose(context.Request) != MediaTypes.Csv)
            return new AnswerResult<ComparisonAnswer>(answer, ComparisonAnswerJson.Default.ComparisonAnswer, shown.Fingerprint);
        using var stream = new MemoryStream();
        CsvText.Write(stream, ComparisonTable.Headings(answer, shown.Units), rows.Select(row => ComparisonTable.Cells(row, answer.Best)));
        return new ComparisonFileResult(stream.ToArray(), shown.Fingerprint);
    }

    private static async Task<ComparedRow[]> RowsAsync(ComparedJob job, int count, Limits limits, CancellationToken gone)
    {
        var rows = new ComparedRow[count];
        // A chunk for a core would leave one waiting for the other: rows differ.
        var everyCore = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = gone };
        await Parallel.ForAsync(0, count, everyCore, (i, cancellation) =>
        {
            using var deadline = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
            deadline.CancelAfter(TimeSpan.FromSeconds(limits.Seconds));
            try
            {
                rows[i] = job.RowOf(i + 1, deadline.Token);
            }
            catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
            {
                rows[i] = job.Refused(i + 1, ProblemResult.TooSlow(limits));
            }

            return ValueTask.CompletedTask;
        });
        return rows;
    }
}
