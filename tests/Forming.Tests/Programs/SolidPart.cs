using Forming.Programs.Brakes;
using NetTopologySuite.Geometries;

namespace Forming.Tests.Programs;

/// <summary>The part as a solid: flats are rectangles, folds ring sectors, walked along its inside face. A geometry of its own, to hold the swing against.</summary>
internal static class SolidPart
{
    private static readonly GeometryFactory Factory = new();

    /// <summary>Everything past the runs beside the fold under way, with the fold at an angle; asked for, also the runs' last half thickness,
    /// the solid metal in which the round end of the swing's first chord lies.</summary>
    public static Geometry Folded(ProgramPart part, ISet<int> made, int fold, PartEdge edgeInFront, double turn, bool isPress, bool withRunEnds)
    {
        var (front, back) = Sides(part, made, fold, edgeInFront, turn, isPress, withRunEnds ? part.Shape.ThicknessMm / 2 : 0);
        return Factory.BuildGeometry([.. front, .. back]);
    }

    /// <summary>Everything in front of the fold, and everything behind it, the runs too, with the fold at an angle.</summary>
    public static (Geometry Front, Geometry Back) BothSides(ProgramPart part, ISet<int> made, int fold, PartEdge edgeInFront, double turn, bool isPress)
    {
        var (front, back) = Sides(part, made, fold, edgeInFront, turn, isPress, double.PositiveInfinity);
        return (Factory.BuildGeometry([.. front]), Factory.BuildGeometry([.. back]));
    }

    /// <summary>The same without the runs.</summary>
    public static (Geometry Front, Geometry Back) PastRuns(ProgramPart part, ISet<int> made, int fold, PartEdge edgeInFront, double turn, bool isPress)
    {
        var (front, back) = Sides(part, made, fold, edgeInFront, turn, isPress, 0);
        return (Factory.BuildGeometry([.. front]), Factory.BuildGeometry([.. back]));
    }

    /// <summary>Everything behind the fold, the run beside it too, before it is begun.</summary>
    public static IReadOnlyList<Polygon> Behind(ProgramPart part, ISet<int> made, int fold, PartEdge edgeInFront, bool isPress)
    {
        var pieces = new Pieces(part, made, fold, double.PositiveInfinity);
        pieces.Walk(edgeInFront == PartEdge.End ? -1 : 1, new(isPress ? part.Allowance(fold) / 2 : 0, 0), 0, -1);
        return pieces.Done;
    }

    /// <summary>An upright rectangle.</summary>
    public static Polygon Block(double left, double right, double low, double high) =>
        Of([new(left, low), new(right, low), new(right, high), new(left, high)], 1);

    /// <summary>Jaws as one shape.</summary>
    public static Geometry Jaws(IEnumerable<Jaw> jaws) => Factory.BuildGeometry([.. jaws.Select(jaw => Of(jaw.Outline, 1))]);

    private static (List<Polygon> Front, List<Polygon> Back) Sides(
        ProgramPart part, ISet<int> made, int fold, PartEdge edgeInFront, double turn, bool isPress, double ofRun)
    {
        var inside = (part.Allowance(fold) / turn) - (part.Shape.NeutralFactor * part.Shape.ThicknessMm);
        var (ahead, behind) = isPress ? (turn / 2, turn / 2) : (turn, 0);
        Pieces front = new(part, made, fold, ofRun), back = new(part, made, fold, ofRun);
        front.Walk(edgeInFront == PartEdge.End ? 1 : -1, OnFold(ahead), ahead, 1);
        back.Walk(edgeInFront == PartEdge.End ? -1 : 1, OnFold(behind), behind, -1);
        return (front.Done, back.Done);

        Point OnFold(double heading) => new(inside * Math.Sin(heading), inside * (1 - Math.Cos(heading)));
    }

    private static Polygon Of(Point[] corners, double mirror) => Factory.CreatePolygon(
        [.. corners.Append(corners[0]).Select(corner => new Coordinate(mirror * corner.X, corner.Y))]);

    private sealed class Pieces(ProgramPart part, ISet<int> made, int fold, double ofRun)
    {
        public List<Polygon> Done { get; } = [];

        public void Walk(int step, Point at, double heading, double mirror)
        {
            var isRun = true;
            for (var k = fold + step; ; k += step)
            {
                var length = part.StraightsMm[step > 0 ? k : k + 1];
                var isEdge = k < 0 || k >= part.Folds;
                if (!isEdge && !made.Contains(k))
                    length += part.Allowance(k);
                var along = Point.Along(heading);
                var under = -part.Shape.ThicknessMm * along.Left();
                var to = at + (length * along);
                var from = isRun && ofRun < length ? to - (ofRun * along) : at;
                if (!isRun || double.IsPositiveInfinity(ofRun) || (ofRun > 0 && !isEdge && made.Contains(k)))
                    Done.Add(Of([from, to, to + under, from + under], mirror));
                at = to;
                if (isEdge)
                    return;
                if (!made.Contains(k))
                    continue;
                isRun = false;
                var centre = at + (part.Shape.RadiusMm * along.Left());
                const int Steps = 12;
                List<Point> inner = [], outer = [];
                for (var i = 0; i <= Steps; i++)
                {
                    var direction = -1 * Point.Along(heading + (part.FoldAngles[k] * i / Steps)).Left();
                    inner.Add(centre + (part.Shape.RadiusMm * direction));
                    outer.Add(centre + (part.Shape.OuterRadiusMm * direction));
                }

                Done.Add(Of([.. inner, .. Enumerable.Reverse(outer)], mirror));
                heading += part.FoldAngles[k];
                at = inner[^1];
            }
        }
    }
}
