using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Layout;
using Forming.Wrapping;

namespace Forming.Tapers;

/// <summary>The stations of a tapered form: lines in the sheet frame, read where they cross the straight base lines.</summary>
internal static class TaperStations
{
    public static IReadOnlyList<Station> Of(
        TaperFolds folds, FlatForm flat, TaperStepping stepping, TaperWrap wrap, FormSpec form, FoldSpringback springback, MarkSpec marks, double panelThickness)
    {
        var outline = flat.Outline;
        double width = outline.Max(point => point.X), height = outline.Max(point => point.Y);
        var stations = new Station[folds.Angles.Length];
        var running = Angle.Zero;
        for (var j = 0; j < stations.Length; j++)
        {
            var (line, isLast) = (flat.Folds[j], j == stations.Length - 1);
            running += new Angle(folds.Angles[j]);
            var at = FromDatum(Crossing(line.Near, line.Far, 0));
            var far = FromDatum(Crossing(line.Near, line.Far, height));
            var mark = TapeReading.Of(at, marks.Tape);
            var first = Crossing(line.FirstNear, line.FirstFar, 0);
            stations[j] = new()
            {
                Number = j + 1,
                AtMm = at,
                MarkMm = mark.Mm,
                MarkText = mark.Text,
                FirstTangentMm = FromDatum(first),
                SecondTangentMm = FromDatum(Crossing(line.SecondNear, line.SecondFar, 0)),
                SightLineMm = FromDatum(first + (form.FoldRadiusMm / Sine(line.FirstNear, line.FirstFar))),
                FoldAngle = new(folds.Angles[j]),
                RunningAngle = running,
                StopAngle = springback.StopAngle(new(folds.Angles[j])),
                RadiusMm = wrap.PlaceAt(folds.Turns[j], isFar: false).RadiusMm(panelThickness),
                FacetAfterMm = isLast ? form.LeadOutMm : stepping.Facet(folds, j, isFar: false),
                StraightAfterMm = isLast ? flat.LeadOutStraightMm : folds.Straight(j, isFar: false),
                Line = new(
                    line.Near,
                    line.Far,
                    at,
                    far,
                    TapeReading.Of(far, marks.Tape),
                    folds.Lengths[j],
                    isLast ? flat.LeadOutStraightMm : folds.Straight(j, isFar: false),
                    isLast ? flat.LeadOutStraightMm : folds.Straight(j, isFar: true),
                    isLast ? form.LeadOutMm : stepping.Facet(folds, j, isFar: false),
                    isLast ? form.LeadOutMm : stepping.Facet(folds, j, isFar: true),
                    line.FirstNear,
                    line.FirstFar,
                    line.SecondNear,
                    line.SecondFar),
            };
        }

        return stations;

        double FromDatum(double x) => marks.Datum switch
        {
            Datum.FarEdge => width - x,
            Datum.Centre => x - (width / 2),
            _ => x,
        };
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
