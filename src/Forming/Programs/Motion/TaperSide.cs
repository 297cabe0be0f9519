using Forming.Programs.Brakes;

namespace Forming.Programs.Motion;

/// <summary>One side of a taper in space, from the fold under way outwards.</summary>
/// <remarks>
/// x outwards, square to the fold under way; y up; z along it from its near end. The flat is carried along facet by facet: a made fold
/// turns it about its own line, which is not parallel to z.
/// </remarks>
internal sealed class TaperSide
{
    private TaperSide(List<SideLine> lines, int runEnd, double halfMm, Point3 up)
    {
        (Lines, RunEnd) = (lines, runEnd);
        EdgeFaces = [lines[^1].Near + (halfMm * up), lines[^1].Far + (halfMm * up)];
    }

    /// <summary>Lines across the side: tangent lines, chords of made folds, the cut edge last.</summary>
    public IReadOnlyList<SideLine> Lines { get; }

    /// <summary>Index of the line at which the run beside the fold ends.</summary>
    public int RunEnd { get; }

    /// <summary>Near and far corner of the cut edge, on the inside face [mm].</summary>
    public Point3[] EdgeFaces { get; }

    /// <summary>One side of a fold.</summary>
    /// <param name="part">The part.</param>
    /// <param name="made">The folds that are made.</param>
    /// <param name="fold">The fold under way.</param>
    /// <param name="towards">The edge on this side.</param>
    /// <param name="chord">Largest turn of a chord [rad].</param>
    public static TaperSide Of(ProgramPart part, FoldSet made, int fold, PartEdge towards, double chord)
    {
        var flat = part.Flat!;
        var (step, behind) = towards == PartEdge.End ? (1, PartEdge.Start) : (-1, PartEdge.End);
        var half = part.Shape.ThicknessMm / 2;
        var radius = part.Shape.RadiusMm + half;
        var (near, far) = flat.Side(fold, towards);
        var facet = new Facet(near, 1 / (far - near).Length * (far - near), step, default, new(0, 0, 1), new(1, 0, 0), new(0, 1, 0));
        List<SideLine> lines = [new(facet.Place(near), facet.Place(far), 0, true)];
        var (heading, runEnd) = (0.0, 0);
        for (var next = fold + step; next >= 0 && next < part.Folds; next += step)
        {
            var (enter, exit) = (flat.Side(next, behind), flat.Side(next, towards));
            if (!made.Has(next))
            {
                Lay(enter, isCorner: false);
                Lay(exit, isCorner: false);
                continue;
            }

            Lay(enter, isCorner: true);
            runEnd = runEnd > 0 ? runEnd : lines.Count - 1;
            facet = facet.TurnedTo(enter, step);
            Point3 first = facet.Place(enter.Near), along = (enter.Far - enter.Near).Length * facet.Along;
            var (from, centre) = (facet, first + (radius * facet.Up));
            var count = (int)Math.Ceiling(part.FoldAngles[next] / chord);
            for (var i = 1; i <= count; i++)
            {
                facet = from.Folded(part.FoldAngles[next] * i / count);
                heading += Math.IEEERemainder(facet.Heading - heading, 2 * Math.PI);
                var at = centre - (radius * facet.Up);
                lines.Add(new(at, at + along, heading, true));
            }

            facet = facet with { FlatOrigin = exit.Near, Origin = lines[^1].Near };
        }

        Lay(flat.Edge(towards), isCorner: true);
        return new(lines, runEnd > 0 ? runEnd : lines.Count - 1, half, facet.Up);

        void Lay((Point Near, Point Far) line, bool isCorner) =>
            lines.Add(new(facet.Place(line.Near), facet.Place(line.Far), heading, isCorner));
    }

    /// <summary>The section square to the fold under way, from the fold outwards.</summary>
    /// <param name="along">Where, from the near end of the fold [mm].</param>
    /// <returns>Its unbroken pieces; more than one where it leaves the part and comes back.</returns>
    public IReadOnlyList<SidePiece> CutAt(double along)
    {
        List<SidePiece> pieces = [];
        List<Point> points = [];
        var ofRun = 0;
        for (var i = 0; i + 1 < Lines.Count; i++)
        {
            if (Cut(Lines[i], Lines[i + 1], along) is not { } cut)
            {
                Close();
                continue;
            }

            if (!cut.BeginsOnLine)
                Close();
            if (points.Count == 0)
                points.Add(cut.From);
            points.Add(cut.To);
            if (i < RunEnd)
                ofRun++;
        }

        Close();
        return pieces;

        void Close()
        {
            if (points.Count > 1)
                pieces.Add(new([.. points], ofRun));
            points = [];
            ofRun = 0;
        }
    }

