using Forming.Layout;
using Forming.Results;
using MathNet.Numerics.LinearAlgebra;

namespace Forming.Inspection;

/// <summary>What a template along one edge of a tapered form shows: its folds are not square to the template.</summary>
/// <remarks>
/// The planned edge is seen in the plane that it lies in best. Its turn θ in space at a fold goes with the dihedral angle a by
/// <c>sin²(a/2) = (sin²(θ/2) - sin²((p - q)/2))/(sin p sin q)</c>, p and q between the fold line and the edge before and after it; by
/// what the template's turns and lengths differ from the planned ones, the edge's differ too.
/// </remarks>
internal sealed class TemplateEdge
{
    private readonly HingedForm _form;
    private readonly bool _isFar;
    private readonly Point3[] _edge;
    private readonly Point[] _seen;

    /// <summary>Looks along an edge.</summary>
    /// <param name="form">The form as planned.</param>
    /// <param name="isFar">Whether along the far edge.</param>
    public TemplateEdge(HingedForm form, bool isFar)
    {
        var folded = form.Folded();
        (_form, _isFar) = (form, isFar);
        _edge = [.. isFar ? folded.Far : folded.Near];
        _seen = Seen(_edge);
    }

    /// <summary>[n + 2] the planned edge as a template shows it.</summary>
    public IReadOnlyList<Point> Planned => _seen;

    /// <summary>From turns and lengths in the template to fold angles and facets.</summary>
    /// <param name="template">Lines through the template's points: turns between them, and lengths.</param>
    /// <param name="listed">The edge as its plan lists it.</param>
    /// <param name="path">Where the points are in the request.</param>
    /// <exception cref="NoSolutionException"><c>inspection.impossible-fold</c>: no fold turns the edge so little.</exception>
    public FoldedPolygon Dihedral(FoldedPolygon template, FoldedPolygon listed, string path)
    {
        var n = _form.Folds;
        var angles = new double[n];
        for (var i = 0; i < n; i++)
        {
            var (before, after) = (Step(i), Step(i + 1));
            var off = template.FoldAngles[i] - Between(_seen[i + 1] - _seen[i], _seen[i + 2] - _seen[i + 1]);
            var turn = Math.Atan2(before.Cross(after).Length, before.Dot(after)) + off;
            var (p, q) = (SlantOf(i, i), SlantOf(i, i + 1));
            var square = (Squared(turn / 2) - Squared((p - q) / 2)) / (Math.Sin(p) * Math.Sin(q));
            if (!(square >= 0 && square < 1 && turn > 0))
            {
                throw new NoSolutionException(
                    "inspection.impossible-fold",
                    FormattableString.Invariant($"{path}[{i + 1}]"),
                    $"between flats {i + 1} and {i + 2} the template turns by {Figure.Angle(template.FoldAngles[i])}: the edge would turn further without a fold",
                    $"points along the edge of the form; angles with a 0 in place of points for a fold that was not made");
            }

            angles[i] = 2 * Math.Asin(Math.Sqrt(square));
        }

        var flats = listed.FlatsMm.ToArray();
        for (var j = 1; j < n; j++)
            flats[j] *= template.FlatsMm[j] / (_seen[j + 1] - _seen[j]).Length;
        return new(flats, angles);

        Point3 Step(int j) => _edge[j + 1] - _edge[j];

        static double Between(Point one, Point other) => Math.Atan2(one.Cross(other), one.Dot(other));

        static double Squared(double angle) => Math.Sin(angle) * Math.Sin(angle);
    }

    // Between a fold line and the edge along a flat beside it.
    private double SlantOf(int fold, int flat)
    {
        var edge = _isFar ? _form.Far : _form.Near;
        Point line = _form.Far[fold + 1] - _form.Near[fold + 1], along = edge[flat + 1] - edge[flat];
        return Math.Atan2(Math.Abs(line.Cross(along)), line.Dot(along));
    }

    // In the plane of the two directions in which the points lie apart the most, so that they turn left, x along the lead-in.
    private static Point[] Seen(Point3[] points)
    {
        var mean = 1.0 / points.Length * points.Aggregate((a, b) => a + b);
        var spread = Matrix<double>.Build.Dense(3, 3);
        foreach (var point in points)
        {
            var from = Vector<double>.Build.Dense([(point - mean).X, (point - mean).Y, (point - mean).Z]);
            spread += from.OuterProduct(from);
        }

        var least = spread.Evd(Symmetricity.Symmetric).EigenVectors.Column(0);
        var normal = new Point3(least[0], least[1], least[2]);
        // Folds turn right-handed about z, near to far.
        normal = Math.CopySign(1, normal.Z) * normal;
        var start = points[1] - points[0];
        var x = (start - (start.Dot(normal) * normal)).Unit();
        var y = normal.Cross(x);
        return [.. points.Select(point => new Point((point - points[0]).Dot(x), (point - points[0]).Dot(y)))];
    }
}
