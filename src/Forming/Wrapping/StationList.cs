using Forming.Folds;
using Forming.Jobs;
using Forming.Layout;

namespace Forming.Wrapping;

/// <summary>The stations of a form, measured from the chosen datum.</summary>
internal static class StationList
{
    public static IReadOnlyList<Station> Of(WrappedForm wrapped, FoldShape fold, FlatLayout layout, FormJob job, FoldSpringback springback)
    {
        var polygon = wrapped.Folds.Polygon;
        return Of(polygon.Angles, layout.LengthMm, job.Marks, springback, j =>
        {
            var isLast = j == polygon.Angles.Length - 1;
            var centre = layout.CentreLines[j];
            var half = layout.Allowances[j] / 2;
            return new()
            {
                CentreMm = centre,
                FirstTangentMm = centre - half,
                SecondTangentMm = centre + half,
                SightLineMm = centre - half + fold.RadiusMm,
                RadiusMm = RadiusOf(wrapped, j),
                FacetAfterMm = isLast ? job.Form.LeadOutMm : polygon.Facets[j],
                StraightAfterMm = isLast ? layout.LeadOutStraightMm : polygon.Straights[j],
            };
        });
    }

    /// <summary>Numbers folds, turns their places to the datum and adds angles, marks and stops.</summary>
    /// <param name="angles">[n] fold angles in order [rad].</param>
    /// <param name="lengthMm">Length of the flat blank [mm].</param>
    /// <param name="marks">How it is marked.</param>
    /// <param name="springback">Springback of the folds.</param>
    /// <param name="placeOf">Where each fold lies on the flat.</param>
    public static IReadOnlyList<Station> Of(
        IReadOnlyList<double> angles, double lengthMm, MarkSpec marks, FoldSpringback springback, Func<int, FlatPlace> placeOf)
    {
        var stations = new Station[angles.Count];
        var running = Angle.Zero;
        for (var j = 0; j < stations.Length; j++)
        {
            var (angle, place) = (new Angle(angles[j]), placeOf(j));
            running += angle;
            var at = marks.FromDatum(place.CentreMm, lengthMm);
            var mark = TapeReading.Of(at, marks.Tape);
            stations[j] = new()
            {
                Number = j + 1,
                AtMm = at,
                MarkMm = mark.Mm,
                MarkText = mark.Text,
                FirstTangentMm = marks.FromDatum(place.FirstTangentMm, lengthMm),
                SecondTangentMm = marks.FromDatum(place.SecondTangentMm, lengthMm),
                SightLineMm = marks.FromDatum(place.SightLineMm, lengthMm),
                FoldAngle = angle,
                RunningAngle = running,
                StopAngle = springback.StopAngle(angle),
                RadiusMm = place.RadiusMm,
                FacetAfterMm = place.FacetAfterMm,
                StraightAfterMm = place.StraightAfterMm,
                Line = place.Line,
            };
        }

        return stations;
    }

    private static double? RadiusOf(WrappedForm wrapped, int index)
    {
        var radius = wrapped.Folds.Polygon.Places[index].RadiusMm(wrapped.Contact.ThicknessMm);
        return double.IsFinite(radius) ? radius : null;
    }
}

/// <summary>Where a fold lies on the flat blank, from its lead-in edge, and what follows it.</summary>
internal readonly record struct FlatPlace
{
    public required double CentreMm { get; init; }

    public required double FirstTangentMm { get; init; }

    public required double SecondTangentMm { get; init; }

    public required double SightLineMm { get; init; }

    /// <summary>Inside radius of the panel there [mm]; null where it is flat.</summary>
    public required double? RadiusMm { get; init; }

    public required double FacetAfterMm { get; init; }

    public required double StraightAfterMm { get; init; }

    /// <summary>What only a slanting fold has, or null.</summary>
    public FoldLine? Line { get; init; }
}
