namespace Forming.Curves.Fitting;

/// <summary>
/// Points in groups of neighbours. A fit traces its curve once a group: thousands of points then cost little more than the
/// groups do, and each point is still measured from the curve itself. The groups of a reversed list are the reversed groups.
/// </summary>
/// <param name="Points">[n] the points, the first at the origin.</param>
/// <param name="Bounds">[groups + 1] index of the first point of each group; the last is n.</param>
/// <param name="Cancellation">Cancels the calculation.</param>
internal sealed record Samples(Point[] Points, int[] Bounds, CancellationToken Cancellation)
{
    /// <summary>More points than this are taken in groups: the curve between two stations is then an arc to 1e-6 of its length.</summary>
    private const int MostGroups = 127;

    /// <summary>How many groups.</summary>
    public int GroupCount => Bounds.Length - 1;

    /// <summary>Whether each point is a group.</summary>
    public bool AreSingle => GroupCount == Points.Length;

    /// <summary>The points in as many groups as a fit needs.</summary>
    /// <param name="points">[n] the points, the first at the origin.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static Samples Of(Point[] points, CancellationToken cancellation) =>
        new(points, BoundsOf(points.Length, points.Length > MostGroups ? MostGroups : points.Length), cancellation);

    /// <summary>The same points one by one.</summary>
    public Samples OneByOne() => this with { Bounds = BoundsOf(Points.Length, Points.Length) };

    /// <summary>Bounds of groups of nearly equal size, the same counted from either end where the number of groups is odd.</summary>
    /// <param name="count">How many points.</param>
    /// <param name="groups">How many groups.</param>
    public static int[] BoundsOf(int count, int groups) =>
        [.. Enumerable.Range(0, groups + 1).Select(g => groups == count ? g : ((2 * g * count) + groups) / (2 * groups))];
}
