using FormApi.Features.Drawings;
using FormApi.Features.Forms;
using FormApi.Features.Programs;
using FormApi.Http;
using FormApi.Http.Links;
using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Options;

namespace FormApi.Features.Links;

/// <summary><c>GET /v1/links/{request}/…</c>: the same answers from a link that holds the whole request.</summary>
internal static class LinksEndpoint
{
    private const string Tag = "Links";

    private const string Always =
        " The link is the JSON of the request, deflated (RFC 1951), in base64url without padding (RFC 4648), 4096 characters at most. "
        + "A caller who sends the answer's entity tag as If-None-Match is answered 304 as long as the engine is the same.";

    private static readonly int[] Faults = [413, 414, 422];

    /// <summary>Adds the routes.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapLinks(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/v1/links/{request}/form", OpenForm)
            .Describe("openFormLink", Tag, "The form that a link holds.")
            .Refuses(Faults)
            .WithDescription("The answer of POST /v1/forms, byte for byte." + Always);
        routes.MapGet("/v1/links/{request}/drawing", OpenDrawing)
            .Describe("openDrawingLink", Tag, "The form that a link holds, as a picture, a cutting file or a solid.")
            .Refuses(Faults)
            .WithDescription("The answer of POST /v1/forms/drawing, byte for byte." + Always);
        routes.MapGet("/v1/links/{request}/program", OpenProgram)
            .Describe("openProgramLink", Tag, "The brake's steps for the form that a link holds.")
            .Refuses(Faults)
            .WithDescription("The answer of POST /v1/programs, byte for byte; by Accept as CSV, SVG or PDF too. "
                + "With step, that step alone, with its picture." + Always);
    }

    private static Results<AnswerResult<FormAnswer>, UnchangedResult, ProblemResult> OpenForm(
        string request, HttpContext context, IOptions<Limits> limits, CancellationToken cancellation) => LinkedAnswer.Of(
        context,
        request,
        limits.Value.LinkBytes,
        MediaTypes.Json,
        json => FormsEndpoint.Compute(JsonBody<FormRequest>.Of(json), Preference.IsMinimal(context), cancellation));

    private static Results<DrawingResult, UnchangedResult, ProblemResult> OpenDrawing(
        string request,
        string? paper,
        string? part,
        string? layout,
        HttpContext context,
        IOptions<Limits> limits,
        IOptions<PublicAddress> address,
        CancellationToken cancellation) => LinkedAnswer.Of(
        context,
        request,
        limits.Value.LinkBytes,
        DrawingResult.Offered.Choose(context.Request)!,
        json => DrawingsEndpoint.Draw(JsonBody<FormRequest>.Of(json), paper, part, layout, context.Request, address, cancellation));

    private static Results<Results<AnswerResult<ProgramAnswer>, ProgramFileResult>, UnchangedResult, ProblemResult> OpenProgram(
        string request,
        string? paper,
        int? step,
        HttpContext context,
        IOptions<Limits> limits,
        IOptions<PublicAddress> address,
        CancellationToken cancellation) => LinkedAnswer.Of(
        context,
        request,
        limits.Value.LinkBytes,
        ProgramFileResult.Offered.Choose(context.Request)!,
        json => ProgramsEndpoint.Show(JsonBody<ProgramRequest>.Of(json), paper, step, context.Request, address, cancellation));
}
