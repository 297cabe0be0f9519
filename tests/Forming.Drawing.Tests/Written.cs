using System.Text;
using Forming.Drawing.Csv;
using Forming.Drawing.Dxf;
using Forming.Drawing.Gltf;
using Forming.Drawing.Pdf;
using Forming.Drawing.Svg;

namespace Forming.Drawing.Tests;

/// <summary>What the writers write, as bytes and as text.</summary>
internal static class Written
{
    public static byte[] Bytes(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return stream.ToArray();
    }

    public static string Text(Action<Stream> write) => Encoding.UTF8.GetString(Bytes(write));

    public static string Svg(DrawingJob job) => Text(stream => SvgSheet.Write(job, stream));

    public static byte[] Pdf(DrawingJob job, PaperSize paper = PaperSize.A4, BlankLayout? layout = null) => Bytes(stream => PdfSheet.Write(job, paper, layout, stream));

    public static string Dxf(DrawingJob job) => Text(stream => DxfLayout.Write(job, stream));

    public static string Dxf(DrawingJob job, DrawingPart part) => Text(stream => DxfLayout.Write(job, part, stream));

    public static string Svg(DrawingJob job, DrawingPart part) => Text(stream => SvgPart.Write(job, part, stream));

    public static byte[] Pdf(DrawingJob job, DrawingPart part, PaperSize paper = PaperSize.A4, BlankLayout? layout = null) =>
        Bytes(stream => PdfPart.Write(job, part, paper, layout, stream));

    public static string Csv(DrawingJob job) => Text(stream => CsvStations.Write(job, stream));

    public static byte[] Glb(DrawingJob job) => Bytes(stream => GltfSolids.Write(job, stream));
}
