using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>What a section shows, in its own frame.</summary>
internal sealed class SectionPicture
{
    private const double ArrowMm = 8;

    private readonly DrawingJob _job;
    private readonly Flat _formIn;
    private readonly Flat _formOut;
    private readonly Flat _panelIn;
    private readonly Flat _panelOut;
    private readonly Ribbon _form;
    private readonly Ribbon _pulled;
    private readonly Ribbon _finished;

    private SectionPicture(DrawingJob job, double mostFlat)
    {
        _job = job;
        var profile = job.Plan.Form.Section.InsideProfile;
        _formIn = Flat.Of(profile[1].X - profile[0].X, mostFlat);
        _formOut = Flat.Of((profile[^1] - profile[^2]).Length, mostFlat);
        // The panel shows at least as much as the form, or the cut would suggest that it is shorter.
        _panelIn = Flat.Of(job.Panel.LeadInMm, Math.Max(mostFlat, _formIn.ShownMm) * 1.15);
        _panelOut = Flat.Of(job.Panel.Mirrored ? job.Panel.LeadOutMm / 2 : job.Panel.LeadOutMm, mostFlat * 1.15);
        _form = FormShape.Of(job, _formIn.ShownMm, _formOut.ShownMm);
        _pulled = PanelShape.Pulled(job, _panelIn.ShownMm, _panelOut.ShownMm);
        _finished = PanelShape.Finished(job, 0, _panelOut.ShownMm);
    }

    /// <summary>Whether any flat is cut short.</summary>
    public bool IsCutShort => _formIn.IsCut || _formOut.IsCut || _panelIn.IsCut || _panelOut.IsCut;

    /// <summary>Gathers what to show.</summary>
    /// <param name="job">The job.</param>
    /// <param name="mostFlat">Longest flat as a share of the curve's size.</param>
    public static SectionPicture Of(DrawingJob job, double mostFlat)
    {
        var curve = job.Plan.Form.Section.ContactCurve;
        var size = Math.Max(curve.Max(p => p.X) - curve.Min(p => p.X), curve.Max(p => p.Y) - curve.Min(p => p.Y));
        return new(job, mostFlat * Math.Max(size, 10 * (job.Panel.Sheet.ThicknessMm + job.Form.Sheet.ThicknessMm)));
    }

    /// <summary>Fits it into a place on the sheet.</summary>
    /// <param name="width">Width of the place [mm].</param>
    /// <param name="height">Greatest height [mm].</param>
    /// <param name="top">Its upper edge [mm].</param>
    public SectionFrame Frame(double width, double height, double top)
    {
        var points = _form.Outline.Concat(_pulled.Outline).Concat(_finished.Outline).ToArray();
        double left = points.Min(p => p.X), right = points.Max(p => p.X), low = points.Min(p => p.Y), high = points.Max(p => p.Y);
        // Arrows and their words stand outside the parts.
        const double margin = ArrowMm + 4;
        var scale = Math.Min((width - (2 * margin)) / (right - left), (height - (2 * margin)) / (high - low));
        var bottom = top + (scale * (high - low)) + (2 * margin) - 6;
        var frame = new SectionFrame(new(((width - (scale * (right - left))) / 2) - (scale * left), bottom - 6 + (scale * low)), scale, bottom);
        return frame with { Bottom = Math.Max(bottom, PullTail(frame).Tail.Y + 3) };
    }

    /// <summary>Draws it.</summary>
    /// <param name="sketch">What to draw in.</param>
    /// <param name="frame">Where.</param>
    public void Draw(Sketch sketch, SectionFrame frame)
    {
        Bench(sketch, frame);
        Sheet(sketch, frame, Pen.Phantom, _finished, isStartCut: false, _panelOut.IsCut || _job.Panel.Mirrored);
        Sheet(sketch, frame, Pen.Sheet, _pulled, _panelIn.IsCut, _panelOut.IsCut || _job.Panel.Mirrored);
        // A thin part in section is blacked in, as draughtsmen do.
        sketch.Polygon(Pen.Leader, [.. _form.Outline.Select(frame.At)], Tone.Ink);
        if (_formIn.IsCut)
            Break(sketch, frame, _form.Inner[0], _form.Outer[0]);
        if (_formOut.IsCut)
            Break(sketch, frame, _form.Inner[^1], _form.Outer[^1]);
        ClampArrow(sketch, frame);
        PullArrow(sketch, frame);
    }

