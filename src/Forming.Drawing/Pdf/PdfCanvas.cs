using Forming.Drawing.Sheets;
using Forming.Results;
using PdfSharp.Drawing;

namespace Forming.Drawing.Pdf;

/// <summary>Draws sheet items on a page.</summary>
/// <param name="graphics">The page, in points, y down.</param>
/// <param name="lineScale">Line widths over those of a sheet.</param>
internal sealed class PdfCanvas(XGraphics graphics, double lineScale)
{
    private const double PointsPerMm = 72 / 25.4;

    private readonly Dictionary<Pen, XPen> _pens = [];
    private readonly Dictionary<(double, bool), XFont> _fonts = [];

    /// <summary>Draws everything, in order.</summary>
    /// <param name="items">The items [mm].</param>
    public void Draw(IEnumerable<SheetItem> items)
    {
        foreach (var item in items)
        {
            switch (item)
            {
                case Label label:
                    Draw(label);
                    break;
                case Tiles tiles:
                    Draw(tiles);
                    break;
                case Stroke stroke:
                    Draw(stroke);
                    break;
                default:
                    // A view is for pictures on a screen.
                    break;
            }
        }
    }

    private static XPoint At(Point point) => new(Finite.Of(point.X) * PointsPerMm, Finite.Of(point.Y) * PointsPerMm);

    private void Draw(Stroke stroke)
    {
        var points = stroke.Points.Select(At).ToArray();
        if (stroke.Fill == Tone.Paper)
        {
            graphics.DrawPolygon(XBrushes.White, points, XFillMode.Alternate);
            return;
        }

        var pen = PenFor(stroke.Pen);
        if (stroke.IsClosed && stroke.Fill is not null)
            graphics.DrawPolygon(pen, XBrushes.Black, points, XFillMode.Alternate);
        else if (stroke.IsClosed)
            graphics.DrawPolygon(pen, points);
        else
            graphics.DrawLines(pen, points);
    }

    private void Draw(Tiles tiles)
    {
        Fill(XBrushes.White, tiles.Whole);
        foreach (var run in tiles.Runs)
            Fill(XBrushes.Black, tiles.Corners(run));
    }

    private void Fill(XBrush brush, (Point TopLeft, Point BottomRight) corners) =>
        graphics.DrawRectangle(brush, new XRect(At(corners.TopLeft), At(corners.BottomRight)));

    private void Draw(Label label)
    {
        var width = label.WidthMm;
        var shift = label.Anchor switch { Anchor.End => -width, Anchor.Middle => -width / 2, _ => 0 };
        var brush = label.Tone switch { Tone.Paper => XBrushes.White, Tone.Ghost => Ghost, _ => XBrushes.Black };
        if (label.TurnDegrees == 0)
        {
            graphics.DrawString(label.Text, FontFor(label), brush, At(label.At + new Point(shift, 0)));
            return;
        }

        var state = graphics.Save();
        graphics.RotateAtTransform(label.TurnDegrees, At(label.At));
        graphics.DrawString(label.Text, FontFor(label), brush, At(label.At + new Point(shift, 0)));
        graphics.Restore(state);
    }

    private static XBrush Ghost { get; } = new XSolidBrush(XColor.FromGrayScale(0.82));

    private XPen PenFor(Pen pen)
    {
        if (_pens.TryGetValue(pen, out var made))
            return made;
        var style = PenStyle.Of(pen);
        var width = Math.Max(PenStyle.LeastWidthMm, style.WidthMm * lineScale);
        made = new(XColors.Black, width * PointsPerMm) { LineJoin = XLineJoin.Round };
        if (style.Dash.Length > 0)
            made.DashPattern = [.. style.Dash.Select(part => part / width)]; // in line widths
        return _pens[pen] = made;
    }

    private XFont FontFor(Label label)
    {
        var key = (label.SizeMm, label.IsBold);
        if (!_fonts.TryGetValue(key, out var font))
            _fonts[key] = font = new(PdfFonts.Family, label.SizeMm * PointsPerMm, label.IsBold ? XFontStyleEx.Bold : XFontStyleEx.Regular);
        return font;
    }
}
