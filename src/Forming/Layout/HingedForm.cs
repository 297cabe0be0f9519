namespace Forming.Layout;

/// <summary>
/// A folded form with fold lines that need not be parallel, by its contact side alone: plane facets hinged at sharp mold lines.
/// </summary>
/// <remarks>
/// It is kept unfolded: the facets side by side in a plane, x along the lead-in's edge, y to the far end, the start of the near edge at the
/// origin. Folded, the lead-in stays where it is, in the plane y = 0 of space with z to the far end, and the rest turns left towards +y:
/// every fold is one turn about its own line, so a point comes to <c>G1(G2(…Gn(p)))</c>.
/// </remarks>
/// <param name="Near">[n + 2] start, mold lines and end along the near edge, unfolded [mm].</param>
/// <param name="Far">[n + 2] the same along the far edge.</param>
/// <param name="FoldAngles">[n] dihedral fold angles from the lead-in [rad].</param>
public sealed record HingedForm(IReadOnlyList<Point> Near, IReadOnlyList<Point> Far, IReadOnlyList<double> FoldAngles)
{
    /// <summary>Number of folds.</summary>
    public int Folds => FoldAngles.Count;

    /// <summary>Sum of the fold angles [rad].</summary>
    public double Sweep => FoldAngles.Sum();

    /// <summary>Unfolds a form in space.</summary>
    /// <param name="near">[n + 2] start, mold lines and end along the near edge; each facet's four corners in one plane [mm].</param>
    /// <param name="far">[n + 2] the same along the far edge.</param>
    /// <param name="foldAngles">[n] dihedral fold angles from the lead-in [rad].</param>
    public static HingedForm Unfolded(IReadOnlyList<Point3> near, IReadOnlyList<Point3> far, IReadOnlyList<double> foldAngles)
    {
        Point[] flatNear = new Point[near.Count], flatFar = new Point[far.Count];
        // The lead-in's edge runs along x.
        var (edge, start) = ((near[1] - near[0]).Unit(), far[0] - near[0]);
        var along = start.Dot(edge);
        flatFar[0] = new(along, (start - (along * edge)).Length);
        for (var j = 0; j + 1 < near.Count; j++)
        {
            var line = (far[j] - near[j]).Unit();
            var onwards = near[j + 1] + far[j + 1] - near[j] - far[j];
            var across = (onwards - (onwards.Dot(line) * line)).Unit();
            var up = 1 / (flatFar[j] - flatNear[j]).Length * (flatFar[j] - flatNear[j]);
            var (from, origin) = (flatNear[j], near[j]);
            flatNear[j + 1] = InPlane(near[j + 1]);
            flatFar[j + 1] = InPlane(far[j + 1]);

            Point InPlane(Point3 point) => from + ((point - origin).Dot(line) * up) - ((point - origin).Dot(across) * up.Left());
        }

        return new(flatNear, flatFar, foldAngles);
    }

    /// <summary>Folds it.</summary>
    public HingedShape Folded()
    {
        Point3[] near = new Point3[Near.Count], far = new Point3[Far.Count];
        var motions = new SpaceMotion[Folds + 1];
        motions[0] = SpaceMotion.None;
        for (var j = 0; j < Near.Count; j++)
        {
            // A mold line belongs to the facets on both sides of it alike.
            var motion = motions[Math.Max(0, j - 1)];
            (near[j], far[j]) = (motion.Moved(InSpace(Near[j])), motion.Moved(InSpace(Far[j])));
            if (j >= 1 && j <= Folds)
                motions[j] = motion.After(FoldAt(j - 1, FoldAngles[j - 1]));
        }

        return new(near, far, motions);
    }

    /// <summary>The turn of all that is beyond a fold, about its line on the unfolded form.</summary>
    /// <param name="fold">Index of the fold.</param>
    /// <param name="angle">How far [rad].</param>
    public SpaceMotion FoldAt(int fold, double angle) => SpaceMotion.About(InSpace(Near[fold + 1]), AxisOf(fold), angle);

