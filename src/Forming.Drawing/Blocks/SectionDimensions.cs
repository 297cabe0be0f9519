using Forming.Curves;
using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>The finished panel's dimensions in its section: radii, sweep and flats, as ISO 129-1 draws them.</summary>
/// <param name="sketch">What to draw in; the parts are there already.</param>
/// <param name="frame">Where the section is.</param>
/// <param name="job">The job.</param>
/// <param name="finished">The finished panel from the start of its curve.</param>
internal sealed class SectionDimensions(Sketch sketch, SectionFrame frame, DrawingJob job, Ribbon finished)
{
    /// <summary>A chain of more bends than this is named by its ends alone: a fitted curve has dozens.</summary>
    private const int MostBends = 4;

    private const double Extension = 1.2;
    private const double ArrowHead = 2.4;
    private static readonly double[] Shares = [0.7, 0.5, 0.85, 0.35, 0.2];
    private static readonly double[] Tails = [7, 11, 15];
    private static readonly double[] Lifts = [0.8, 2, 3.5];

    /// <summary>Draws them.</summary>
    /// <param name="pulled">The panel as pulled, whose lead-in lies on the bench.</param>
    public void Draw(Ribbon pulled)
    {
        var asked = PanelShape.Asked(job);
        Sweep(asked.Sweep);
        if (job.Plan.Taper is null)
        {
            LeadIn(pulled);
            LeadOut();
            Developed(asked.LengthMm);
        }

        Radii(asked);
    }

    /// <summary>The face that a curve was measured on, in words.</summary>
    /// <param name="job">The job.</param>
    public static string Face(DrawingJob job) => job.Panel.Surface switch { Surface.Outside => "outside", Surface.Mid => "mid surface", _ => "inside" };

    private void Radii(FinishedCurve asked)
    {
        BendSpan[] bends = [.. asked.Bends];
        if (job.Plan.Taper is not null)
        {
            Radius(0, asked.Sweep.Radians, $"R {Ends(job, bends)} {Face(job)}, near end");
            return;
        }

        if (bends.Length > MostBends)
        {
            Radius(0, asked.Sweep.Radians, $"R {Ends(job, bends)} {Face(job)}");
            return;
        }

        var turn = 0.0;
        foreach (var bend in bends)
        {
            Radius(turn, bend.Sweep.Radians, $"R {Ends(job, [bend])} {Face(job)}");
            turn += bend.Sweep.Radians;
        }
    }

    /// <summary>Radii of bends from first to last: <c>95</c>, or <c>80 to flat</c> where they change.</summary>
    /// <param name="job">The job.</param>
    /// <param name="bends">[n] the bends, n ≥ 1.</param>
    public static string Ends(DrawingJob job, IReadOnlyList<BendSpan> bends)
    {
        var (first, last) = (Named(bends[0].RatesAt(0).Curvature, bends[0]), Named(bends[^1].RatesAt(1).Curvature, bends[^1]));
        var tightest = job.Readout.Named(bends.Min(bend => bend.TightestRadiusMm - bend.OffsetMm));
        if (bends.Count > MostBends)
            return $"{first} to {last}, {tightest} at the tightest";
        return first == last ? first : $"{first} to {last}";

        string Named(double curvature, BendSpan bend) => curvature > 0 ? job.Readout.Named((1 / curvature) - bend.OffsetMm) : "flat";
    }

    // A leader from outside, its arrow on the finished panel.
    private void Radius(double from, double sweep, string text)
    {
        var places = Tails.SelectMany(tail => Shares.Select(share => Place(from + (share * sweep), tail))).ToArray();
        var (tip, end, label) = FreeRoom.Best(sketch, SectionBlock.LegendAt - 1, places, place => place.Label);
        sketch.Arrow(end, tip, ArrowHead);
        sketch.Write(label);

        (Point Tip, Point End, Label Label) Place(double turn, double tail)
        {
            var i = IndexAt(turn);
            Point at = frame.At(finished.Outer[i]), away = at - frame.At(finished.Inner[i]);
            var tailEnd = at + (tail / away.Length * away);
            var side = away.X >= 0 ? 1 : -1;
            var baseline = tailEnd + new Point(side * 0.8, away.Y > 0 ? 1.6 : 0.4);
            return (at, tailEnd, new(baseline, text, Page.Small, side > 0 ? Anchor.Start : Anchor.End, IsBold: true));
        }
    }

    private int IndexAt(double turn)
    {
        double heading = 0, before = 0;
        for (var i = 1; i + 1 < finished.Inner.Count; i++)
        {
            var chord = finished.Inner[i + 1] - finished.Inner[i];
            var along = Math.Atan2(chord.Y, chord.X);
            heading += Math.IEEERemainder(along - before, 2 * Math.PI);
            before = along;
            if (heading >= turn)
                return i;
        }

        return finished.Inner.Count - 2;
    }

