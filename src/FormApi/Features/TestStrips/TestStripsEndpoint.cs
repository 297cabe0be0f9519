using System.Text.Json.Serialization.Metadata;
using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Results;
using Forming.TestStrips;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FormApi.Features.TestStrips;

/// <summary><c>POST /v1/test-strips/…</c>: from what was measured on test strips to values for the next form.</summary>
internal static class TestStripsEndpoint
{
    private const string Tag = "Test strips";

    private const string Always =
        " One strip is enough; its reading error then sets the width. Outliers are named but still counted. "
        + "Paste `paste` unchanged into the next request of /v1/forms; `next` is the most useful next strip.";

    /// <summary>Adds the routes.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapTestStrips(this IEndpointRouteBuilder routes)
    {
        routes.MapPost("/v1/test-strips/stop", (JsonBody<StopStripsRequest> body) => Answer(
                body,
                (request, asked) => StopStripsAnswer.From(StopStrips.Learn(request.ToQuestion()), asked),
                StripAnswerJson.Default.StopStripsAnswer))
            .Describe(
                "learnStop",
                Tag,
                "The line of the angle stop from strips folded against it.",
                "Takes pairs of stop angle and measured angle; answers stop angle = offset + slope × fold angle with its confidence, and the stop to set for each wanted angle." + Always);
        routes.MapPost("/v1/test-strips/springback", (JsonBody<SpringbackStripsRequest> body, CancellationToken cancellation) => Answer(
                body,
                (request, asked) => SpringbackOf(request, asked, cancellation),
                StripAnswerJson.Default.SpringbackStripsAnswer))
            .Describe(
                "learnSpringback",
                Tag,
                "The effective yield stress from strips pulled round a bar or over a form.",
                "Takes what was pulled round and what was left of the bend; answers the yield stress to plan with, what it does to the next form, and how many more strips a tolerance takes." + Always);
        routes.MapPost("/v1/test-strips/neutral-factor", (JsonBody<NeutralFactorStripsRequest> body) => Answer(
                body,
                (request, asked) => NeutralFactorStripsAnswer.From(NeutralStrips.Learn(request.ToQuestion()), asked),
                StripAnswerJson.Default.NeutralFactorStripsAnswer))
            .Describe(
                "learnNeutralFactor",
                Tag,
                "The neutral factor K from strips measured flat and folded.",
                "Takes flat length, both legs, fold angle and inside radius; answers K, weighed by what the reading errors do to it." + Always);
        routes.MapPost("/v1/test-strips/print-through", (JsonBody<PrintThroughStripsRequest> body, CancellationToken cancellation) => Answer(
                body,
                (request, asked) => PrintThroughStripsAnswer.From(PrintStrips.Learn(request.ToQuestion(), cancellation), asked),
                StripAnswerJson.Default.PrintThroughStripsAnswer))
            .Describe(
                "learnPrintThrough",
                Tag,
                "The ripple that may show, from strips judged by eye.",
                "Takes facet and radius, or stations, and the verdict; answers between which ripples the limit lies, by each strip's own simulated pull. "
                + "Paste `paste` unchanged into the next request of /v1/forms; it is null where no strip was smooth below one that shows. `next` is the most useful next strip.");
    }

    private static SpringbackStripsAnswer SpringbackOf(
        SpringbackStripsRequest request, NormalizedRequest asked, CancellationToken cancellation)
    {
        var question = request.ToQuestion();
        return SpringbackStripsAnswer.From(SpringbackStrips.Learn(question, cancellation), question.ReadingError, asked);
    }

    private static Results<AnswerResult<TAnswer>, ProblemResult> Answer<TRequest, TAnswer>(
        JsonBody<TRequest> body, Func<TRequest, NormalizedRequest, TAnswer> answer, JsonTypeInfo<TAnswer> type)
        where TRequest : class, IStripsRequest<TRequest> => body.Answer(given =>
    {
        var request = given.WithDefaults();
        var shown = NormalizedRequest.Of(request);
        return new AnswerResult<TAnswer>(answer(request, shown), type, shown.Fingerprint);
    });
}
