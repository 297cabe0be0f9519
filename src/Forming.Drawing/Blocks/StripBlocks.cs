using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>One picture of a strip with the words below it.</summary>
/// <param name="Heading">What is done.</param>
/// <param name="Lines">How.</param>
/// <param name="Picture">The brake with the part in it.</param>
internal sealed record StripFrame(string Heading, IReadOnlyList<string> Lines, BrakePicture Picture);

/// <summary>A strip of small sections, one for every handling of the part.</summary>
internal static class StripBlocks
{
    private const double Gap = 6;
    private const double FrameWidth = (Page.Width - Gap) / 2;
    private const double FrameHeight = 50;

    /// <summary>Draws the strip two frames a row, each row a block of its own so that pages may break between them.</summary>
    /// <param name="heading">Heading of the strip.</param>
    /// <param name="about">What the pictures show.</param>
    /// <param name="frames">The frames.</param>
    public static IEnumerable<Block> Of(string heading, string about, IReadOnlyList<StripFrame> frames)
    {
        for (var first = 0; first < frames.Count; first += 2)
        {
            var sketch = new Sketch();
            var top = 0.0;
            if (first == 0)
            {
                sketch.Write(0, Page.Heading, heading, Page.Heading, isBold: true);
                top = Page.Heading;
                foreach (var line in Paragraph.Lines(about, Page.Width, Page.Small))
                    sketch.Write(0, top += Page.SmallLine, line, Page.Small);
                top += 2;
            }

            var bottom = top;
            for (var i = first; i < Math.Min(first + 2, frames.Count); i++)
                bottom = Math.Max(bottom, Frame(sketch, frames[i], (i - first) * (FrameWidth + Gap), top));
            yield return new(bottom, sketch.Items);
        }
    }

    private static double Frame(Sketch sketch, StripFrame frame, double x, double top)
    {
        frame.Picture.Draw(sketch, new(x, top), FrameWidth, FrameHeight);
        var y = top + FrameHeight + 0.6;
        foreach (var line in Paragraph.Lines(frame.Heading, FrameWidth, Page.Text, isBold: true))
            sketch.Write(x, y += Page.Row, line, Page.Text, isBold: true);
        foreach (var line in frame.Lines.SelectMany(text => Paragraph.Lines(text, FrameWidth, Page.Small)))
            sketch.Write(x, y += Page.SmallLine, line, Page.Small);
        return y + 1;
    }
}
