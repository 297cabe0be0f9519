using Forming.Facets;
using Forming.Pulling;
using Forming.Springback;

namespace Forming.Prediction;

/// <summary>Where the folds of a standing form meet the panel, and how far it bends the panel between them.</summary>
/// <param name="AlongMm">[m] from the curve's first tangent point along the panel's mid surface [mm].</param>
/// <param name="Curvatures">[m - 1] curvature of the mid surface under load over each facet [1/mm]; 0 over a flat of the curve.</param>
/// <param name="IsFlat">[m - 1] whether the wanted curve is flat over the facet.</param>
/// <param name="EndMm">Where the form ends to bend the panel [mm]: at a half last fold, half a facet past a full one.</param>
internal sealed record FoldPlaces(double[] AlongMm, double[] Curvatures, bool[] IsFlat, double EndMm)
{
    /// <summary>Lays a panel over a form.</summary>
    /// <param name="form">The form.</param>
    /// <param name="ends">Half or full folds at its ends.</param>
    /// <param name="wanted">The wanted curve, whose flats the form does not bend; null has none.</param>
    /// <param name="panelThickness">Thickness of the panel [mm].</param>
    public static FoldPlaces Of(StandingForm form, SteppingEnds ends, WantedCurve? wanted, double panelThickness)
    {
        var count = form.FacetsMm.Count;
        double[] along = new double[count + 1], curvatures = new double[count];
        var isFlat = new bool[count];
        if (ends == SteppingEnds.Full)
            along[0] = Arc(0, startsStretch: false, endsStretch: count == 1).Length / 2;
        for (var j = 0; j < count; j++)
        {
            isFlat[j] = IsFlatAt(along[j] + (form.StraightMm(j) / 2));
            if (isFlat[j])
            {
                along[j + 1] = along[j] + form.StraightMm(j);
                continue;
            }

            // With half ends the end folds of a stretch are at its tangent points and turn the panel on one side only.
            var next = along[j] + form.StraightMm(j) + ((j + 1 < count ? form.StraightMm(j + 1) : 0) / 2);
            var arc = Arc(j, j == 0 || isFlat[j - 1], j == count - 1 || IsFlatAt(next));
            curvatures[j] = arc.Curvature;
            along[j + 1] = along[j] + arc.Length;
        }

        var beyond = ends == SteppingEnds.Full && !isFlat[^1] ? Arc(count - 1, count == 1, endsStretch: true).Length / 2 : 0;
        return new(along, curvatures, isFlat, along[^1] + beyond);

        bool IsFlatAt(double alongMm) => wanted?.IsFlatAt(alongMm) ?? false;

        // The circle through both fold centres that turns as far as the folds do.
        (double Curvature, double Length) Arc(int j, bool startsStretch, bool endsStretch)
        {
            var isHalf = ends == SteppingEnds.Half;
            var turn = (form.FoldAngles[j] * (isHalf && startsStretch ? 1 : 0.5))
                + (form.FoldAngles[j + 1] * (isHalf && endsStretch ? 1 : 0.5));
            var radius = (form.StraightMm(j) / (2 * Math.Sin(turn / 2))) + form.OuterFoldRadiusMm + (panelThickness / 2);
            return (1 / radius, radius * turn);
        }
    }

    /// <summary>How far the form turns the panel [rad].</summary>
    public double Sweep => SumOver(curvature => curvature);

    /// <summary>How far the panel slides forward under the hand until it lies over the form [mm].</summary>
    /// <param name="law">The panel's bending law.</param>
    public double SlideMm(BendingLaw law) => Lever.SlideMm(EndMm, Sweep, Springback(law));

    /// <summary>How far the panel opens over the whole form when it is let go [rad].</summary>
    /// <param name="law">The panel's bending law.</param>
    public double Springback(BendingLaw law) => SumOver(curvature => law.At(curvature).MomentPerWidth / law.Stiffness);

    /// <summary>Longest lever that keeps the wrap in order, from the end of the curve to the hand.</summary>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="endMm">End of the curve, from its first tangent point [mm].</param>
    /// <param name="share">Share of the longest, 1 for the limit itself.</param>
    /// <returns>Lever [mm]; 0 or less where none does, infinite where any does.</returns>
    public double LongestLeverMm(BendingLaw law, double endMm, double share)
    {
        var longest = double.PositiveInfinity;
        for (var j = 0; j < Curvatures.Length; j++)
        {
            // The bend begins at the tangent point, before a full first fold.
            var from = j == 0 ? 0 : AlongMm[j];
            var state = law.At(Curvatures[j]);
            if (state.IsPlastic)
                longest = Math.Min(longest, (share * PrintThrough.LongestLever(state)) - (endMm - from));
        }

        return longest;
    }

    private double SumOver(Func<double, double> ofCurvature)
    {
        double sum = 0;
        for (var j = 0; j < Curvatures.Length; j++)
            sum += ofCurvature(Curvatures[j]) * (AlongMm[j + 1] - AlongMm[j]);
        return sum;
    }
}
