using Forming.Contact;
using Forming.Facets;
using Forming.Folds;

namespace Forming.Wrapping;

/// <summary>How even the folds are.</summary>
/// <param name="AngleSpread">Largest less smallest fold angle, end folds of half ends left out.</param>
/// <param name="SpacingSpreadMm">Largest less smallest distance between fold centre lines within a curved span [mm].</param>
/// <param name="SweepOver">Sweep past the wanted one with a fixed angle or spacing; negative is short.</param>
/// <param name="LastFoldInstead">The last fold that would close the sweep exactly, or null where nothing was fixed.</param>
/// <param name="FlatInsideTangentMm">How far the lead-in flat is inside the curve's tangent, full ends [mm].</param>
public sealed record SteppingReport(
    Angle AngleSpread,
    double SpacingSpreadMm,
    Angle SweepOver,
    Angle? LastFoldInstead,
    double FlatInsideTangentMm)
{
    internal static SteppingReport Of(PlacedFolds folds, ContactCurve curve, FoldShape fold, Stepping stepping)
    {
        var polygon = folds.Polygon;
        var spacings = polygon.Spacings(fold);
        double leastAngle = double.PositiveInfinity, mostAngle = 0, spread = 0;
        var first = 0;
        foreach (var last in folds.LastOfStretch)
        {
            var ends = stepping.Ends == SteppingEnds.Half ? 1 : 0;
            for (var j = first + ends; j <= last - ends; j++)
                (leastAngle, mostAngle) = (Math.Min(leastAngle, polygon.Angles[j]), Math.Max(mostAngle, polygon.Angles[j]));
            if (last > first)
                spread = Math.Max(spread, spacings[first..last].Max() - spacings[first..last].Min());
            first = last + 1;
        }

        var isFixed = stepping.FoldAngle is not null || stepping.SpacingMm is not null;
        var flatInside = polygon.Centres[0].Y - fold.OuterRadiusMm - curve.Runs[0].Start.Position.Y;
        return new(
            new(Math.Max(0, mostAngle - leastAngle)),
            spread,
            new(folds.FixedStepOver),
            isFixed ? new Angle(polygon.Angles[^1] - folds.FixedStepOver) : null,
            stepping.Ends == SteppingEnds.Full ? flatInside : 0);
    }
}
