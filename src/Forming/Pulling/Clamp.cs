using Forming.Facets;

namespace Forming.Pulling;

/// <summary>The clamp that holds form and panel to the bench.</summary>
/// <param name="GapMm">From the first fold's tangent line back to the clamp [mm], at least 0; null where the plan chooses.</param>
/// <param name="HeightMm">Room it needs above the lead-in [mm], at least 0.</param>
/// <param name="DepthMm">How deep it bears on the lead-in [mm], &gt; 0.</param>
public sealed record Clamp(double? GapMm, double HeightMm, double DepthMm)
{
    /// <summary>Nearer than this the clamp is right up to the fold: no rule shows less [mm].</summary>
    private const double LeastShownMm = 0.001;

    /// <summary>From the first fold's tangent line back to the clamp [mm], at least 0; null where the plan chooses.</summary>
    public double? GapMm { get; init; } = GapMm < LeastShownMm ? 0 : GapMm;

    /// <summary>Push of the first fold over M/d, clamped a distance d behind it: one simulated case and the propped beam.</summary>
    internal const double PushFactor = 1.5;

    /// <summary>Where the plan puts it, 40 mm high, bearing 25 mm deep: an assumption.</summary>
    public static Clamp Default { get; } = new(null, 40, 25);

    /// <summary>Where the clamp goes if the plan chooses: right up to a half first fold, half a facet behind a full one.</summary>
    /// <param name="ends">Half or full folds at the ends.</param>
    /// <param name="firstStraightMm">Straight part of the first facet [mm]; 0 where there is none.</param>
    /// <returns>From the first fold's tangent line back to the clamp [mm].</returns>
    /// <remarks>Right up to a full first fold the panel mostly does not touch the folds in order. Source key <c>wrap-model</c>.</remarks>
    public static double ChosenGapMm(SteppingEnds ends, double firstStraightMm) => ends == SteppingEnds.Full ? firstStraightMm / 2 : 0;

    /// <summary>What it has to hold down against the push of the first fold.</summary>
    /// <param name="gapMm">From the first fold's tangent line back to the clamp [mm], at least 0.</param>
    /// <param name="momentNmm">Moment of the panel at the first fold [N·mm].</param>
    /// <returns>Load [N]: the moment over the depth on which it bears, or the push of a fold that lies before it.</returns>
    public double LoadN(double gapMm, double momentNmm) => gapMm > 0 ? PushFactor * momentNmm / gapMm : momentNmm / DepthMm;
}

/// <summary>Room for the clamp under a form that curls over its own lead-in.</summary>
public static class ClampRoom
{
    /// <summary>Least gap above the lead-in's inside face, behind the clamp's gap.</summary>
    /// <param name="insideProfile">The form's inside face, end of the lead-in to end of the lead-out [mm].</param>
    /// <param name="gapMm">From the first fold's tangent line back to the clamp [mm], at least 0.</param>
    /// <returns>Height of the lowest overhang above the lead-in [mm], or null where nothing overhangs it.</returns>
    public static double? LeastGapMm(IReadOnlyList<Point> insideProfile, double gapMm)
    {
        var leadIn = insideProfile[0];
        var firstFold = insideProfile[1];
        double left = leadIn.X, right = firstFold.X - gapMm;
        double? least = null;
        for (var i = 2; i < insideProfile.Count; i++)
        {
            Point a = insideProfile[i - 1], b = insideProfile[i];
            if (Math.Max(a.X, b.X) < left || Math.Min(a.X, b.X) >= right || right < left)
                continue;
            var lowest = Math.Min(HeightAt(a, b, Math.Clamp(a.X, left, right)), HeightAt(a, b, Math.Clamp(b.X, left, right)));
            least = Math.Min(least ?? double.PositiveInfinity, lowest - leadIn.Y);
        }

        return least;
    }

    private static double HeightAt(Point a, Point b, double x) =>
        a.X == b.X ? Math.Min(a.Y, b.Y) : a.Y + ((b.Y - a.Y) * (x - a.X) / (b.X - a.X));
}
