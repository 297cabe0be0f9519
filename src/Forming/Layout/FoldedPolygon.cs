namespace Forming.Layout;

/// <summary>
/// A folded form by its contact side alone: flats that meet at mold lines. It starts at the origin, heading +x, turning left.
/// </summary>
/// <param name="FlatsMm">[n + 1] lead-in, facets, lead-out, mold line to mold line [mm].</param>
/// <param name="FoldAngles">[n] fold angles from the lead-in [rad].</param>
public sealed record FoldedPolygon(IReadOnlyList<double> FlatsMm, IReadOnlyList<double> FoldAngles)
{
    /// <summary>Number of folds.</summary>
    public int Folds => FoldAngles.Count;

    /// <summary>Sum of the fold angles [rad].</summary>
    public double Sweep => FoldAngles.Sum();

    /// <summary>The polygon of a plan's stations.</summary>
    /// <param name="stations">The stations, from the lead-in.</param>
    /// <param name="leadInMm">Lead-in, to the first mold line [mm].</param>
    public static FoldedPolygon Of(IReadOnlyList<Station> stations, double leadInMm) => new(
        [leadInMm, .. stations.Select(station => station.FacetAfterMm)],
        [.. stations.Select(station => station.FoldAngle.Radians)]);

    /// <summary>[n + 2] the start, every mold line, the end [mm].</summary>
    public Point[] Vertices()
    {
        var vertices = new Point[Folds + 2];
        double turn = 0;
        for (var j = 0; j <= Folds; j++)
        {
            vertices[j + 1] = vertices[j] + (FlatsMm[j] * Point.Along(turn));
            if (j < Folds)
                turn += FoldAngles[j];
        }

        return vertices;
    }

    /// <summary>Mean radius from the middle of the first facet to the middle of the last: their length over their turn.</summary>
    /// <returns>The radius on the contact side [mm], or null with fewer than three folds, where no fold lies between.</returns>
    public double? MeanRadiusMm()
    {
        if (Folds < 3)
            return null;
        double length = (FlatsMm[1] + FlatsMm[Folds - 1]) / 2, turn = 0;
        for (var j = 1; j < Folds - 1; j++)
        {
            length += j > 1 ? FlatsMm[j] : 0;
            turn += FoldAngles[j];
        }

        // With three folds the first facet and the last are the two that meet at the middle fold.
        return turn > 0 ? length / turn : null;
    }
}
