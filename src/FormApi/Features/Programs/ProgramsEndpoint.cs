using FormApi.Http.Links;
using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Results;
using Forming;
using Forming.Drawing;
using Forming.Drawing.Csv;
using Forming.Drawing.Pdf;
using Forming.Drawing.Svg;
using Forming.Programs;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Options;

namespace FormApi.Features.Programs;

/// <summary><c>POST /v1/programs</c>: the steps by which a brake folds a form, proved clear.</summary>
internal static class ProgramsEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapPrograms(this IEndpointRouteBuilder routes) => routes.MapPost("/v1/programs", Answer)
        .Describe(
            "programBrake",
            "Programs",
            "The steps by which a leaf brake or a press brake folds a form.",
            "Takes the request of /v1/forms with the brake's tools, or the stations of a form that is known already, and answers the steps in order: "
            + "handling, gauge, stop, load and clearance of each, the part followed through its whole swing. "
            + "By Accept: application/json; text/csv, a line for every step; image/svg+xml or application/pdf, the sheet with a small section for every handling. "
            + "A form with a failed check, or that these tools cannot fold, is refused in every media type with 422: a machine never receives one. "
            + "Every fold at fault is named with why, whether that is proved, and what would help. "
            + "The fold lines of a taper are not parallel: two marks set each, the part is swung between them, and clearances are proved from end to end of the fold. "
            + "Entry and removal are checked against all tools, slides against the upper ones. "
            + "Outlines, handling costs and limits left out are generic assumptions: nothing was measured on a brake.");

    /// <summary>Answers a request.</summary>
    /// <param name="body">The body as it was read.</param>
    /// <param name="paper">Paper of a PDF, or null.</param>
    /// <param name="request">The request, whose Accept header chooses.</param>
    /// <param name="address">Where the service is reached, for the link on the sheet.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    internal static Results<Results<AnswerResult<ProgramAnswer>, ProgramFileResult>, ProblemResult> Answer(
        JsonBody<ProgramRequest> body,
        string? paper,
        HttpRequest request,
        IOptions<PublicAddress> address,
        CancellationToken cancellation) =>
        Show(body, paper, null, request, address, cancellation);

    /// <summary>Answers a request with all steps, or with one.</summary>
    /// <param name="body">The body as it was read.</param>
    /// <param name="paper">Paper of a PDF, or null.</param>
    /// <param name="step">Number of the step, or null for all.</param>
    /// <param name="request">The request, whose Accept header chooses.</param>
    /// <param name="address">Where the service is reached, for the link on the sheet.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    internal static Results<Results<AnswerResult<ProgramAnswer>, ProgramFileResult>, ProblemResult> Show(
        JsonBody<ProgramRequest> body,
        string? paper,
        int? step,
        HttpRequest request,
        IOptions<PublicAddress> address,
        CancellationToken cancellation)
    {
        if (paper is not (null or "a4" or "letter"))
            return new ProblemResult(ProblemKinds.BadRequest, "The paper is not known: a4 or letter.");

        var media = ProgramFileResult.Offered.Choose(request)!;
        ProblemResult? noStep = null;
        var answer = ProgrammedJob.Answer<Results<AnswerResult<ProgramAnswer>, ProgramFileResult>>(
            body,
            job =>
            {
                var only = step is null ? null : job.Program.Steps.FirstOrDefault(candidate => candidate.Number == step);
                noStep = step is not null && only is null
                    ? new(ProblemKinds.NotFound, $"The program has the steps 1 to {job.Program.Steps.Count}.")
                    : null;
                return media == MediaTypes.Json
                    ? ToAnswer(job, only)
                    : new ProgramFileResult(Bytes(job, only, media, paper, address.Value, cancellation), media, job.Shown.Fingerprint);
            },
            cancellation);
        return noStep is null ? answer : noStep;
    }

    /// <summary>Answers a request as JSON.</summary>
    /// <param name="body">The body as it was read.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    internal static Results<AnswerResult<ProgramAnswer>, ProblemResult> Compute(
        JsonBody<ProgramRequest> body, CancellationToken cancellation) =>
        ProgrammedJob.Answer(body, job => ToAnswer(job), cancellation);

    private static AnswerResult<ProgramAnswer> ToAnswer(ProgrammedJob job, ProgramStep? only = null) =>
        new(ProgramAnswer.From(job, only), ProgramAnswerJson.Default.ProgramAnswer, job.Shown.Fingerprint);

    private static byte[] Bytes(
        ProgrammedJob job, ProgramStep? only, string media, string? paper, PublicAddress address, CancellationToken cancellation)
    {
        var isInch = job.Units.Unit == LengthUnit.In;
        var link = media == MediaTypes.Csv ? null : address.OnPaper(AnswerLinks.Shortest(job.Shown.Canonical.Span, "program"));
        var drawing = job.AsDrawing(link, only);
        using var stream = new MemoryStream();
        switch (media)
        {
            case MediaTypes.Csv:
                CsvProgram.Write(drawing, stream);
                break;
            case MediaTypes.Pdf:
                ProgramPdfSheet.Write(drawing, (paper ?? (isInch ? "letter" : "a4")) == "letter" ? PaperSize.Letter : PaperSize.A4, stream, cancellation);
                break;
            default:
                ProgramSvgSheet.Write(drawing, stream);
                break;
        }

        return stream.ToArray();
    }
}
