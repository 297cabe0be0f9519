namespace Forming.Drawing.Shapes;

/// <summary>A bent sheet in space, straight along its rulings: both faces at both ends, point for point.</summary>
/// <param name="InnerNear">[n] inside face, near end [mm].</param>
/// <param name="InnerFar">[n] inside face, far end [mm].</param>
/// <param name="OuterNear">[n] outside face, near end [mm].</param>
/// <param name="OuterFar">[n] outside face, far end [mm].</param>
internal sealed record RuledSheet(
    IReadOnlyList<Point3> InnerNear, IReadOnlyList<Point3> InnerFar, IReadOnlyList<Point3> OuterNear, IReadOnlyList<Point3> OuterFar)
{
    /// <summary>Corners nearer than this are one [mm].</summary>
    private const double SameMm = 1e-9;

    /// <summary>The near end, seen along the folds.</summary>
    public Ribbon NearEnd => new([.. InnerNear.Select(Flat)], [.. OuterNear.Select(Flat)]);

    /// <summary>The far end, seen along the folds.</summary>
    public Ribbon FarEnd => new([.. InnerFar.Select(Flat)], [.. OuterFar.Select(Flat)]);

    /// <summary>A section drawn out along parallel folds.</summary>
    /// <param name="section">The section.</param>
    /// <param name="widthMm">Along the folds [mm].</param>
    public static RuledSheet Of(Ribbon section, double widthMm)
    {
        return new(At(section.Inner, 0), At(section.Inner, widthMm), At(section.Outer, 0), At(section.Outer, widthMm));

        static Point3[] At(IReadOnlyList<Point> face, double z) => [.. face.Select(point => new Point3(point.X, point.Y, z))];
    }

    /// <summary>A sheet by its outside face.</summary>
    /// <param name="near">[n] points, near end [mm].</param>
    /// <param name="far">[n] points, far end [mm].</param>
    /// <param name="thickness">Thickness [mm].</param>
    public static RuledSheet Inside(IReadOnlyList<Point3> near, IReadOnlyList<Point3> far, double thickness)
    {
        (near, far) = WithoutEmptyFlats(near, far);
        var steps = Steps(near, far);
        return new(Moved(near, steps, thickness), Moved(far, steps, thickness), near, far);
    }

    /// <summary>A sheet by its inside face.</summary>
    /// <param name="near">[n] points, near end [mm].</param>
    /// <param name="far">[n] points, far end [mm].</param>
    /// <param name="thickness">Thickness [mm].</param>
    public static RuledSheet Outside(IReadOnlyList<Point3> near, IReadOnlyList<Point3> far, double thickness)
    {
        (near, far) = WithoutEmptyFlats(near, far);
        var steps = Steps(near, far);
        return new(near, far, Moved(near, steps, -thickness), Moved(far, steps, -thickness));
    }

    // A lead of no length has no plane of its own, so its corners are one.
    private static (Point3[] Near, Point3[] Far) WithoutEmptyFlats(IReadOnlyList<Point3> near, IReadOnlyList<Point3> far)
    {
        int[] kept = [.. Enumerable.Range(0, near.Count)
            .Where(i => i == 0 || Math.Max((near[i] - near[i - 1]).Length, (far[i] - far[i - 1]).Length) > SameMm)];
        return ([.. kept.Select(i => near[i])], [.. kept.Select(i => far[i])]);
    }

    private static Point3[] Moved(IReadOnlyList<Point3> face, Point3[] steps, double by) =>
        [.. face.Select((point, i) => point + (by * steps[i]))];

    // From a meeting line of two facets to that of the two moved by 1: (n1 + n2)/(1 + n1·n2).
    private static Point3[] Steps(IReadOnlyList<Point3> near, IReadOnlyList<Point3> far)
    {
        var normals = new Point3[near.Count - 1];
        for (var i = 0; i < normals.Length; i++)
            normals[i] = (far[i] - near[i]).Cross(near[i + 1] - near[i] + (far[i + 1] - far[i])).Unit();
        var steps = new Point3[near.Count];
        for (var i = 0; i < steps.Length; i++)
        {
            Point3 before = normals[Math.Max(0, i - 1)], after = normals[Math.Min(i, normals.Length - 1)];
            steps[i] = 1 / (1 + before.Dot(after)) * (before + after);
        }

        return steps;
    }

    private static Point Flat(Point3 point) => new(point.X, point.Y);
}
