namespace Forming.Drawing.Shapes;

/// <summary>A bent sheet in section: its two faces, point opposite point. Section frame: y up.</summary>
/// <param name="Inner">[n] points of the face on the inside of the bend [mm].</param>
/// <param name="Outer">[n] points of the other face [mm].</param>
internal sealed record Ribbon(IReadOnlyList<Point> Inner, IReadOnlyList<Point> Outer)
{
    /// <summary>The outline: the outer face forth, the inner face back.</summary>
    public IEnumerable<Point> Outline => Outer.Concat(Inner.Reverse());

    /// <summary>Length of the first straight piece [mm].</summary>
    public double FirstMm => (Inner[1] - Inner[0]).Length;

    /// <summary>Length of the last straight piece [mm].</summary>
    public double LastMm => (Inner[^1] - Inner[^2]).Length;

    /// <summary>A sheet by its inside face.</summary>
    /// <param name="inner">[n] points of the inside face, n ≥ 2 [mm].</param>
    /// <param name="thickness">Thickness, to the right of the way along the face [mm].</param>
    public static Ribbon Under(IReadOnlyList<Point> inner, double thickness)
    {
        var distinct = Distinct(inner);
        var outer = new Point[distinct.Count];
        for (var i = 0; i < outer.Length; i++)
        {
            // Half-way between the chords before and after; at an end the chord itself, which a flat makes exact.
            var before = Heading(distinct, Math.Max(0, i - 1));
            var after = Heading(distinct, Math.Min(i, distinct.Count - 2));
            var middle = before + after;
            outer[i] = distinct[i] - (thickness / middle.Length * middle.Left());
        }

        return new(distinct, outer);
    }

    /// <summary>A sheet by its middle.</summary>
    /// <param name="middle">[n] points of the middle of the sheet, n ≥ 2 [mm].</param>
    /// <param name="thickness">Thickness, half of it to either side [mm].</param>
    public static Ribbon About(IReadOnlyList<Point> middle, double thickness) =>
        new(Under(middle, -thickness / 2).Outer, Under(middle, thickness / 2).Outer);

    /// <summary>The same sheet with its first and last straight piece cut short where they are longer than wanted.</summary>
    /// <param name="firstMm">Most of the first [mm].</param>
    /// <param name="lastMm">Most of the last [mm].</param>
    public Ribbon CutShort(double firstMm, double lastMm)
    {
        double first = Math.Min(1, firstMm / FirstMm), last = Math.Min(1, lastMm / LastMm);
        return new(Cut(Inner), Cut(Outer));

        Point[] Cut(IReadOnlyList<Point> face) =>
            [face[1] + (first * (face[0] - face[1])), .. face.Skip(1).SkipLast(1), face[^2] + (last * (face[^1] - face[^2]))];
    }

    /// <summary>The same inner face with a sheet a given number of times as thick.</summary>
    /// <param name="factor">How many times.</param>
    public Ribbon ThickenedOutward(double factor) => this with { Outer = Between(Inner, Outer, factor) };

    /// <summary>The same outer face with a sheet a given number of times as thick.</summary>
    /// <param name="factor">How many times.</param>
    public Ribbon ThickenedInward(double factor) => this with { Inner = Between(Outer, Inner, factor) };

    private static Point[] Between(IReadOnlyList<Point> kept, IReadOnlyList<Point> moved, double factor) =>
        [.. kept.Zip(moved, (from, to) => from + (factor * (to - from)))];

    /// <summary>The same sheet without its first straight piece.</summary>
    public Ribbon WithoutFirst() => new([.. Inner.Skip(1)], [.. Outer.Skip(1)]);

    /// <summary>The same sheet with a mirrored copy joined to its end.</summary>
    public Ribbon WithMirroredHalf()
    {
        var end = Inner[^1];
        var axis = Heading(Inner, Inner.Count - 2);
        return new(Mirrored(Inner), Mirrored(Outer));

        List<Point> Mirrored(IReadOnlyList<Point> face) =>
            [.. face, .. face.Reverse().Skip(1).Select(point => point - (2 * (point - end).Dot(axis) * axis))];
    }

    private static Point Heading(IReadOnlyList<Point> points, int from)
    {
        var chord = points[from + 1] - points[from];
        return 1 / chord.Length * chord;
    }

    private static List<Point> Distinct(IReadOnlyList<Point> points)
    {
        var distinct = new List<Point>(points.Count) { points[0] };
        foreach (var point in points)
        {
            if ((point - distinct[^1]).Length > 1e-9)
                distinct.Add(point);
        }

        return distinct;
    }
}
