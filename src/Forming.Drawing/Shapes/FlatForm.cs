using Forming.Layout;

namespace Forming.Drawing.Shapes;

/// <summary>The flat form blank with its lines, in the blank's own frame: x from the lead-in edge, y along the folds.</summary>
/// <param name="Outline">[n] corners, first = last [mm].</param>
/// <param name="Folds">The folds in order.</param>
/// <param name="DatumMm">Where marks are measured from [mm].</param>
internal sealed record FlatForm(IReadOnlyList<Point> Outline, IReadOnlyList<FoldLines> Folds, double DatumMm)
{
    /// <summary>Lays out the lines of a job's form.</summary>
    /// <param name="job">The job.</param>
    public static FlatForm Of(DrawingJob job)
    {
        var blank = job.Plan.Form.Blank;
        var datum = job.Marks.Datum switch
        {
            Datum.FarEdge => blank.LengthMm,
            Datum.Centre => blank.LengthMm / 2,
            _ => 0,
        };
        var sense = job.Marks.Datum == Datum.FarEdge ? -1 : 1;
        var folds = job.Plan.Form.Stations.Select(station => new FoldLines(
            station, At(station.AtMm), At(station.FirstTangentMm), At(station.SecondTangentMm), At(station.SightLineMm)));
        return new(blank.Outline, [.. folds], datum);

        Segment At(double fromDatum)
        {
            var x = datum + (sense * fromDatum);
            return new(new(x, 0), new(x, blank.WidthMm));
        }
    }
}
