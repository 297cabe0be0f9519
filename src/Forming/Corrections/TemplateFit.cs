using Forming.Numerics;
using Forming.Prediction;
using Forming.Results;

namespace Forming.Corrections;

/// <summary>Points of a template laid over a face as well as they go.</summary>
internal static class TemplateFit
{
    private const int Starts = 33;

    private const int MostIterations = 30;

    /// <summary>Less gain than this share of the sum is none.</summary>
    private const double Settled = 1e-9;

    private const double MostTurn = 0.3; // [rad] a step

    private const double LeastShare = 1e-3;

    /// <summary>A panel that came off flat may be read as turning this far the other way [rad].</summary>
    private const double LeastTurn = 0.05;

    /// <summary>Refuses points that turn right.</summary>
    /// <param name="points">The points in order along the face [mm].</param>
    /// <exception cref="NoSolutionException"><c>corrections.mirrored</c>.</exception>
    public static void RefuseMirrored(IReadOnlyList<Point> points)
    {
        var third = Math.Max(1, points.Count / 3);
        Point first = points[third] - points[0], last = points[^1] - points[^(third + 1)];
        var turn = Math.Atan2(first.Cross(last), first.Dot(last));
        // Past half a turn the other way round is shorter, so the middle decides.
        var bulge = (points[points.Count / 2] - points[0]).Cross(points[^1] - points[0]);
        if (turn < -LeastTurn && bulge < 0)
        {
            throw new NoSolutionException(
                "corrections.mirrored",
                "measured.points",
                $"the points turn to the right: the template was read from the other end or the other face",
                $"points from the lead-in on, in a frame in which the panel turns left");
        }
    }

    /// <summary>Distances of the points from a face after the fit that makes the sum of their squares least.</summary>
    /// <param name="points">The points in order along the face [mm].</param>
    /// <param name="face">The face as a chain of straight pieces [mm].</param>
    /// <returns>[n] distances, positive to the right of the face [mm].</returns>
    public static double[] MissesOf(IReadOnlyList<Point> points, IReadOnlyList<Point> face)
    {
        var along = new double[face.Count];
        for (var i = 1; i < along.Length; i++)
            along[i] = along[i - 1] + (face[i] - face[i - 1]).Length;
        var from = new double[points.Count];
        for (var i = 1; i < from.Length; i++)
            from[i] = from[i - 1] + (points[i] - points[i - 1]).Length;

        // Where along the face the first point lies nobody measured.
        (Point[] Points, double Shift) best = ([], 0);
        var least = double.PositiveInfinity;
        var room = Math.Max(0, along[^1] - from[^1]);
        for (var start = 0; start < Starts; start++)
        {
            var shift = room * start / (Starts - 1);
            Point[] onto = [.. from.Select(own => PlaceAt(face, along, shift + own))];
            var fit = RigidFit.Of(points, onto);
            var sum = fit.Misses.Sum(miss => miss.Dot(miss));
            if (sum >= least)
                continue;
            least = sum;
            best = ([.. onto.Select((place, i) => place - fit.Misses[i])], shift);
        }

        return Settle(best.Points, face, [.. from.Select(own => PieceAt(along, best.Shift + own))]);
    }

    // Gauss-Newton on the distances square to the face, a step that brings nothing halved.
    private static double[] Settle(Point[] points, IReadOnlyList<Point> face, int[] pieces)
    {
        var (misses, squares) = Look(points, face, pieces);
        Span<double> normal = stackalloc double[12];
        for (var iteration = 0; iteration < MostIterations; iteration++)
        {
            var middle = 1.0 / points.Length * points.Aggregate((a, b) => a + b);
            normal.Clear();
            for (var i = 0; i < points.Length; i++)
                Add(normal, [squares[i].X, squares[i].Y, (points[i] - middle).Cross(squares[i]), -misses[i]]);
            if (!BorderedSystem.SolveDense(normal, 3))
                break;
            var (shift, turn) = (new Point(normal[3], normal[7]), normal[11]);
            var before = SumOf(misses);
            var share = Math.Min(1, MostTurn / Math.Max(MostTurn, Math.Abs(turn)));
            for (; share > LeastShare; share /= 2)
            {
                var direction = Point.Along(share * turn);
                Point[] moved = [.. points.Select(point => middle + (point - middle).TurnedTo(direction) + (share * shift))];
                var (then, square) = Look(moved, face, pieces);
                if (!(SumOf(then) < before))
                    continue;
                (points, misses, squares) = (moved, then, square);
                break;
            }

            if (share <= LeastShare || before - SumOf(misses) < Settled * before)
                break;
        }

        return misses;
    }

    private static double SumOf(double[] misses) => misses.Sum(miss => miss * miss);

    private static (double[] Misses, Point[] Squares) Look(Point[] points, IReadOnlyList<Point> face, int[] pieces)
    {
        var (misses, squares) = (new double[points.Length], new Point[points.Length]);
        for (var i = 0; i < points.Length; i++)
            (misses[i], squares[i]) = Nearest(points[i], face, ref pieces[i]);
        return (misses, squares);
    }

    private static void Add(Span<double> normal, ReadOnlySpan<double> row)
    {
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 4; j++)
                normal[(i * 4) + j] += row[i] * row[j];
        }
    }

    // From the piece that was nearest last: a face that curls round is not left for another part of it.
    private static (double Distance, Point Square) Nearest(Point point, IReadOnlyList<Point> face, ref int piece)
    {
        var off = OffPiece(point, face, piece);
        foreach (var step in (ReadOnlySpan<int>)[1, -1])
        {
            while (piece + step >= 0 && piece + step < face.Count - 1)
            {
                var other = OffPiece(point, face, piece + step);
                if (!(other.Dot(other) < off.Dot(off)))
                    break;
                (off, piece) = (other, piece + step);
            }
        }

        var right = -1 * (face[piece + 1] - face[piece]).Left();
        var length = off.Length;
        var side = off.Dot(right) < 0 ? -1 : 1;
        // Past its ends the face is looked at as it lies: the whole distance counts.
        return length > 0 ? (side * length, side / length * off) : (0, 1 / right.Length * right);
    }

    private static Point OffPiece(Point point, IReadOnlyList<Point> face, int piece)
    {
        var along = face[piece + 1] - face[piece];
        var share = Math.Clamp((point - face[piece]).Dot(along) / along.Dot(along), 0, 1);
        return point - face[piece] - (share * along);
    }

    private static Point PlaceAt(IReadOnlyList<Point> face, double[] along, double at)
    {
        var i = PieceAt(along, at);
        return face[i] + ((at - along[i]) / (along[i + 1] - along[i]) * (face[i + 1] - face[i]));
    }

    private static int PieceAt(double[] along, double at)
    {
        var i = Array.BinarySearch(along, at);
        return Math.Clamp(i >= 0 ? i : ~i - 1, 0, along.Length - 2);
    }
}
