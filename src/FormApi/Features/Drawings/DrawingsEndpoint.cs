using FormApi.Features.Forms;
using FormApi.Http;
using Forming.Drawing;

namespace FormApi.Features.Drawings;

/// <summary><c>POST /v1/forms/drawing</c>: the same request as a picture or a file, by <c>Accept</c>.</summary>
internal static class DrawingsEndpoint
{
    private const string Svg = "image/svg+xml";
    private const string Pdf = "application/pdf";
    private const string Dxf = "image/vnd.dxf";
    private const string Csv = "text/csv";
    private const string Glb = "model/gltf-binary";

    private static readonly MediaTypes Offered = new(Svg, Pdf, Dxf, Csv, Glb);

    /// <summary>Adds the route.</summary>
    /// <param name="routes">Where to.</param>
    public static void MapDrawings(this IEndpointRouteBuilder routes) => routes.MapPost("/v1/forms/drawing", Draw)
        .WithMetadata(Offered)
        .DescribeFile<FormRequest>(
            "drawForm",
            "Forms",
            "One form as a picture, a cutting file or a solid.",
            "Takes the request of /v1/forms and answers by Accept: image/svg+xml is the sheet a person reads; application/pdf the same sheet and a 1:1 layout tiled over pages; "
            + "image/vnd.dxf the flat blanks for cutting; text/csv the stations; model/gltf-binary form and finished panel as solids in metres. "
            + "DXF and CSV refuse a form with a failed check, because a machine might read them; SVG and PDF draw it, plainly marked.",
            Svg,
            Pdf,
            Dxf,
            Csv,
            Glb);

    private static IResult Draw(JsonBody<FormRequest> body, string? paper, HttpRequest request, CancellationToken cancellation)
    {
        if (paper is not (null or "a4" or "letter"))
            return new ProblemResult(Problems.BadRequest, "The paper is not known: a4 or letter.");

        var media = Offered.Choose(request)!;
        return body.Answer(asked =>
        {
            var job = PlannedJob.Of(asked, cancellation);
            return new FileResult(Bytes(job, media, paper), media, ShortName(media), job.Shown.Fingerprint);
        });
    }

    private static byte[] Bytes(PlannedJob job, string media, string? paper)
    {
        var isInch = job.Units.Unit == LengthUnit.In;
        var drawing = new DrawingJob(
            job.Plan,
            job.Specs.Panel,
            job.Specs.Form,
            job.Specs.Brake,
            job.Specs.Marks,
            isInch ? LengthUnits.Inch : LengthUnits.Millimetre,
            "Faceted form",
            job.Shown.Fingerprint,
            job.Units.Wording.Of);
        using var stream = new MemoryStream();
        switch (media)
        {
            case Pdf:
                PdfSheet.Write(drawing, (paper ?? (isInch ? "letter" : "a4")) == "letter" ? PaperSize.Letter : PaperSize.A4, stream);
                break;
            case Dxf:
                DxfLayout.Write(drawing, stream);
                break;
            case Csv:
                CsvStations.Write(drawing, stream);
                break;
            case Glb:
                GltfSolids.Write(drawing, stream);
                break;
            default:
                SvgSheet.Write(drawing, stream);
                break;
        }

        return stream.ToArray();
    }

    private static string ShortName(string media) => media switch
    {
        Pdf => "pdf",
        Dxf => "dxf",
        Csv => "csv",
        Glb => "glb",
        _ => "svg",
    };
}
