using MathNet.Numerics.LinearAlgebra;

namespace Forming.Tests.Curves;

/// <summary>The largest distance of points from a curve that may be shifted and turned, but not bent, to lie among them.</summary>
internal static class RigidMiss
{
    /// <summary>Least squares on normal distances, a few rounds of the linear problem.</summary>
    /// <param name="points">The points.</param>
    /// <param name="curve">Close-set points of the curve, about where it is to lie.</param>
    public static double Of(Point[] points, Point[] curve)
    {
        for (var round = 0; ; round++)
        {
            var feet = points.Select(p => Foot(p, curve)).ToArray();
            if (round == 4) return feet.Max(f => Math.Abs(f.Miss));
            var rows = Matrix<double>.Build.Dense(points.Length, 3, (j, c) => c switch
            {
                0 => feet[j].Normal.X,
                1 => feet[j].Normal.Y,
                _ => feet[j].Place.Left().Dot(feet[j].Normal),
            });
            var move = rows.QR().Solve(Vector<double>.Build.Dense([.. feet.Select(f => f.Miss)]));
            var (along, shift) = (Point.Along(move[2]), new Point(move[0], move[1]));
            curve = [.. curve.Select(p => new Point(along.Dot(new(p.X, -p.Y)), along.Dot(new(p.Y, p.X))) + shift)];
        }
    }

    private static (Point Place, Point Normal, double Miss) Foot(Point p, Point[] curve)
    {
        var nearest = Enumerable.Range(1, curve.Length - 2).MinBy(i => (p - curve[i]).Length);
        var chord = curve[nearest + 1] - curve[nearest - 1];
        var normal = (1 / chord.Length * chord).Left();
        return (curve[nearest], normal, (p - curve[nearest]).Dot(normal));
    }
}
