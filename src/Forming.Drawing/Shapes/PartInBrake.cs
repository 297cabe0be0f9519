using Forming.Layout;

namespace Forming.Drawing.Shapes;

/// <summary>The part in a brake, in the brake's own frame: x towards the operator, y up, the flat sheet's inside face on y = 0.</summary>
internal static class PartInBrake
{
    /// <summary>No piece of a fold's arc turns by more than this [rad].</summary>
    private const double ArcStep = Math.PI / 36;

    /// <summary>The part with one fold under way, its faces from the edge behind to the edge in front.</summary>
    /// <param name="shape">Shape of every fold.</param>
    /// <param name="behind">What lies behind the fold under way, from it outwards.</param>
    /// <param name="inFront">What lies in front of it, from it outwards.</param>
    /// <param name="allowance">Neutral length of the fold under way [mm].</param>
    /// <param name="turn">Its angle now [rad], &gt; 0.</param>
    /// <param name="bothTurn">Whether both sides turn, as in a press brake, or only the front, as in a leaf brake.</param>
    public static Ribbon Of(
        FoldShape shape, IEnumerable<PartPiece> behind, IEnumerable<PartPiece> inFront, double allowance, double turn, bool bothTurn)
    {
        var thickness = shape.ThicknessMm;
        // The fold keeps its neutral length whatever its angle.
        var radius = (allowance / turn) + ((0.5 - shape.NeutralFactor) * thickness);
        var (back, front) = bothTurn ? (turn / 2, turn / 2) : (0, turn);
        List<Point> inner = [], outer = [];
        foreach (var (at, heading) in Side(shape, behind).Reverse())
            Face(Turned(at, back), heading + back, isMirrored: true);
        var steps = Math.Max(1, (int)Math.Ceiling(turn / ArcStep));
        for (var i = 0; i <= steps; i++)
        {
            var heading = -back + (turn * i / steps);
            Face(radius * new Point(Math.Sin(heading), 1 - Math.Cos(heading)), heading, isMirrored: false);
        }

        foreach (var (at, heading) in Side(shape, inFront))
            Face(Turned(at, front), heading + front, isMirrored: false);
        return new(inner, outer);

        Point Turned(Point at, double by)
        {
            var (sin, cos) = Math.SinCos(by);
            return new Point((cos * at.X) - (sin * at.Y), (sin * at.X) + (cos * at.Y)) + (radius * new Point(sin, 1 - cos));
        }

        void Face(Point middle, double heading, bool isMirrored)
        {
            var half = thickness / 2 * Point.Along(heading).Left();
            Add(inner, middle + half);
            Add(outer, middle - half);

            void Add(List<Point> face, Point point) =>
                face.Add(new Point(isMirrored ? -point.X : point.X, point.Y) - new Point(0, thickness / 2));
        }
    }

    // The middle of the sheet from the tangent line outwards: starts at (0, 0) along x, turns left.
    private static IEnumerable<(Point At, double Heading)> Side(FoldShape shape, IEnumerable<PartPiece> pieces)
    {
        var (at, heading) = (Point.Origin, 0.0);
        yield return (at, heading);
        foreach (var piece in pieces)
        {
            if (piece.Turn == 0)
            {
                at += piece.LengthMm * Point.Along(heading);
                yield return (at, heading);
                continue;
            }

            var radius = shape.RadiusMm + (shape.ThicknessMm / 2);
            var centre = at + (radius * Point.Along(heading).Left());
            var steps = Math.Max(1, (int)Math.Ceiling(piece.Turn / ArcStep));
            var start = heading;
            for (var i = 1; i <= steps; i++)
            {
                heading = start + (piece.Turn * i / steps);
                at = centre - (radius * Point.Along(heading).Left());
                yield return (at, heading);
            }
        }
    }
}