    /// <summary>Direction of a fold line on the unfolded form, near to far.</summary>
    /// <param name="fold">Index of the fold.</param>
    public Point3 AxisOf(int fold) => InSpace(Far[fold + 1] - Near[fold + 1]).Unit();

    /// <summary>In the plane of the unfolded form, square to a fold line, onwards.</summary>
    /// <param name="fold">Index of the fold.</param>
    public Point3 AcrossOf(int fold) => InSpace(-1 / (Far[fold + 1] - Near[fold + 1]).Length * (Far[fold + 1] - Near[fold + 1]).Left());

    /// <summary>Length of a fold line [mm].</summary>
    /// <param name="fold">Index of the fold.</param>
    public double LengthOf(int fold) => (Far[fold + 1] - Near[fold + 1]).Length;

    /// <summary>Lead-in, facets and lead-out along an edge, mold line to mold line [mm].</summary>
    /// <param name="isFar">Whether along the far edge.</param>
    public double[] FlatsMm(bool isFar)
    {
        var edge = isFar ? Far : Near;
        return [.. Enumerable.Range(0, Folds + 1).Select(j => (edge[j + 1] - edge[j]).Length)];
    }

    /// <summary>The same form with other facets between its folds; edges keep their headings, leads their lengths.</summary>
    /// <param name="nearMm">[n - 1] facets along the near edge [mm].</param>
    /// <param name="farMm">[n - 1] facets along the far edge [mm].</param>
    public HingedForm WithFacets(IReadOnlyList<double> nearMm, IReadOnlyList<double> farMm) =>
        this with { Near = Stretched(Near, nearMm), Far = Stretched(Far, farMm) };

    /// <summary>Its section at a place along the folds: flats square to the folds on both sides of them.</summary>
    /// <param name="place">The place, near end 0, far end 1.</param>
    /// <remarks>As the chord of a strip about the point where both fold lines meet.</remarks>
    public FoldedPolygon SectionAt(double place)
    {
        var flats = new double[Folds + 1];
        for (var j = 0; j < flats.Length; j++)
        {
            Point line = Along(j) + Along(j + 1), across = On(j + 1) - On(j);
            flats[j] = Math.Abs(line.Cross(across)) / line.Length;
        }

        return new(flats, FoldAngles);

        Point Along(int j) => 1 / (Far[j] - Near[j]).Length * (Far[j] - Near[j]);

        Point On(int j) => Near[j] + (place * (Far[j] - Near[j]));
    }

    /// <summary>A point of the unfolded form in the space it is folded in.</summary>
    /// <param name="flat">The point [mm].</param>
    public static Point3 InSpace(Point flat) => new(flat.X, 0, flat.Y);

    private static Point[] Stretched(IReadOnlyList<Point> edge, IReadOnlyList<double> facets)
    {
        var moved = new Point[edge.Count];
        moved[0] = edge[0];
        for (var j = 0; j + 1 < moved.Length; j++)
        {
            var step = edge[j + 1] - edge[j];
            var isLead = j == 0 || j == moved.Length - 2;
            moved[j + 1] = moved[j] + ((isLead ? 1 : facets[j - 1] / step.Length) * step);
        }

        return moved;
    }
}

/// <summary>A form folded in space, its lead-in held.</summary>
/// <param name="Near">[n + 2] start, mold lines and end along the near edge [mm].</param>
/// <param name="Far">[n + 2] the same along the far edge.</param>
/// <param name="Motions">[n + 1] how the lead-in, each facet and the lead-out came from the unfolded form.</param>
public sealed record HingedShape(IReadOnlyList<Point3> Near, IReadOnlyList<Point3> Far, IReadOnlyList<SpaceMotion> Motions)
{
    /// <summary>Square to a flat, to the inside of the form.</summary>
    /// <param name="flat">Index of the flat, the lead-in 0.</param>
    public Point3 Inward(int flat) => Motions[flat].Y;

    /// <summary>Direction of a fold line, near to far.</summary>
    /// <param name="fold">Index of the fold.</param>
    public Point3 LineOf(int fold) => (Far[fold + 1] - Near[fold + 1]).Unit();
}
