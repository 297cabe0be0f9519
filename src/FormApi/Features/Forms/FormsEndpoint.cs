using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FormApi.Features.Forms;

/// <summary><c>POST /v1/forms</c>: from a finished curve and a material to everything needed to mark, fold and use a form.</summary>
internal static class FormsEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapForms(this IEndpointRouteBuilder routes) => routes.MapPost("/v1/forms", Post)
        .Describe(
            "computeForm",
            "Forms",
            "Stations, angles, blanks, springback, checks and cautions for one form.",
            "Takes the finished curve of a panel, the form it is to be wrapped over and the brake the form is folded on. "
            + "Everything that can be computed is answered with 200, stations included; a failed check makes the verdict cannot-be-made and names the nearest change that would pass. "
            + "The same request gives a byte-identical answer, whatever the order of its fields or the spelling of its numbers.");

    /// <summary>Answers a request.</summary>
    /// <param name="body">The body as it was read.</param>
    /// <param name="isMinimal">Whether a short answer is wanted: then no remedy is looked for.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    internal static Results<AnswerResult<FormAnswer>, ProblemResult> Compute(
        JsonBody<FormRequest> body, bool isMinimal, CancellationToken cancellation) => body.Answer(request =>
    {
        var job = PlannedJob.Of(request, isMinimal ? _ => false : null, cancellation);
        return new AnswerResult<FormAnswer>(FormAnswer.From(job, isMinimal), FormAnswerJson.Default.FormAnswer, job.Shown.Fingerprint);
    });

    private static Results<AnswerResult<FormAnswer>, ProblemResult> Post(
        JsonBody<FormRequest> body, HttpContext context, CancellationToken cancellation) =>
        Compute(body, Preference.IsMinimal(context), cancellation);
}