    // Between the flats drawn on to where they meet; past a right-angled bend and a half that is far off, and the legend says it.
    private void Sweep(Angle sweep)
    {
        const double least = 0.25, most = 2.4, radius = 11;
        var text = Readout.NamedDegrees(sweep);
        var end = finished.Outer[^2];
        if (sweep.Radians is < least or > most || job.Plan.Taper is not null)
            return;
        var y = finished.Outer[0].Y;
        var meet = new Point(end.X - ((end.Y - y) / Math.Tan(sweep.Radians)), y);
        var at = frame.At(meet);
        sketch.Line(Pen.Leader, at - new Point(2, 0), at + new Point(radius + 2, 0));
        sketch.Line(Pen.Leader, at, frame.At(end));
        const int steps = 16;
        Point[] arc = [.. Enumerable.Range(0, steps + 1).Select(i => On(sweep.Radians * i / steps))];
        sketch.Line(Pen.Leader, arc);
        Head(arc[0], new(0, 1));
        Head(arc[^1], Turned(sweep.Radians + (Math.PI / 2)));
        var middle = On(sweep.Radians / 2) + (1.2 * Turned(sweep.Radians / 2));
        sketch.Write(new Label(middle + new Point(0, 0.9), text, Page.Small, IsBold: true));

        Point On(double turn) => at + (radius * Turned(turn));

        static Point Turned(double turn) => new(Math.Cos(turn), -Math.Sin(turn));
    }

    private void LeadIn(Ribbon pulled)
    {
        if (job.Panel.LeadInMm <= 0)
            return;
        Point from = frame.At(pulled.Outer[0]), to = frame.At(new(0, pulled.Outer[0].Y));
        Dimension(from, to, new(0, 6.5), $"lead-in {Flat(job.Panel.LeadInMm)}");
    }

    private void LeadOut()
    {
        if (PanelShape.LeadOut(job) <= 0)
            return;
        Point from = frame.At(finished.Outer[^2]), to = frame.At(finished.Outer[^1]), away = to - frame.At(finished.Inner[^1]);
        var text = $"lead-out {Flat(PanelShape.LeadOut(job))}{(job.Panel.Mirrored ? ", to the middle" : "")}";
        Dimension(from, to, 6 / away.Length * away, text);
    }

    // A line beside the curve between two extension lines, as long as the sheet that the bend takes.
    private void Developed(double lengthMm)
    {
        const double aside = 3.2;
        Point[] line = [.. Enumerable.Range(0, finished.Outer.Count - 1).Select(i => Beside(i, aside))];
        if (line.Length < 2)
            return;
        sketch.Line(Pen.Leader, Beside(0, Extension), Beside(0, aside + Extension));
        sketch.Line(Pen.Leader, Beside(line.Length - 1, Extension), Beside(line.Length - 1, aside + Extension));
        sketch.Line(Pen.Leader, line);
        Head(line[0], Along(line[1], line[0]));
        Head(line[^1], Along(line[^2], line[^1]));
        var text = $"developed {job.Readout.LaidOut(lengthMm)}";
        Label[] places = [.. Lifts.SelectMany(lift => Shares.Select(share => Place((int)(share * (line.Length - 1)), aside + lift)))];
        sketch.Write(FreeRoom.Best(sketch, SectionBlock.LegendAt - 1, places, place => place));

        Point Beside(int i, double mm)
        {
            Point at = frame.At(finished.Outer[i]), away = at - frame.At(finished.Inner[i]);
            return at + (mm / away.Length * away);
        }

        Label Place(int i, double mm)
        {
            Point at = Beside(i, mm), from = Beside(i, 0);
            var side = at.X >= from.X ? 1 : -1;
            var baseline = at + new Point(side * 0.6, at.Y > from.Y ? 1.6 : 0.4);
            return new(baseline, text, Page.Small, side > 0 ? Anchor.Start : Anchor.End, IsBold: true);
        }

        static Point Along(Point from, Point to) => 1 / (to - from).Length * (to - from);
    }

    private string Flat(double mm) => job.Readout.IsToTheTape ? job.Readout.LaidOut(mm) : job.Readout.Named(mm);

    // A line beside the part between two extension lines, the figure along it, read from below or from the right.
    private void Dimension(Point from, Point to, Point aside, string text)
    {
        var unit = 1 / aside.Length * aside;
        sketch.Line(Pen.Leader, from + (Extension * unit), from + aside + (Extension * unit));
        sketch.Line(Pen.Leader, to + (Extension * unit), to + aside + (Extension * unit));
        Point a = from + aside, b = to + aside, along = 1 / (b - a).Length * (b - a);
        sketch.Line(Pen.Leader, a, b);
        Head(a, -1 * along);
        Head(b, along);
        var reads = along.X < -1e-6 || (Math.Abs(along.X) <= 1e-6 && along.Y > 0) ? -1 * along : along;
        var turn = Math.Atan2(reads.Y, reads.X);
        // Above the line as it is read, or beyond it where the part is there.
        var above = new Point(reads.Y, -reads.X);
        var lift = above.Dot(unit) >= 0 ? 0.9 : 0.9 + (0.72 * Page.Small);
        var label = new Label(0.5 * (a + b), text, Page.Small, Anchor.Middle, IsBold: true, TurnDegrees: new Angle(turn).Degrees);
        // A figure longer than its line clears the ends of the extension lines.
        lift += label.WidthMm > (b - a).Length ? Extension : 0;
        sketch.Write(label with { At = label.At + (lift * unit) });
    }

    private void Head(Point tip, Point heading)
    {
        var neck = tip - (ArrowHead * heading);
        var half = 0.13 * ArrowHead * heading.Left();
        sketch.Polygon(Pen.Leader, [tip, neck + half, neck - half], Tone.Ink);
    }
}
