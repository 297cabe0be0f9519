using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>Where a section lies on the sheet.</summary>
/// <param name="Origin">The section's (0, 0) on the sheet [mm].</param>
/// <param name="Scale">Sheet over section.</param>
/// <param name="Bottom">Lower edge on the sheet [mm].</param>
internal readonly record struct SectionFrame(Point Origin, double Scale, double Bottom)
{
    /// <summary>A point of the section on the sheet.</summary>
    /// <param name="point">The point, y up [mm].</param>
    public Point At(Point point) => Origin + new Point(Scale * point.X, -Scale * point.Y);
}

/// <summary>What a section shows, in its own frame.</summary>
internal sealed record SectionPicture
{
    private const double ArrowMm = 8;

    /// <summary>Thinnest that form and panel are drawn: thinner, both are one black line from a step away [mm].</summary>
    private const double LeastForm = 0.7;

    private const double LeastPanel = 1.0;

    /// <summary>Room for arrows, dimensions and their words [mm].</summary>
    private const double AtLeft = 6, AtRight = 21, Above = 10, Below = 13;

    private readonly DrawingJob _job;
    private readonly Ribbon? _farEnd;
    private readonly (bool First, bool Last) _isFormCut;
    private readonly (bool First, bool Last) _isPanelCut;

    private SectionPicture(DrawingJob job, double mostFlat)
    {
        _job = job;
        var form = FormShape.Of(job);
        (Form, _isFormCut) = CutShort(form.NearEnd, mostFlat);
        // The panel shows a little more than the form, or the cut would suggest that it is shorter.
        (Pulled, _isPanelCut) = CutShort(PanelShape.Pulled(job), 1.15 * mostFlat);
        Finished = CutShort(PanelShape.Finished(job), 1.15 * mostFlat).Ribbon;
        Finished = job.Panel.LeadInMm > 0 ? Finished.WithoutFirst() : Finished;
        _farEnd = job.Plan.Taper is null ? null : CutShort(form.FarEnd, mostFlat).Ribbon;
    }

    private Ribbon Form { get; init; }

    private Ribbon Pulled { get; init; }

    private Ribbon Finished { get; init; }

    private bool IsPanelEndCut => _isPanelCut.Last || _job.Panel.Mirrored;

    /// <summary>Whether any flat is cut short.</summary>
    public bool IsCutShort => _isFormCut.First || _isFormCut.Last || _isPanelCut.First || _isPanelCut.Last;

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
    /// <param name="enlarged">Paper over sheet, so that the scale on paper is a usual one; null for the largest that fits.</param>
    public SectionFrame Frame(double width, double height, double top, double? enlarged)
    {
        var points = Form.Outline.Concat(Pulled.Outline).Concat(Finished.Outline).Concat(_farEnd?.Outer ?? []).ToArray();
        double left = points.Min(p => p.X), right = points.Max(p => p.X), low = points.Min(p => p.Y), high = points.Max(p => p.Y);
        var scale = Math.Min((width - AtLeft - AtRight) / (right - left), (height - Above - Below) / (high - low));
        if (enlarged is { } paper)
            scale = Scales.NotAbove(scale * paper) / paper;
        var bottom = top + (scale * (high - low)) + Above + Below;
        var spare = width - AtLeft - AtRight - (scale * (right - left));
        var frame = new SectionFrame(new(AtLeft + (spare / 2) - (scale * left), bottom - Below + (scale * low)), scale, bottom);
        return frame with { Bottom = Math.Max(bottom, PullTail(frame).Tail.Y + 3) };
    }

    /// <summary>The same with sheets so thick that form and panel can be told apart; the faces between them stay.</summary>
    /// <param name="scale">Sheet over section.</param>
    public SectionPicture ShownAt(double scale)
    {
        var form = Math.Max(1, LeastForm / (scale * _job.Form.Sheet.ThicknessMm));
        var panel = Math.Max(1, LeastPanel / (scale * _job.Panel.Sheet.ThicknessMm));
        return this with
        {
            Form = Form.ThickenedInward(form),
            Pulled = Pulled.ThickenedOutward(panel),
            Finished = Finished.ThickenedOutward(panel),
            IsThickened = Math.Max(form, panel) > 1,
        };
    }

