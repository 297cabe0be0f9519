using Forming.Blanks;
using Forming.Jobs;
using Forming.Materials;
using Forming.Results;
using Forming.Wrapping;

namespace Forming.Tapers;

/// <summary>Blanks of tapered work: general outlines and the straight-edged sheets that hold them.</summary>
internal static class TaperBlanks
{
    private const int Samples = 96;

    /// <summary>A blank with a general outline; its length and width are those of the bounding rectangle.</summary>
    public static Blank Of(Sheet sheet, IReadOnlyList<Point> outline, double area, IReadOnlyList<StockSheet> stock)
    {
        double length = outline.Max(point => point.X), width = outline.Max(point => point.Y);
        return new(length, width, area, BlankShape.MassKg(sheet, area), outline, Stock.Count(stock, length, width));
    }

    /// <summary>Outline and registration marks of the flat panel, in its sheet frame: x along the chord of the near edge.</summary>
    public static (IReadOnlyList<Point> Outline, double AreaMm2, IReadOnlyList<PanelMark> Marks) PanelLayout(
        FlatPanel flat, double sweep, PanelSpec panel, double leverMm)
    {
        var turns = Enumerable.Range(0, Samples + 1).Select(i => sweep * i / Samples).ToArray();
        Point start = flat.EdgeAt(0), end = flat.EdgeAt(sweep);
        var leadIn = flat.LeadRun(0, panel.LeadInMm + panel.TrimMm);
        var trim = flat.LeadRun(0, panel.TrimMm);
        Line leadInEdge = At(0).Moved(-leadIn * start);
        List<Line> edges = [leadInEdge, .. turns.Select(At)];
        List<(string Name, Line Line)> lines =
        [
            ("first tangent line: over the form's first tangent line", At(0)),
            ("last tangent line", At(sweep)),
        ];
        if (leverMm <= panel.SheetPastCurveMm)
            lines.Add(("pull here", At(sweep).Moved(flat.LeadRun(sweep, leverMm) * end)));
        if (panel.TrimMm > 0)
            lines.Insert(0, ("trim line", leadInEdge.Moved(trim * start)));
        if (panel.Mirrored)
        {
            var mirror = MirrorLine(flat, sweep, panel, At(sweep));
            edges.AddRange(edges.AsEnumerable().Reverse().Select(mirror).ToArray());
            lines.AddRange(lines.AsEnumerable().Reverse().Select(line => ("second half: " + line.Name, mirror(line.Line))).ToArray());
        }
        else
        {
            var leadOut = At(sweep).Moved(flat.LeadRun(sweep, panel.LeadOutMm + panel.TrimMm) * end);
            edges.Add(leadOut);
            if (panel.TrimMm > 0)
                lines.Add(("far trim line", leadOut.Moved(-flat.LeadRun(sweep, panel.TrimMm) * end)));
        }

        var chord = flat.NearAt(sweep) - flat.NearAt(0);
        var heading = 1 / chord.Length * chord;
        var turned = edges.Select(edge => edge.Turned(heading)).ToArray();
        var corner = new Point(
            turned.Min(edge => Math.Min(edge.Near.X, edge.Far.X)), turned.Min(edge => Math.Min(edge.Near.Y, edge.Far.Y)));
        var placed = turned.Select(edge => edge.Moved(-1 * corner)).ToArray();
        Point[] outline = [.. placed.Select(edge => edge.Near), .. placed.Reverse().Select(edge => edge.Far), placed[0].Near];
        return (
            outline,
            PanelArea(edges, flat.CurvedAreaMm2, panel.Mirrored),
            [.. lines.Select(line => MarkOf(line.Name, line.Line.Turned(heading).Moved(-1 * corner)))]);

        Line At(double turn) => new(flat.NearAt(turn), flat.FarAt(turn));
    }

    // The mirror line is square to the edges, half the flat between the curves on from the last ruling's near end.
    private static Func<Line, Line> MirrorLine(FlatPanel flat, double sweep, PanelSpec panel, Line last)
    {
        var edge = flat.EdgeAt(sweep);
        var run = flat.LeadRun(sweep, panel.LeadOutMm) / 2;
        if ((last.Far - last.Near).Dot(edge) > run)
        {
            throw new NoSolutionException(
                "taper.halves-overlap",
                "panel.leadOut",
                $"the last rulings of the two halves cross in a flat of {Figure.Length(panel.LeadOutMm)}",
                $"a longer lead-out between the two curves");
        }

        var foot = last.Near + (run * edge);
        return line => new(Mirrored(line.Near), Mirrored(line.Far));

        Point Mirrored(Point point) => point - (2 * (point - foot).Dot(edge) * edge);
    }

    private static PanelMark MarkOf(string name, Line line)
    {
        var slope = (line.Far.X - line.Near.X) / (line.Far.Y - line.Near.Y);
        return new(name, line.Near.X - (slope * line.Near.Y), line.Near, line.Far);
    }

    // The curved part by its integral; the leads and the flat between mirrored halves have straight edges.
    private static double PanelArea(List<Line> edges, double curved, bool isMirrored)
    {
        var leadIn = Between(edges[0], edges[1]);
        return isMirrored
            ? (2 * (leadIn + curved)) + Between(edges[Samples + 1], edges[Samples + 2])
            : leadIn + curved + Between(edges[^2], edges[^1]);

        static double Between(Line a, Line b) => Area([a.Near, b.Near, b.Far, a.Far, a.Near]);
    }

    /// <summary>Area inside an outline, first point = last [mm²].</summary>
    public static double Area(IReadOnlyList<Point> outline)
    {
        var sum = 0.0;
        for (var i = 1; i < outline.Count; i++)
            sum += outline[i - 1].Cross(outline[i]);
        return Math.Abs(sum) / 2;
    }

    private readonly record struct Line(Point Near, Point Far)
    {
        public Line Moved(Point by) => new(Near + by, Far + by);

        public Line Turned(Point heading) => new(Turned(heading, Near), Turned(heading, Far));

        private static Point Turned(Point heading, Point point) => new(heading.Dot(point), heading.Cross(point));
    }
}
