namespace Forming.Drawing.Shapes;

/// <summary>A closed mesh: triangles counter-clockwise as seen from outside.</summary>
/// <param name="Corners">[n] corners, each once [mm].</param>
/// <param name="Triangles">[3 m] corner numbers, three to a triangle.</param>
internal sealed record Solid(IReadOnlyList<Point3> Corners, IReadOnlyList<int> Triangles)
{
    /// <summary>A bent sheet drawn out along its folds.</summary>
    /// <param name="near">Its section at z = 0.</param>
    /// <param name="far">Its section at the far end, point for point that of the near end.</param>
    /// <param name="widthMm">Along the folds [mm], &gt; 0.</param>
    public static Solid Between(Ribbon near, Ribbon far, double widthMm)
    {
        var count = near.Inner.Count;
        List<Point3> corners = new(4 * count);
        foreach (var (ribbon, z) in new[] { (near, 0.0), (far, widthMm) })
        {
            corners.AddRange(ribbon.Inner.Select(point => new Point3(point.X, point.Y, z)));
            corners.AddRange(ribbon.Outer.Select(point => new Point3(point.X, point.Y, z)));
        }

        // Four rails along the sheet. Seen from the near end (z towards the viewer is far), the inside face lies to the left.
        int innerNear = 0, outerNear = count, innerFar = 2 * count, outerFar = 3 * count;
        List<int> triangles = new(24 * count);
        for (var i = 0; i < count - 1; i++)
        {
            Quad(innerNear + i, innerFar + i, innerFar + i + 1, innerNear + i + 1);
            Quad(outerNear + i, outerNear + i + 1, outerFar + i + 1, outerFar + i);
            Quad(innerNear + i, innerNear + i + 1, outerNear + i + 1, outerNear + i);
            Quad(innerFar + i, outerFar + i, outerFar + i + 1, innerFar + i + 1);
        }

        var end = count - 1;
        Quad(innerNear, outerNear, outerFar, innerFar);
        Quad(innerNear + end, innerFar + end, outerFar + end, outerNear + end);
        return new(corners, triangles);

        void Quad(int a, int b, int c, int d) => triangles.AddRange([a, b, c, a, c, d]);
    }
}
