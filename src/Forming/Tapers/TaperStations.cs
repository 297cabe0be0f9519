using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Layout;
using Forming.Wrapping;

namespace Forming.Tapers;

/// <summary>The stations of a tapered form: lines in the sheet frame, read where they cross the straight base lines.</summary>
internal static class TaperStations
{
    public static IReadOnlyList<Station> Of(TaperFolds folds, FlatForm flat, TaperStepping stepping, FormJob job, FoldSpringback springback)
    {
        var outline = flat.Outline;
        double width = outline.Max(point => point.X), height = outline.Max(point => point.Y);
        return StationList.Of(folds.Angles, width, job.Marks, springback, j =>
        {
            var (line, isLast) = (flat.Folds[j], j == folds.Angles.Length - 1);
            var first = Crossing(line.FirstNear, line.FirstFar, 0);
            var centre = Crossing(line.Near, line.Far, 0);
            var far = job.Marks.FromDatum(Crossing(line.Near, line.Far, height), width);
            double facet = Facet(isFar: false), straight = Straight(isFar: false);
            return new()
            {
                CentreMm = centre,
                FirstTangentMm = first,
                SecondTangentMm = Crossing(line.SecondNear, line.SecondFar, 0),
                SightLineMm = first + (job.Form.FoldRadiusMm / Sine(line.FirstNear, line.FirstFar)),
                RadiusMm = stepping.RadiusMm(folds, j),
                FacetAfterMm = facet,
                StraightAfterMm = straight,
                Line = new(
                    line.Near,
                    line.Far,
                    BaseNearMm: job.Marks.FromDatum(centre, width),
                    BaseFarMm: far,
                    MarkFar: TapeReading.Of(far, job.Marks.Tape),
                    LengthMm: folds.Lengths[j],
                    StraightNearMm: straight,
                    StraightFarMm: Straight(isFar: true),
                    FacetNearMm: facet,
                    FacetFarMm: Facet(isFar: true),
                    line.FirstNear,
                    line.FirstFar,
                    line.SecondNear,
                    line.SecondFar),
            };

            double Facet(bool isFar) => isLast ? job.Form.LeadOutMm : stepping.Facet(folds, j, isFar);

            double Straight(bool isFar) => isLast ? flat.LeadOutStraightMm : folds.Straight(j, isFar);
        });
    }

    public static SteppingReport Report(TaperFolds folds, FormedPanel formed, Stepping stepping)
    {
        var ends = stepping.Ends == SteppingEnds.Half ? 1 : 0;
        var inner = folds.Angles.Length > 2 * ends ? folds.Angles[ends..^ends] : [0];
        double least = double.PositiveInfinity, most = 0;
        for (var j = 0; j + 1 < folds.Angles.Length; j++)
        {
            var middle = (folds.Straight(j, false) + folds.Straight(j, true)) / 2;
            (least, most) = (Math.Min(least, middle), Math.Max(most, middle));
        }

        var over = formed.Turn.At(folds.EndTurn) - formed.TotalTurn;
        var isFixed = stepping.FoldAngle is not null || stepping.SpacingMm is not null;
        return new(
            new(inner.Max() - inner.Min()),
            Math.Max(0, most - least),
            new(over),
            isFixed ? new Angle(folds.Angles[^1] - over) : null,
            0);
    }

    private static double Crossing(Point near, Point far, double height) =>
        near.X + ((far.X - near.X) * (height - near.Y) / (far.Y - near.Y));

    private static double Sine(Point near, Point far) => (far.Y - near.Y) / (far - near).Length;
}
