using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>A small section of the brake with the part in it, in the brake's own frame: x towards the operator, y up.</summary>
/// <param name="Part">The part.</param>
/// <param name="Jaws">Outlines of everything that may meet it: beam, bed and leaf, or punch, ram and die.</param>
/// <param name="Gauge">Where the gauge's stop touches the part, at the foot of its face; null where the part lies to a pencil mark.</param>
/// <param name="StopHeightMm">Height of that face [mm].</param>
/// <param name="IsCut">Whether the part is cut short behind, in front.</param>
internal sealed record BrakePicture(
    Ribbon Part, IReadOnlyList<IReadOnlyList<Point>> Jaws, Point? Gauge, double StopHeightMm, (bool Behind, bool InFront) IsCut)
{
    /// <summary>Room round the part, so that the jaws that hold it are seen [mm on the sheet].</summary>
    private const double Margin = 5;

    private const double HatchPitch = 1.5;

    /// <summary>What must be seen of the jaws about the fold, as a share of the part's size.</summary>
    private const double AboutFold = 0.12;

    /// <summary>Draws it in a frame.</summary>
    /// <param name="sketch">What to draw in.</param>
    /// <param name="topLeft">Upper left corner of the frame [mm].</param>
    /// <param name="width">Its width [mm].</param>
    /// <param name="height">Its height [mm].</param>
    /// <returns>The scale, sheet over brake.</returns>
    public double Draw(Sketch sketch, Point topLeft, double width, double height)
    {
        var points = Part.Outline.Append(Point.Origin).ToList();
        if (Gauge is { } stop)
            points.Add(stop + new Point(0, StopHeightMm));
        double left = points.Min(p => p.X), right = points.Max(p => p.X), low = points.Min(p => p.Y), high = points.Max(p => p.Y);
        var about = AboutFold * Math.Max(right - left, high - low);
        (left, right, low, high) = (Math.Min(left, -about), Math.Max(right, about), Math.Min(low, -about), Math.Max(high, about));
        var scale = Math.Min((width - (2 * Margin)) / (right - left), (height - (2 * Margin)) / (high - low));
        var origin = topLeft + (0.5 * new Point(width - (scale * (left + right)), height + (scale * (low + high))));
        var frame = new SectionFrame(origin, scale, topLeft.Y + height);
        Point least = topLeft, most = topLeft + new Point(width, height);
        foreach (var jaw in Jaws)
            Jaw(sketch, [.. jaw.Select(frame.At)], least, most);
        sketch.Polygon(Pen.Leader, [.. Part.Outline.Select(frame.At)], Tone.Ink);
        if (IsCut.Behind)
            SectionPicture.Break(sketch, frame, Part.Inner[0], Part.Outer[0]);
        if (IsCut.InFront)
            SectionPicture.Break(sketch, frame, Part.Inner[^1], Part.Outer[^1]);
        if (Gauge is { } at)
            Stop(sketch, frame, at, least, most);
        sketch.Rectangle(Pen.Leader, least, most);
        return scale;
    }

    private static void Jaw(Sketch sketch, IReadOnlyList<Point> outline, Point least, Point most)
    {
        for (var i = 0; i < outline.Count; i++)
        {
            if (Clip.Inside(new(outline[i], outline[(i + 1) % outline.Count]), least, most) is { } edge)
                sketch.Line(Pen.Sheet, edge.Start, edge.End);
        }

        foreach (var line in Hatch.Of(outline, HatchPitch, least, most))
            sketch.Line(Pen.Leader, line.Start, line.End);
    }

    // An open face with a foot behind it: the gauge's stop, as high as its face.
    private void Stop(Sketch sketch, SectionFrame frame, Point at, Point least, Point most)
    {
        var foot = frame.At(at);
        var top = frame.At(at + new Point(0, StopHeightMm));
        var back = new Point(Math.Max(1.6, 0.35 * (foot.Y - top.Y)), 0);
        Point[] face = [top, foot, foot - back];
        for (var i = 1; i < face.Length; i++)
        {
            if (Clip.Inside(new(face[i - 1], face[i]), least, most) is { } edge)
                sketch.Line(Pen.Outline, edge.Start, edge.End);
        }

        if (Clip.Inside(new(top, foot - back), least, most) is { } brace)
            sketch.Line(Pen.Leader, brace.Start, brace.End);
    }
}
