using Forming.Layout;

namespace Forming.Drawing.Shapes;

/// <summary>The flat form blank with its lines: x from the lead-in edge, y along the folds.</summary>
/// <param name="Outline">[n] corners, first = last [mm].</param>
/// <param name="Folds">The folds in order.</param>
/// <param name="DatumMm">Where marks are measured from [mm].</param>
/// <param name="IsFromLeadOut">Whether they are measured towards the lead-in.</param>
/// <param name="LengthMm">Length of the straight-edged sheet that holds it [mm].</param>
/// <param name="WidthMm">Width of that sheet [mm].</param>
internal sealed record FormBlankLines(
    IReadOnlyList<Point> Outline, IReadOnlyList<FoldLines> Folds, double DatumMm, bool IsFromLeadOut, double LengthMm, double WidthMm)
{
    /// <summary>Lays out the lines of a job's form in the plan's frame, which is seen from the contact face.</summary>
    /// <param name="job">The job.</param>
    public static FormBlankLines Of(DrawingJob job)
    {
        var blank = job.Plan.Form.Blank;
        var datum = job.Marks.Datum switch
        {
            Datum.FarEdge => blank.LengthMm,
            Datum.Centre => blank.LengthMm / 2,
            _ => 0,
        };
        var isFromLeadOut = job.Marks.Datum == Datum.FarEdge;
        var sense = isFromLeadOut ? -1 : 1;
        return new(blank.Outline, [.. job.Plan.Form.Stations.Select(LinesOf)], datum, isFromLeadOut, blank.LengthMm, blank.WidthMm);

        FoldLines LinesOf(Station station)
        {
            if (station.Line is not { } line)
                return new(station, At(station.AtMm), At(station.FirstTangentMm), At(station.SecondTangentMm), At(station.SightLineMm));
            var first = new Segment(line.FirstTangentNear, line.FirstTangentFar);
            return new(
                station,
                new(line.Near, line.Far),
                first,
                new(line.SecondTangentNear, line.SecondTangentFar),
                first.Moved(job.Form.FoldRadiusMm));
        }

        Segment At(double fromDatum)
        {
            var x = datum + (sense * fromDatum);
            return new(new(x, 0), new(x, blank.WidthMm));
        }
    }

    /// <summary>A place along the blank, from the datum: below zero before it [mm].</summary>
    /// <param name="x">From the lead-in edge [mm].</param>
    public double FromDatum(double x) => IsFromLeadOut ? DatumMm - x : x - DatumMm;

    /// <summary>The same seen from the other face, which is marked and lies up on the brake.</summary>
    public FormBlankLines TurnedOver() => this with
    {
        Outline = [.. Outline.Select(point => point with { Y = WidthMm - point.Y })],
        Folds = [.. Folds.Select(fold => fold.TurnedOver(WidthMm))],
    };
}
