using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>A strip under the pull and let go, with what is measured on it; not of any one job.</summary>
internal static class StripPicture
{
    private const double Height = 46;

    private const double Bar = 14;

    private const double PulledSweep = 1.75;

    private const double Finished = 24;

    private const double FinishedSweep = 1.4;

    /// <summary>Draws both.</summary>
    public static Block Of()
    {
        var sketch = new Sketch();
        Pulled(sketch, new(36, 24));
        Released(sketch, new(108, 34));
        return new(Height, sketch.Items, GapMm: 3);
    }

    private static void Pulled(Sketch sketch, Point centre)
    {
        sketch.Polygon(Pen.Phantom, [.. Arc(centre, Bar, 0, 2 * Math.PI, 48)]);
        var strip = Arc(centre, Bar + 1, -PulledSweep / 2, PulledSweep / 2, 24);
        var (clamped, hand) = (Tangent(centre, Bar + 1, -PulledSweep / 2, -14), Tangent(centre, Bar + 1, PulledSweep / 2, 16));
        sketch.Line(Pen.Outline, [clamped, .. strip, hand]);
        sketch.Rectangle(Pen.Leader, clamped + new Point(-3, -2), clamped + new Point(1, 2), Tone.Ink);
        var down = Tangent(centre, Bar + 1, PulledSweep / 2, 0);
        var square = (1 / (hand - down).Length) * (hand - down).Left();
        var push = square.Dot(centre - hand) > 0 ? square : -1 * square;
        sketch.Arrow(hand - (9 * push), hand);
        sketch.Write(centre.X, centre.Y + 1, "bar radius", Page.Small, Anchor.Middle);
        sketch.Write(clamped.X - 1, clamped.Y + 5.5, "clamp", Page.Small, Anchor.Middle);
        sketch.Write(hand.X + 3, hand.Y + 1, "pull", Page.Small);
        sketch.Write(centre.X, Height - 1, "under the pull", Page.Small, Anchor.Middle, isBold: true);
    }

    private static void Released(Sketch sketch, Point centre)
    {
        var inside = Arc(centre, Finished, -FinishedSweep / 2, FinishedSweep / 2, 24);
        Point left = Tangent(centre, Finished, -FinishedSweep / 2, -14), right = Tangent(centre, Finished, FinishedSweep / 2, 14);
        sketch.Line(Pen.Outline, [left, .. inside, right]);
        // Chord and rise, on the inside face.
        var (from, to) = (inside[2], inside[^3]);
        var middle = 0.5 * (from + to);
        sketch.Line(Pen.Fold, from, to);
        sketch.Line(Pen.Leader, middle, centre + new Point(0, -Finished));
        sketch.Write(middle.X + 1.2, middle.Y - 1, "h", Page.Text, isBold: true);
        sketch.Write(middle.X - 3.6, middle.Y - 1, "c", Page.Text, isBold: true);
        sketch.Write(middle.X, middle.Y + 4.5, "inside face", Page.Small, Anchor.Middle);
        // How far the right end turns from the left one.
        var corner = inside[^1];
        var ahead = Tangent(centre, Finished, -FinishedSweep / 2, -1) - Tangent(centre, Finished, -FinishedSweep / 2, -2);
        sketch.Line(Pen.Phantom, right, right + (12 * (1 / (right - corner).Length) * (right - corner)));
        sketch.Line(Pen.Phantom, right, right + (12 * (1 / ahead.Length) * ahead));
        sketch.Write(right.X + 7, right.Y - 1, "sweep", Page.Small);
        sketch.Write(left.X - 1.5, left.Y, "thickness", Page.Small, Anchor.End);
        sketch.Write(centre.X, Height - 1, "let go", Page.Small, Anchor.Middle, isBold: true);
    }

    // Angles from straight up, clockwise; y runs down.
    private static Point[] Arc(Point centre, double radius, double from, double to, int steps) =>
        [.. Enumerable.Range(0, steps + 1).Select(i => At(centre, radius, from + ((to - from) * i / steps)))];

    private static Point At(Point centre, double radius, double angle) =>
        centre + (radius * new Point(Math.Sin(angle), -Math.Cos(angle)));

    // A place on the tangent, ahead clockwise.
    private static Point Tangent(Point centre, double radius, double angle, double ahead) =>
        At(centre, radius, angle) + (ahead * new Point(Math.Cos(angle), Math.Sin(angle)));
}
