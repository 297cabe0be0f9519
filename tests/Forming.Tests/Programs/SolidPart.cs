using Forming.Programs;
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
        var inside = (part.Allowance(fold) / turn) - (part.Shape.NeutralFactor * part.Shape.ThicknessMm);
        var swing = isPress ? turn / 2 : turn;
        List<Polygon> pieces = [];
        Walk(edgeInFront == PartEdge.End ? 1 : -1, inside, swing, 1);
        Walk(edgeInFront == PartEdge.End ? -1 : 1, inside, isPress ? swing : 0, -1);
        return Factory.BuildGeometry(pieces);

        void Walk(int step, double radius, double heading, double mirror)
        {
            var at = new Point(radius * Math.Sin(heading), radius * (1 - Math.Cos(heading)));
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
                var from = isRun ? to - (part.Shape.ThicknessMm / 2 * along) : at;
                if (!isRun || (withRunEnds && !isEdge && made.Contains(k)))
                    Add(mirror, [from, to, to + under, from + under]);
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

                Add(mirror, [.. inner, .. Enumerable.Reverse(outer)]);
                heading += part.FoldAngles[k];
                at = inner[^1];
            }
        }

        void Add(double mirror, List<Point> corners) => pieces.Add(Factory.CreatePolygon(
            [.. corners.Append(corners[0]).Select(corner => new Coordinate(mirror * corner.X, corner.Y))]));
    }

    /// <summary>The upper jaws as one shape.</summary>
    public static Geometry Jaws(BrakeTools tools) => Factory.BuildGeometry(
        [.. tools.Upper.Select(jaw => Factory.CreatePolygon([.. jaw.Outline.Append(jaw.Outline[0]).Select(corner => new Coordinate(corner.X, corner.Y))]))]);
}
