namespace Forming.Pulling;

/// <summary>The clamp that holds form and panel to the bench.</summary>
/// <param name="GapMm">From the first fold back to the clamp [mm], &gt; 0.</param>
/// <param name="HeightMm">Room it needs above the lead-in [mm], at least 0.</param>
public sealed record Clamp(double GapMm, double HeightMm)
{
    /// <summary>25 mm back, 40 mm high: an assumption.</summary>
    public static Clamp Default { get; } = new(25, 40);
}

/// <summary>Room for the clamp under a form that curls over its own lead-in.</summary>
public static class ClampRoom
{
    /// <summary>Least gap above the lead-in's inside face, behind the clamp's gap.</summary>
    /// <param name="insideProfile">The form's inside face, end of the lead-in to end of the lead-out [mm].</param>
    /// <param name="clamp">The clamp.</param>
    /// <returns>Height of the lowest overhang above the lead-in [mm], or null where nothing overhangs it.</returns>
    public static double? LeastGapMm(IReadOnlyList<Point> insideProfile, Clamp clamp)
    {
        var leadIn = insideProfile[0];
        var firstFold = insideProfile[1];
        double left = leadIn.X, right = firstFold.X - clamp.GapMm;
        double? least = null;
        for (var i = 2; i < insideProfile.Count; i++)
        {
            Point a = insideProfile[i - 1], b = insideProfile[i];
            if (Math.Max(a.X, b.X) < left || Math.Min(a.X, b.X) > right || right < left)
                continue;
            var lowest = Math.Min(HeightAt(a, b, Math.Clamp(a.X, left, right)), HeightAt(a, b, Math.Clamp(b.X, left, right)));
            least = Math.Min(least ?? double.PositiveInfinity, lowest - leadIn.Y);
        }

        return least;
    }

    private static double HeightAt(Point a, Point b, double x) =>
        a.X == b.X ? Math.Min(a.Y, b.Y) : a.Y + ((b.Y - a.Y) * (x - a.X) / (b.X - a.X));
}
