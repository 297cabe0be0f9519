namespace Forming.Drawing.Shapes;

/// <summary>A closed mesh: triangles counter-clockwise as seen from outside.</summary>
/// <param name="Corners">[n] corners, each once [mm].</param>
/// <param name="Triangles">[3 m] corner numbers, three to a triangle.</param>
internal sealed record Solid(IReadOnlyList<Point3> Corners, IReadOnlyList<int> Triangles)
{
    /// <summary>A sheet as a solid.</summary>
    /// <param name="sheet">The sheet.</param>
    public static Solid Of(RuledSheet sheet)
    {
        var count = sheet.InnerNear.Count;
        // Four rails along the sheet.
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
        return new([.. sheet.InnerNear, .. sheet.OuterNear, .. sheet.InnerFar, .. sheet.OuterFar], triangles);

        void Quad(int a, int b, int c, int d) => triangles.AddRange([a, b, c, a, c, d]);
    }
}
