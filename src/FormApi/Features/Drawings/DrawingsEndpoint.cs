using FormApi.Features.Forms;
using FormApi.Http.Links;
using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Results;
using Forming;
using Forming.Drawing;
using Forming.Drawing.Csv;
using Forming.Drawing.Dxf;
using Forming.Drawing.Gltf;
using Forming.Drawing.Pdf;
using Forming.Drawing.Svg;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.Extensions.Options;

namespace FormApi.Features.Drawings;

/// <summary><c>POST /v1/forms/drawing</c>: the same request as a picture or a file, by <c>Accept</c>.</summary>
internal static class DrawingsEndpoint
{
    /// <summary>Adds the route.</summary>
    /// <param name="routes">Destination.</param>
    public static void MapDrawings(this IEndpointRouteBuilder routes) => routes.MapPost("/v1/forms/drawing", Draw)
        .Describe("drawForm", "Forms", "One form as a picture, a cutting file or a solid.")
        .WithDescription(
            "Takes the request of /v1/forms and answers by Accept: image/svg+xml is the sheet a person reads; application/pdf the same sheet and a 1:1 layout tiled over pages; "
            + "image/vnd.dxf the flat blanks for cutting; text/csv the stations; model/gltf-binary form and finished panel as solids in metres. "
            + "DXF and CSV refuse a form with a failed check, because a machine might read them; SVG and PDF draw it, plainly marked.");

    /// <summary>Draws a request.</summary>
    /// <param name="body">The body as it was read.</param>
    /// <param name="paper">Paper of a PDF, or null.</param>
    /// <param name="request">The request, whose Accept header chooses.</param>
    /// <param name="address">Where the service is reached, for the link on the sheet.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    internal static Results<DrawingResult, ProblemResult> Draw(
        JsonBody<FormRequest> body, string? paper, HttpRequest request, IOptions<PublicAddress> address, CancellationToken cancellation)
    {
        if (paper is not (null or "a4" or "letter"))
            return new ProblemResult(ProblemKinds.BadRequest, "The paper is not known: a4 or letter.");

        var media = DrawingResult.Offered.Choose(request)!;
        return body.Answer(asked =>
        {
            var job = PlannedJob.Of(asked, null, cancellation);
            return new DrawingResult(Bytes(job, media, paper, address.Value, cancellation), media, job.Shown.Fingerprint);
        });
    }

    private static byte[] Bytes(PlannedJob job, string media, string? paper, PublicAddress address, CancellationToken cancellation)
    {
        var isInch = job.Units.Unit == LengthUnit.In;
        var drawing = new DrawingJob(
            job.Plan,
            job.Specs.Job,
            job.Units.Unit,
            job.Given?.Title ?? "Faceted form",
            job.Shown.Fingerprint,
            job.Units.Wording.Of,
            media is MediaTypes.Svg or MediaTypes.Pdf ? address.OnPaper(AnswerLinks.Shortest(job.Shown.Canonical.Span, "drawing")) : null,
            job.Given);
        using var stream = new MemoryStream();
        switch (media)
        {
            case MediaTypes.Pdf:
                PdfSheet.Write(drawing, (paper ?? (isInch ? "letter" : "a4")) == "letter" ? PaperSize.Letter : PaperSize.A4, stream, cancellation);
                break;
            case MediaTypes.Dxf:
                DxfLayout.Write(drawing, stream);
                break;
            case MediaTypes.Csv:
                CsvStations.Write(drawing, stream);
                break;
            case MediaTypes.Glb:
                GltfSolids.Write(drawing, stream);
                break;
            default:
                SvgSheet.Write(drawing, stream);
                break;
        }

        return stream.ToArray();
    }
}
