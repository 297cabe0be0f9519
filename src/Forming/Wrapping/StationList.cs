using Forming.Folds;
using Forming.Jobs;
using Forming.Layout;
using Forming.Springback;

namespace Forming.Wrapping;

/// <summary>The stations of a form, measured from the chosen datum.</summary>
internal static class StationList
{
    public static IReadOnlyList<Station> Of(
        WrappedForm wrapped, FoldShape fold, FlatLayout layout, FormSpec form, BendingLaw formLaw, BrakeSpec brake, MarkSpec marks)
    {
        var polygon = wrapped.Folds.Polygon;
        var springback = SpringbackOf(fold, form, formLaw, brake);
        var stations = new Station[polygon.Angles.Length];
        var running = Angle.Zero;
        for (var j = 0; j < stations.Length; j++)
        {
            var angle = new Angle(polygon.Angles[j]);
            running += angle;
            var centre = layout.CentreLines[j];
            var half = layout.Allowances[j] / 2;
            var isLast = j == stations.Length - 1;
            var at = FromDatum(centre);
            var mark = TapeReading.Of(at, marks.Tape);
            stations[j] = new()
            {
                Number = j + 1,
                AtMm = at,
                MarkMm = mark.Mm,
                MarkText = mark.Text,
                FirstTangentMm = FromDatum(centre - half),
                SecondTangentMm = FromDatum(centre + half),
                SightLineMm = FromDatum(centre - half + fold.RadiusMm),
                FoldAngle = angle,
                RunningAngle = running,
                StopAngle = springback.StopAngle(angle),
                RadiusMm = RadiusOf(wrapped, j),
                FacetAfterMm = isLast ? form.LeadOutMm : polygon.Facets[j],
                StraightAfterMm = isLast ? layout.LeadOutStraightMm : polygon.Straights[j],
            };
        }

        return stations;

        double FromDatum(double fromEdge) => marks.Datum switch
        {
            Datum.FarEdge => layout.LengthMm - fromEdge,
            Datum.Centre => fromEdge - (layout.LengthMm / 2),
            _ => fromEdge,
        };
    }

    public static FoldSpringback SpringbackOf(FoldShape fold, FormSpec form, BendingLaw formLaw, BrakeSpec brake)
    {
        if (form.Stop is { } line)
            return new(line);
        var reach = brake.ReachMm ?? (brake.DieOpeningMm / 2) ?? FoldSpringback.DefaultReachMm;
        return FoldSpringback.Estimate(fold, formLaw, reach);
    }

    private static double? RadiusOf(WrappedForm wrapped, int index)
    {
        var radius = wrapped.Folds.Polygon.Places[index].RadiusMm(wrapped.Contact.ThicknessMm);
        return double.IsFinite(radius) ? radius : null;
    }
}