    // Between two lines the sheet is flat and has four edges: the lines, and the trim at both ends.
    private static (Point From, Point To, bool BeginsOnLine)? Cut(SideLine inner, SideLine outer, double along)
    {
        var begin = On(inner.Near, inner.Far, along);
        var end = On(outer.Near, outer.Far, along);
        if (begin is { } from && end is { } to)
            return (At(inner.Near, inner.Far, from), At(outer.Near, outer.Far, to), true);
        (double Share, Point Point)[] trims =
        [
            .. Trim(inner.Near, outer.Near),
            .. Trim(inner.Far, outer.Far),
        ];
        Array.Sort(trims, (one, other) => one.Share.CompareTo(other.Share));
        return (begin, end, trims.Length) switch
        {
            ({ } share, _, > 0) => (At(inner.Near, inner.Far, share), trims[^1].Point, true),
            (_, { } share, > 0) => (trims[0].Point, At(outer.Near, outer.Far, share), false),
            (_, _, 2) => (trims[0].Point, trims[1].Point, false),
            _ => null,
        };

        (double Share, Point Point)[] Trim(Point3 a, Point3 b) => On(a, b, along) is { } share ? [(share, At(a, b, share))] : [];

        static double? On(Point3 a, Point3 b, double z) =>
            (a.Z - z) * (b.Z - z) <= 0 && a.Z != b.Z ? (z - a.Z) / (b.Z - a.Z) : null;

        static Point At(Point3 a, Point3 b, double share)
        {
            var point = a + (share * (b - a));
            return new(point.X, point.Y);
        }
    }

    /// <summary>A flat part of the sheet: where the flat lies in space.</summary>
    private readonly record struct Facet(
        Point FlatOrigin, Point FlatAlong, int Step, Point3 Origin, Point3 Along, Point3 Outwards, Point3 Up)
    {
        /// <summary>Direction of its section square to z [rad].</summary>
        public double Heading => Math.Atan2(-Up.X, Up.Y);

        public Point3 Place(Point flat)
        {
            var from = flat - FlatOrigin;
            return Origin + (from.Dot(FlatAlong) * Along) - (Step * from.Dot(FlatAlong.Left()) * Outwards);
        }

        /// <summary>The same facet, its axes along a line of it.</summary>
        public Facet TurnedTo((Point Near, Point Far) line, int step)
        {
            var flat = 1 / (line.Far - line.Near).Length * (line.Far - line.Near);
            double cos = flat.Dot(FlatAlong), sin = -step * flat.Dot(FlatAlong.Left());
            return new(line.Near, flat, step, Place(line.Near), (cos * Along) + (sin * Outwards), (cos * Outwards) - (sin * Along), Up);
        }

        /// <summary>The next facet's axes, folded up about the line.</summary>
        public Facet Folded(double angle)
        {
            var (sin, cos) = Math.SinCos(angle);
            return this with { Outwards = (cos * Outwards) + (sin * Up), Up = (cos * Up) - (sin * Outwards) };
        }
    }
}

/// <summary>A line across one side of a taper.</summary>
/// <param name="Near">Its near end, on the mid surface [mm].</param>
/// <param name="Far">Its far end [mm].</param>
/// <param name="Heading">Direction of the sheet up to it, in the section square to the fold under way [rad].</param>
/// <param name="IsCorner">Whether the sheet bends or ends there.</param>
internal readonly record struct SideLine(Point3 Near, Point3 Far, double Heading, bool IsCorner);

/// <summary>An unbroken piece of one side in section, from the fold outwards.</summary>
/// <param name="Points">[n + 1] mid surface [mm].</param>
/// <param name="RunEnd">Index of the point at which the run beside the fold ends.</param>
internal sealed record SidePiece(Point[] Points, int RunEnd)
{
    /// <summary>Whether it goes on past the run.</summary>
    public bool IsFolded => RunEnd < Points.Length - 1;
}
