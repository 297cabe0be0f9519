using Forming.Programs.Brakes;
using NetTopologySuite.Geometries;

namespace Forming.Tests.Programs;

/// <summary>
/// A taper as a solid in space: slabs and slices of tube, folded from the cut edge inwards, each fold turning all beyond it about its own
/// axis. A geometry of its own, to hold the swing against in sections square to the fold.
/// </summary>
internal static class SolidTaper
{
    private const int SlicesOfFold = 12;

    private static readonly GeometryFactory Factory = new();

    /// <summary>Everything past the runs beside the fold, before the fold is begun: in front and behind, each in its side's own frame.</summary>
    public static (List<Slab> Front, List<Slab> Back) PastRuns(ProgramPart part, ISet<int> made, int fold, PartEdge edgeInFront) =>
        (SideOf(part, made, fold, edgeInFront), SideOf(part, made, fold, edgeInFront == PartEdge.End ? PartEdge.Start : PartEdge.End));

    /// <summary>A section of some slabs square to the fold: the corners of its pieces.</summary>
    public static IEnumerable<Coordinate[]> Cut(IEnumerable<Slab> slabs, double along)
    {
        foreach (var slab in slabs)
        {
            if (Factory.CreateMultiPointFromCoords([.. slab.CutAt(along)]).ConvexHull() is Polygon piece)
                yield return piece.Coordinates;
        }
    }

    /// <summary>How far a section's pieces are from some jaws with the fold at an angle, or what is enough where that is less.</summary>
    public static double Apart(
        IEnumerable<Coordinate[]> pieces, ProgramPart part, int fold, (double Swing, double Turn, double Mirror) at, Geometry jaws, double enough)
    {
        var inside = (part.Allowance(fold) / at.Turn) - (part.Shape.NeutralFactor * part.Shape.ThicknessMm);
        var (sin, cos) = Math.SinCos(at.Swing);
        foreach (var piece in pieces)
        {
            Coordinate[] swung = [.. piece.Select(point =>
                new Coordinate(at.Mirror * ((inside * sin) + (point.X * cos) - (point.Y * sin)), (inside * (1 - cos)) + (point.X * sin) + (point.Y * cos)))];
            var around = new Envelope(swung);
            if (around.Distance(jaws.EnvelopeInternal) < enough)
                enough = Math.Min(enough, Factory.CreatePolygon(swung).Distance(jaws));
        }

        return enough;
    }

    // Frame: x outwards from the fold's tangent line, y up from the inside face, z along the line from its near end.
    private static List<Slab> SideOf(ProgramPart part, ISet<int> made, int fold, PartEdge towards)
    {
        var (flat, isOut) = (part.Flat!, towards == PartEdge.End);
        int[] folds = isOut ? [.. Enumerable.Range(fold + 1, part.Folds - fold - 1)] : [.. Enumerable.Range(0, fold).Reverse()];
        var first = Tangent(fold, outer: true);
        var origin = first.Near;
        var along = 1 / (first.Far - first.Near).Length * (first.Far - first.Near);
        var t = part.Shape.ThicknessMm;

        // From the cut edge inwards to where the run ends: what lies beyond a fold that is made is drawn in by its strip and turned about its axis.
        var outer = Flat(isOut ? flat.LeadOut : flat.LeadIn);
        List<Slab> beyond = [];
        foreach (var next in folds.Reverse().Where(other => folds.TakeWhile(inner => inner != other).Append(other).Any(made.Contains)))
        {
            var exit = Flat(Tangent(next, outer: true));
            var enter = Flat(Tangent(next, outer: false));
            beyond.Add(Slab.Between(exit, outer, new(0, -t, 0)));
            outer = enter;
            if (!made.Contains(next))
            {
                beyond.Add(Slab.Between(enter, exit, new(0, -t, 0)));
                continue;
            }

            var line = (enter.Far - enter.Near).Unit();
            Point3 up = new(0, 1, 0), outwards = new(line.Z, 0, -line.X);
            var axis = enter.Near + (part.Shape.RadiusMm * up);
            var strip = (exit.Near - enter.Near).Dot(outwards);
            Workshop.Within(1e-9, part.Allowance(next), strip);
            beyond = [.. beyond.Select(slab => slab.Moved(p => Turned(p - (strip * outwards), part.FoldAngles[next])))];
            for (var i = 0; i < SlicesOfFold; i++)
            {
                double from = part.FoldAngles[next] * i / SlicesOfFold, to = part.FoldAngles[next] * (i + 1) / SlicesOfFold;
                beyond.Add(new(
                    [.. new[] { enter.Near, enter.Far, enter.Near - (t * up), enter.Far - (t * up) }.SelectMany(p => (Point3[])[Turned(p, from), Turned(p, to)])]));
            }

            Point3 Turned(Point3 p, double angle)
            {
                var (sin, cos) = Math.SinCos(angle);
                var q = p - axis;
                var (x, y) = (q.Dot(outwards), q.Dot(up));
                return axis + (q.Dot(line) * line) + (((x * cos) - (y * sin)) * outwards) + (((x * sin) + (y * cos)) * up);
            }
        }

        return beyond;

        (Point Near, Point Far) Tangent(int index, bool outer) => outer == isOut
            ? (flat.Lines[index].SecondTangentNear, flat.Lines[index].SecondTangentFar)
            : (flat.Lines[index].FirstTangentNear, flat.Lines[index].FirstTangentFar);

        (Point3 Near, Point3 Far) Flat((Point Near, Point Far) line) => (Place(line.Near), Place(line.Far));

        Point3 Place(Point point)
        {
            var from = point - origin;
            return new((isOut ? -1 : 1) * from.Dot(along.Left()), 0, from.Dot(along));
        }
    }

    /// <summary>A convex solid by its corners.</summary>
    internal sealed record Slab(Point3[] Corners)
    {
        public static Slab Between((Point3 Near, Point3 Far) inner, (Point3 Near, Point3 Far) outer, Point3 down) => new(
            [inner.Near, inner.Far, outer.Near, outer.Far, inner.Near + down, inner.Far + down, outer.Near + down, outer.Far + down]);

        public Slab Moved(Func<Point3, Point3> move) => new(Array.ConvertAll(Corners, corner => move(corner)));

        // Every pair of corners on both sides of the plane: their crossings lie in the convex solid, and its edges are among them.
        public IEnumerable<Coordinate> CutAt(double along)
        {
            foreach (var a in Corners.Where(corner => corner.Z <= along))
            {
                foreach (var b in Corners.Where(corner => corner.Z > along))
                {
                    var p = a + ((along - a.Z) / (b.Z - a.Z) * (b - a));
                    yield return new(p.X, p.Y);
                }
            }
        }
    }
}