    /// <summary>Whether sheets are drawn thicker than they are.</summary>
    public bool IsThickened { get; private init; }

    /// <summary>Draws it.</summary>
    /// <param name="sketch">What to draw in.</param>
    /// <param name="frame">Where.</param>
    public void Draw(Sketch sketch, SectionFrame frame)
    {
        Bench(sketch, frame);
        Sheet(sketch, frame, Pen.Phantom, Finished, isStartCut: false, IsPanelEndCut);
        Sheet(sketch, frame, Pen.Sheet, Pulled, _isPanelCut.First, IsPanelEndCut);
        // A thin part in section is blacked in, as draughtsmen do.
        sketch.Polygon(Pen.Leader, [.. Form.Outline.Select(frame.At)], Tone.Ink);
        if (_isFormCut.First)
            Break(sketch, frame, Form.Inner[0], Form.Outer[0]);
        if (_isFormCut.Last)
            Break(sketch, frame, Form.Inner[^1], Form.Outer[^1]);
        if (_farEnd is not null)
            sketch.Line(Pen.Sight, [.. _farEnd.Outer.Select(frame.At)]);
        ClampArrow(sketch, frame);
        PullArrow(sketch, frame);
        new SectionDimensions(sketch, frame, _job, Finished).Draw(Pulled);
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

    /// <summary>Marks an end as cut short: a line across that runs past both faces, with a kink.</summary>
    /// <param name="sketch">What to draw in.</param>
    /// <param name="frame">Where.</param>
    /// <param name="inner">The end on the inner face.</param>
    /// <param name="outer">The end on the outer face.</param>
    internal static void Break(Sketch sketch, SectionFrame frame, Point inner, Point outer)
    {
        Point a = frame.At(inner), b = frame.At(outer), across = b - a, middle = 0.5 * (a + b);
        var unit = 1 / across.Length * across;
        Point kink = 1.3 * unit.Left(), half = 0.55 * unit;
        Point[] kinked = [middle - half, middle - (0.5 * half) + kink, middle + (0.5 * half) - kink, middle + half];
        sketch.Line(Pen.Leader, [a - (2.6 * unit), .. kinked, b + (2.6 * unit)]);
    }

    private void Bench(Sketch sketch, SectionFrame frame)
    {
        var left = frame.At(Pulled.Outer[0]) - new Point(4, 0);
        var right = frame.At(new(0, Pulled.Outer[0].Y)) + new Point(4, 0);
        sketch.Line(Pen.Leader, left, right);
        for (var x = left.X + 2; x < right.X; x += 2)
            sketch.Line(Pen.Leader, new(x, left.Y), new(x - 1.4, left.Y + 1.4));
    }

    private void ClampArrow(Sketch sketch, SectionFrame frame)
    {
        var first = _job.Plan.Form.Section.Vertices[1].X;
        var x = Math.Max(first - _job.Plan.Panel.Pull.ClampGapMm, (Form.Inner[0].X + first) / 2);
        var foot = frame.At(new(x, Form.Inner[0].Y));
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
        var bench = frame.At(Pulled.Outer[0]).Y;
        if (y > bench - 1 && y < bench + 4)
            y = bench - 2;
        sketch.Write(tail.X - side, y, "pull", Page.Small, side > 0 ? Anchor.End : side < 0 ? Anchor.Start : Anchor.Middle);
    }

    private (Point Foot, Point Tail) PullTail(SectionFrame frame)
    {
        Point end = Pulled.Outer[^1], before = Pulled.Outer[^2];
        var run = (end - before).Length;
        var along = 1 / run * (end - before);
        var foot = frame.At(before + (Math.Min(_job.Plan.Panel.Pull.LeverMm, run) * along));
        return (foot, foot - (ArrowMm * new Point(along.Left().X, -along.Left().Y)));
    }

    private static (Ribbon Ribbon, (bool First, bool Last) IsCut) CutShort(Ribbon ribbon, double most) =>
        (ribbon.CutShort(most, most), (ribbon.FirstMm > most, ribbon.LastMm > most));
}
