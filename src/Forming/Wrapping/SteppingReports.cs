using Forming.Contact;
using Forming.Facets;
using Forming.Folds;

namespace Forming.Wrapping;

/// <summary>How evenly the folds came out.</summary>
internal static class SteppingReports
{
    public static SteppingReport Of(FoldPlan folds, ContactCurve curve, FoldShape fold, Stepping stepping)
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
