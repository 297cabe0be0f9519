using FormApi.Contract;
using FormApi.Http;
using Forming.Drawing;

namespace FormApi.Features.Programs;

/// <summary><c>POST /v1/programs</c>: the steps by which a brake folds a form, proved clear.</summary>
internal static class ProgramsEndpoint
{
    private const string Json = "application/json";
    private const string Csv = "text/csv";
    private const string Svg = "image/svg+xml";
    private const string Pdf = "application/pdf";

    private static readonly MediaTypes Offered = new(Json, Csv, Svg, Pdf);

    /// <summary>Adds the route.</summary>
    /// <param name="routes">Where to.</param>
    public static void MapPrograms(this IEndpointRouteBuilder routes) => routes.MapPost("/v1/programs", Answer)
        .DescribeComputation<ProgramRequest, ProgramAnswer>(
            "programBrake",
            "Programs",
            "The steps by which a leaf brake or a press brake folds a form.",
            "Takes the request of /v1/forms with the brake's tools, or with stations a form whose folds are known already, and answers the steps in order: "
            + "handling, gauge, stop, load and clearance of each, with the part followed through its whole swing. "
            + "By Accept: application/json; text/csv, a line for every step; image/svg+xml or application/pdf, the sheet with a small section for every handling. "
            + "A form with a failed check, and a form that these tools cannot fold, is refused in every media type with 422: a machine never receives one. "
            + "Every fold at fault is named with why, whether that is proved, and what would do. A taper is refused, because its folds are not parallel. "
            + "Outlines, handling costs and limits that the request leaves out are generic assumptions: nothing was measured on a brake.")
        .WithMetadata(Offered)
        .WithMetadata(new FilesToo(Csv, Svg, Pdf));

    private static IResult Answer(JsonBody<ProgramRequest> body, string? paper, HttpRequest request, CancellationToken cancellation)
    {
        if (paper is not (null or "a4" or "letter"))
            return new ProblemResult(Problems.BadRequest, "The paper is not known: a4 or letter.");

        var media = Offered.Choose(request)!;
        return ProgrammedJob.Answer(
            body,
            job => media == Json
                ? new AnswerResult<ProgramAnswer>(ProgramAnswers.From(job), AnswerJson.Default.ProgramAnswer, job.Shown.Fingerprint)
                : new FileResult(Bytes(job, media, paper), media, media switch { Csv => "csv", Pdf => "pdf", _ => "svg" }, job.Shown.Fingerprint, "program"),
            cancellation);
    }

    private static byte[] Bytes(ProgrammedJob job, string media, string? paper)
    {
        var isInch = job.Units.Unit == LengthUnit.In;
        var drawing = job.AsDrawing();
        using var stream = new MemoryStream();
        switch (media)
        {
            case Csv:
                CsvProgram.Write(drawing, stream);
                break;
            case Pdf:
                ProgramPdfSheet.Write(drawing, (paper ?? (isInch ? "letter" : "a4")) == "letter" ? PaperSize.Letter : PaperSize.A4, stream);
                break;
            default:
                ProgramSvgSheet.Write(drawing, stream);
                break;
        }

        return stream.ToArray();
    }
}
