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
            "Takes the request of /v1/forms and answers by Accept: image/svg+xml is the sheet a person reads; application/pdf the same sheet and a 1:1 story stick; "
            + "image/vnd.dxf the flat blanks for cutting, seen from the face that may be marked; text/csv the stations; model/gltf-binary form and finished panel as solids in metres. "
            + "With part, one part alone at 1:1, to cut or to mark by; a part that the job does not have is a problem. "
            + "DXF and CSV refuse a form with a failed check, because a machine might read them; SVG and PDF draw it, plainly marked.");

    /// <summary>Draws a request.</summary>
    /// <param name="body">The body as it was read.</param>
    /// <param name="paper">Paper of a PDF, or null.</param>
    /// <param name="part">The only part, or null.</param>
    /// <param name="layout">How much of a blank a PDF lays out, or null.</param>
    /// <param name="request">The request, whose Accept header chooses.</param>
    /// <param name="address">Where the service is reached, for the link on the sheet.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    internal static Results<DrawingResult, ProblemResult> Draw(
        JsonBody<FormRequest> body,
        string? paper,
        string? part,
        string? layout,
        HttpRequest request,
        IOptions<PublicAddress> address,
        CancellationToken cancellation)
    {
        var media = DrawingResult.Offered.Choose(request)!;
        if (DrawingQuery.Read(paper, part, layout, media, out var query) is { } wrong)
            return wrong;

        return body.Answer(asked =>
        {
            var job = PlannedJob.Of(asked, null, cancellation);
            return new DrawingResult(Bytes(job, media, query!, address.Value, cancellation), media, job.Shown.Fingerprint, part ?? "form");
        });
    }

    private static byte[] Bytes(PlannedJob job, string media, DrawingQuery query, PublicAddress address, CancellationToken cancellation)
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
        var paper = query.Paper ?? (isInch ? PaperSize.Letter : PaperSize.A4);
        switch (media, query.Part)
        {
            case (MediaTypes.Pdf, { } part):
                PdfPart.Write(drawing, part, paper, query.Layout, stream, cancellation);
                break;
            case (MediaTypes.Pdf, _):
                PdfSheet.Write(drawing, paper, query.Layout, stream, cancellation);
                break;
            case (MediaTypes.Dxf, { } part):
                DxfLayout.Write(drawing, part, stream);
                break;
            case (MediaTypes.Dxf, _):
                DxfLayout.Write(drawing, stream);
                break;
            case (MediaTypes.Csv, _):
                CsvStations.Write(drawing, stream);
                break;
            case (MediaTypes.Glb, _):
                GltfSolids.Write(drawing, stream);
                break;
            case (_, { } part):
                SvgPart.Write(drawing, part, stream);
                break;
            default:
                SvgSheet.Write(drawing, stream);
                break;
        }

        return stream.ToArray();
    }
}
