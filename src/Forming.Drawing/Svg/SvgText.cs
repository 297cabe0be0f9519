using System.Globalization;
using System.Text;
using Forming.Drawing.Sheets;
using Forming.Results;

namespace Forming.Drawing.Svg;

/// <summary>SVG text, three decimals of a millimetre, lines of a kind together in one path.</summary>
internal sealed class SvgText
{
    private const double Margin = 5;

    private readonly StringBuilder _text = new(64 * 1024);

    /// <summary>Opens the picture.</summary>
    /// <param name="width">Width of what is drawn [mm].</param>
    /// <param name="height">Height of what is drawn [mm].</param>
    /// <param name="title">Its title.</param>
    /// <param name="description">What it shows.</param>
    /// <param name="style">How it is printed, in CSS; null where it is as large as it says, for print and for cutting.</param>
    public void Open(double width, double height, string title, string description, string? style)
    {
        var box = $"{-Margin} {-Margin} {Number(width + (2 * Margin))} {Number(height + (2 * Margin))}";
        _text.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"").Append(box)
            .Append(style is null
                ? $"\" width=\"{Number(width + (2 * Margin))}mm\" height=\"{Number(height + (2 * Margin))}mm\" style=\"background:#fff\""
                : "\" width=\"100%\" style=\"height:auto;max-width:1200px;background:#fff\"")
            .Append(" role=\"img\" aria-labelledby=\"t d\">\n<title id=\"t\">");
        Escape(title);
        _text.Append("</title>\n<desc id=\"d\">");
        Escape(description);
        _text.Append("</desc>\n");
        if (style is not null)
            _text.Append("<style>").Append(style).Append("</style>\n");
        _text.Append("<rect x=\"-5\" y=\"-5\" width=\"").Append(Number(width + (2 * Margin)))
            .Append("\" height=\"").Append(Number(height + (2 * Margin))).Append("\" fill=\"#fff\"/>\n")
            .Append("<g font-family=\"'Liberation Sans',Arial,Helvetica,sans-serif\" fill=\"#000\">\n");
    }

    /// <summary>Adds what is drawn: grey first, then fills and lines, then text.</summary>
    /// <param name="items">The items.</param>
    public void Add(IReadOnlyList<SheetItem> items)
    {
        foreach (var view in items.OfType<View>())
            Add(view);
        foreach (var label in items.OfType<Label>().Where(label => label.Tone == Tone.Ghost))
            Add(label);
        foreach (var fill in items.OfType<Stroke>().Where(stroke => stroke.Fill is not null))
            Path([fill], "fill=\"#000\"");
        foreach (var tiles in items.OfType<Tiles>())
            Add(tiles);
        foreach (var pen in items.OfType<Stroke>().GroupBy(stroke => stroke.Pen).OrderBy(group => group.Key))
            Path(pen, Attributes(PenStyle.Of(pen.Key)));
        foreach (var label in items.OfType<Label>().Where(label => label.Tone != Tone.Ghost))
            Add(label);
    }

    /// <summary>Closes the picture.</summary>
    public void Close() => _text.Append("</g>\n</svg>\n");

    /// <inheritdoc/>
    public override string ToString() => _text.ToString();

    private void Add(View view)
    {
        var size = view.BottomRight - view.TopLeft;
        _text.Append("<view id=\"").Append(view.Name).Append("\" viewBox=\"").Append(Number(view.TopLeft.X)).Append(' ')
            .Append(Number(view.TopLeft.Y)).Append(' ').Append(Number(size.X)).Append(' ').Append(Number(size.Y)).Append("\"/>\n");
    }

    private void Add(Tiles tiles)
    {
        _text.Append("<path fill=\"#fff\" d=\"");
        Append(tiles.Whole);
        _text.Append("\"/>\n<path fill=\"#000\" shape-rendering=\"crispEdges\" d=\"");
        foreach (var run in tiles.Runs)
            Append(tiles.Corners(run));
        _text.Append("\"/>\n");
    }

    private void Append((Point TopLeft, Point BottomRight) corners)
    {
        var (from, to) = corners;
        _text.Append('M');
        Append(from.X);
        _text.Append(',');
        Append(from.Y);
        _text.Append('H');
        Append(to.X);
        _text.Append('V');
        Append(to.Y);
        _text.Append('H');
        Append(from.X);
        _text.Append('Z');
    }

    private static string Attributes(PenStyle style)
    {
        var dash = style.Dash.Length == 0 ? "" : $" stroke-dasharray=\"{string.Join(' ', style.Dash.Select(Number))}\"";
        return $"fill=\"none\" stroke=\"#000\" stroke-width=\"{Number(style.WidthMm)}\" stroke-linejoin=\"round\"{dash}";
    }

    private void Path(IEnumerable<Stroke> strokes, string attributes)
    {
        _text.Append("<path ").Append(attributes).Append(" d=\"");
        foreach (var stroke in strokes)
        {
            for (var i = 0; i < stroke.Points.Count; i++)
            {
                _text.Append(i == 0 ? 'M' : i == 1 ? 'L' : ' ');
                Append(stroke.Points[i].X);
                _text.Append(',');
                Append(stroke.Points[i].Y);
            }

            if (stroke.IsClosed)
                _text.Append('Z');
        }

        _text.Append("\"/>\n");
    }

    private void Add(Label label)
    {
        _text.Append("<text x=\"");
        Append(label.At.X);
        _text.Append("\" y=\"");
        Append(label.At.Y);
        _text.Append("\" font-size=\"");
        Append(label.SizeMm);
        _text.Append('"');
        if (label.Anchor != Anchor.Start)
            _text.Append(label.Anchor == Anchor.End ? " text-anchor=\"end\"" : " text-anchor=\"middle\"");
        if (label.IsBold)
            _text.Append(" font-weight=\"bold\"");
        if (label.Tone != Tone.Ink)
            _text.Append(label.Tone == Tone.Paper ? " fill=\"#fff\"" : " fill=\"#d0d0d0\"");
        if (label.TurnDegrees != 0)
        {
            _text.Append(" transform=\"rotate(").Append(Number(label.TurnDegrees)).Append(' ')
                .Append(Number(label.At.X)).Append(' ').Append(Number(label.At.Y)).Append(")\"");
        }

        if (label.Station is { } station)
            _text.Append(" data-station=\"").Append(station.ToString(CultureInfo.InvariantCulture)).Append('"');
        _text.Append('>');
        Escape(label.Text);
        _text.Append("</text>\n");
    }

    private void Append(double value)
    {
        Span<char> digits = stackalloc char[32];
        (Math.Round(Finite.Of(value), 3) + 0.0).TryFormat(digits, out var written, "0.###", CultureInfo.InvariantCulture);
        _text.Append(digits[..written]);
    }

    private static string Number(double value) => (Math.Round(Finite.Of(value), 3) + 0.0).ToString("0.###", CultureInfo.InvariantCulture);

    // XML text: markup escaped, characters that XML 1.0 forbids left out.
    private void Escape(string text)
    {
        foreach (var rune in text.EnumerateRunes())
        {
            switch (rune.Value)
            {
                case '<': _text.Append("&lt;"); break;
                case '>': _text.Append("&gt;"); break;
                case '&': _text.Append("&amp;"); break;
                case < 0x20 or 0xFFFE or 0xFFFF: _text.Append(' '); break;
                default: _text.Append(rune.ToString()); break;
            }
        }
    }
}
