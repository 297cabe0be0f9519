using Forming.Facets;
using Forming.Jobs;
using Forming.Prediction;
using Forming.Springback;
using MathNet.Numerics.Distributions;

namespace Forming.Outlook;

/// <summary>What errors of fold angles and marks do to the panel, independent fold by fold: the polygon's first-order sums.</summary>
internal static class FoldErrors
{
    /// <summary>Points at which the distribution of the largest facet is summed, and how many deviations they reach.</summary>
    private const int Points = 80;

    private const double Deviations = 5;

    /// <summary>
    /// Folds of different angle leave a curvature that changes along the facet: <c>k1 (1 - 2x/b)</c> with k1 = (e_j - e_(j+1))/b is
    /// k1 b²/(18 √3) high and slopes by k1 b/6. It crosses the facet's own ripple, to which it adds about half of that (simulated
    /// draws: 0.4 to 0.7).
    /// </summary>
    private static readonly double HeightPerAngle = Math.Sqrt(2) / (2 * 18 * Math.Sqrt(3));

    private static readonly double SlopePerAngle = Math.Sqrt(2) / (2 * 6);

    /// <summary>Influence of angles and marks; their outcomes are standard deviations.</summary>
    /// <param name="form">The form as folded.</param>
    /// <param name="scatter">How well it is folded.</param>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="loaded">Mean curvature under load [1/mm].</param>
    /// <param name="curvature">Curvature of the panel over the middle folds [1/mm]; 0 is flat.</param>
    /// <param name="facets">The facets with their ripples, or none.</param>
    /// <param name="finish">The panel's finish.</param>
    public static IEnumerable<Influence> Of(
        StandingForm form,
        Scatter scatter,
        BendingLaw law,
        double loaded,
        double curvature,
        IReadOnlyList<PredictedFacet> facets,
        Finish finish)
    {
        double u = scatter.FoldAngle.Radians, v = scatter.MarkMm;
        // Of a fold's error the panel keeps what its moment does not grow with.
        var kept = u * (1 - (law.At(loaded).TangentStiffness / law.Stiffness));
        var (angles, marks) = OfRadius(form, curvature);
        var (share, height) = OfRipple(facets, u, v, finish);
        // Ripple of both is one sum, and stands with the angles.
        yield return new(
            ScatterCause.FoldAngle,
            new(kept * angles, kept * Math.Sqrt(form.Folds), share.Deviation, height.Deviation),
            new(0, 0, share.Shift, height.Shift));
        yield return new(ScatterCause.Mark, new(v * marks, 0, 0, 0), default);
    }

    // A least-squares circle weighs the curvature at s, -1 to 1 along its stretch, by 15/8 (1 - s²)².
    private static (double PerAngle, double PerMark) OfRadius(StandingForm form, double curvature)
    {
        var (from, to) = form.MiddleFolds;
        double length = 0, along = 0, angles = 0, marks = 0, turn = 0;
        for (var j = from; j < to; j++)
            length += form.FacetsMm[j];
        if (!(curvature > 0 && length > 0))
            return (0, 0);
        for (var j = from; j <= to; j++)
        {
            var s = (2 * along / length) - 1;
            var weight = 15.0 / 8 * (1 - (s * s)) * (1 - (s * s));
            var slope = 15 / length * s * (1 - (s * s));
            angles += weight * weight;
            marks += slope * slope * form.FoldAngles[j] * form.FoldAngles[j];
            turn += weight * form.FoldAngles[j];
            along += j < to ? form.FacetsMm[j] : 0;
        }

        // With few folds that leaves out what moving the outer ones does to the length over which the bend is spread.
        return (Math.Sqrt(angles) / (length * curvature), Math.Max(Math.Sqrt(2) / length, turn > 0 ? Math.Sqrt(marks) / turn : 0));
    }

    private static ((double Shift, double Deviation) Share, (double Shift, double Deviation) Height) OfRipple(
        IReadOnlyList<PredictedFacet> facets, double u, double v, Finish finish)
    {
        List<(double Mean, double Deviation)> shares = new(facets.Count), heights = new(facets.Count);
        foreach (var facet in facets)
        {
            if (facet is not { IsFlatOfCurve: false, RippleMm: > 0, Slope.Radians: > 0 })
                continue;
            // The ripple grows with the square of the facet's width, its slope with the width.
            var wider = Math.Sqrt(2) * v / facet.WidthMm;
            var (ripple, slope) = (facet.RippleMm.Value, facet.Slope.Value.Radians);
            var byHeight = Math.Sqrt(Square(HeightPerAngle * u * facet.WidthMm) + Square(2 * wider * ripple));
            var bySlope = Math.Sqrt(Square(SlopePerAngle * u) + Square(wider * slope));
            heights.Add((ripple, byHeight));
            shares.Add(ripple / finish.RippleMm > slope / finish.Slope.Radians
                ? (ripple / finish.RippleMm, byHeight / finish.RippleMm)
                : (slope / finish.Slope.Radians, bySlope / finish.Slope.Radians));
        }

        return (LargestOf(shares), LargestOf(heights));
    }

    // Logarithm of the largest of independent normal values against the largest of their means: shift of its mean, and deviation, from
    // E M = U - ∫F, E M² = U² - ∫2xF.
    private static (double Shift, double Deviation) LargestOf(List<(double Mean, double Deviation)> values)
    {
        if (values.Count == 0)
            return default;
        var (largest, widest) = (values.Max(value => value.Mean), values.Max(value => value.Deviation));
        if (!(widest > 0))
            return default;
        var step = 2 * Deviations * widest / Points;
        var top = Deviations * widest;
        double whole = 0, moment = 0;
        for (var i = 0; i <= Points; i++)
        {
            var x = (i * step) - top;
            var below = i is 0 or Points ? 0.5 : 1.0;
            foreach (var (mean, spread) in values)
                below *= spread > 0 ? Normal.CDF(mean - largest, spread, x) : x >= mean - largest ? 1 : 0;
            whole += step * below;
            moment += step * 2 * x * below;
        }

        var shift = top - whole;
        var deviation = Math.Sqrt(Math.Max(0, (top * top) - moment - (shift * shift)));
        return (Math.Log(1 + (shift / largest)), deviation / (largest + shift));
    }

    private static double Square(double value) => value * value;
}