    private static void Sheet(Sketch sketch, SectionFrame frame, Pen pen, Ribbon ribbon, bool isStartCut, bool isEndCut)
    {
        sketch.Line(pen, [.. ribbon.Inner.Select(frame.At)]);
        sketch.Line(pen, [.. ribbon.Outer.Select(frame.At)]);
        End(ribbon.Inner[0], ribbon.Outer[0], isStartCut);
        End(ribbon.Inner[^1], ribbon.Outer[^1], isEndCut);

        void End(Point inner, Point outer, bool isCut)
        {
            if (isCut)
                Break(sketch, frame, inner, outer);
            else
                sketch.Line(pen, frame.At(inner), frame.At(outer));
        }
    }

    // A line across that runs past both faces, with a kink.
    private static void Break(Sketch sketch, SectionFrame frame, Point inner, Point outer)
    {
        Point a = frame.At(inner), b = frame.At(outer), across = b - a, middle = 0.5 * (a + b);
        var unit = 1 / across.Length * across;
        Point kink = 0.9 * unit.Left(), half = 0.3 * unit;
        sketch.Line(Pen.Leader, [a - (1.6 * unit), middle - half, middle + kink, middle - kink, middle + half, b + (1.6 * unit)]);
    }

    private void Bench(Sketch sketch, SectionFrame frame)
    {
        var left = frame.At(_pulled.Outer[0]) - new Point(4, 0);
        var right = frame.At(new(0, _pulled.Outer[0].Y)) + new Point(4, 0);
        sketch.Line(Pen.Leader, left, right);
        for (var x = left.X + 2; x < right.X; x += 2)
            sketch.Line(Pen.Leader, new(x, left.Y), new(x - 1.4, left.Y + 1.4));
    }

    private void ClampArrow(Sketch sketch, SectionFrame frame)
    {
        var first = _job.Plan.Form.Section.Vertices[1].X;
        var x = Math.Max(first - _job.Panel.Clamp.GapMm, (_form.Inner[0].X + first) / 2);
        var foot = frame.At(new(x, _form.Inner[0].Y));
        sketch.Arrow(foot - new Point(0, ArrowMm), foot);
        sketch.Write(foot.X, foot.Y - ArrowMm - 1, "clamp", Page.Small, Anchor.Middle);
    }

    private void PullArrow(Sketch sketch, SectionFrame frame)
    {
        var (foot, tail) = PullTail(frame);
        sketch.Arrow(tail, foot);
        var heading = 1 / ArrowMm * (foot - tail);
        var side = Math.Abs(heading.X) < 0.3 ? 0 : Math.Sign(heading.X);
        var y = heading.Y < -0.7 ? tail.Y + 3 : heading.Y > 0.7 ? tail.Y - 1 : tail.Y + 0.9;
        // Not on the hatching of the bench.
        var bench = frame.At(_pulled.Outer[0]).Y;
        if (y > bench - 1 && y < bench + 4)
            y = bench - 2;
        sketch.Write(tail.X - side, y, "pull", Page.Small, side > 0 ? Anchor.End : side < 0 ? Anchor.Start : Anchor.Middle);
    }

    private (Point Foot, Point Tail) PullTail(SectionFrame frame)
    {
        Point end = _pulled.Outer[^1], before = _pulled.Outer[^2];
        var run = (end - before).Length;
        var along = 1 / run * (end - before);
        var foot = frame.At(before + (Math.Min(_job.Plan.Panel.Pull.LeverMm, run) * along));
        return (foot, foot - (ArrowMm * new Point(along.Left().X, -along.Left().Y)));
    }

    private readonly record struct Flat(double ShownMm, bool IsCut)
    {
        public static Flat Of(double length, double most) => length > most ? new(most, true) : new(length, false);
    }
}
