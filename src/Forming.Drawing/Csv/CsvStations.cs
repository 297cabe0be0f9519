using System.Globalization;
using Forming.Layout;

namespace Forming.Drawing.Csv;

/// <summary>The stations as comma-separated values (RFC 4180), units in the headings, UTF-8 without a byte order mark.</summary>
public static class CsvStations
{
    /// <summary>Writes one line for every station, in order.</summary>
    /// <param name="job">The job.</param>
    /// <param name="stream">Where to write; stays open.</param>
    /// <exception cref="Results.NoSolutionException"><c>drawing.cannot-be-made</c>: a check failed.</exception>
    public static void Write(DrawingJob job, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(stream);
        job.RefuseUnlessItCanBeMade();
        CsvText.Write(stream, Headings(job), job.Plan.Form.Stations.Select(station => Cells(job, station)));
    }

    private static string[] Headings(DrawingJob job)
    {
        var unit = job.Readout.LengthName;
        var tape = job.Marks.Tape.Unit == LengthUnit.In ? "in" : "mm";
        return
        [
            "number", $"at [{unit}]", $"mark [{unit}]", $"mark on the tape [{tape}]", $"first tangent line [{unit}]",
            $"second tangent line [{unit}]", $"sight line [{unit}]", $"sight line on the tape [{tape}]", "fold angle [deg]", "running angle [deg]", "stop angle [deg]", "stop setting [deg]",
            $"contact radius [{unit}]", $"facet after [{unit}]", $"straight after [{unit}]",
            .. job.Plan.Taper is null ? [] : TaperHeadings(unit, tape),
        ];
    }

    private static string[] TaperHeadings(string unit, string tape) =>
    [
        $"near x [{unit}]", $"near y [{unit}]", $"far x [{unit}]", $"far y [{unit}]", $"far base line [{unit}]",
        $"far mark on the tape [{tape}]", $"length [{unit}]", $"facet after, far [{unit}]", $"straight after, far [{unit}]",
    ];

    private static string[] Cells(DrawingJob job, Station station)
    {
        return
        [
            station.Number.ToString(CultureInfo.InvariantCulture),
            Length(station.AtMm),
            Length(station.MarkMm),
            station.MarkText,
            Length(station.FirstTangentMm),
            Length(station.SecondTangentMm),
            Length(station.SightLineMm),
            TapeReading.Of(station.SightLineMm, job.Marks.Tape).Text,
            CsvText.Number(station.FoldAngle.Degrees),
            CsvText.Number(station.RunningAngle.Degrees),
            station.StopAngle is { } stop ? CsvText.Number(stop.Degrees) : "",
            station.StopSetting is { } setting ? CsvText.Number(setting.Degrees) : "",
            station.RadiusMm is { } radius ? Length(radius) : "",
            Length(station.FacetAfterMm),
            Length(station.StraightAfterMm),
            .. station.Line is { } line ? Line(line) : [],
        ];

        string[] Line(FoldLine line) =>
        [
            Length(line.Near.X), Length(line.Near.Y), Length(line.Far.X), Length(line.Far.Y), Length(line.BaseFarMm),
            line.MarkFar.Text, Length(line.LengthMm), Length(line.FacetFarMm), Length(line.StraightFarMm),
        ];

        string Length(double mm) => CsvText.Number(job.Readout.InUnit(mm));
    }
}
