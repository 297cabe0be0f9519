using System.Globalization;
using Forming.Layout;
using Forming.Programs;
using Forming.Programs.Brakes;
using Forming.Programs.Motion;

namespace Forming.Drawing.Csv;

/// <summary>The steps of a program as comma-separated values (RFC 4180), units in the headings, UTF-8 without a byte order mark.</summary>
public static class CsvProgram
{
    /// <summary>Writes one line for every step that is shown, in order.</summary>
    /// <param name="job">The program.</param>
    /// <param name="stream">Where to write; stays open.</param>
    public static void Write(ProgramJob job, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(stream);
        CsvText.Write(stream, Headings(job), job.Shown.Select(step => Cells(job, step)));
    }

    private static string[] Headings(ProgramJob job)
    {
        var (unit, force) = (job.Readout.LengthName, job.Readout.ForceName);
        return
        [
            "number", "fold", "edge in front", "handling", "handling cost", "gauged edge", "gauged by", $"gauge distance [{unit}]", $"gauge distance on the tape [{(job.Tape.Unit == LengthUnit.In ? "in" : "mm")}]", "gauge in range",
            "face slope [deg]", "fold angle [deg]", "stop angle [deg]", "stop setting [deg]", "stop change",
            .. job.Press is null
                ? (string[])[$"moment [{job.Readout.TorqueName}]", $"handle force [{force}]", $"leaf force [{force}]", $"clamp force [{force}]"]
                : ["included angle [deg]", "springback allowance [deg]", $"depth [{unit}]", $"force [{force}]", $"force, low [{force}]"],
            $"clearance [{unit}]", "nearest", "clearance at angle [deg]", $"front run [{unit}]", $"back run [{unit}]", "face up",
            .. job.Part.Flat is null ? (string[])[] : [$"near mark [{unit}]", $"far mark [{unit}]", "swing [deg]", "section"],
            "note",
        ];
    }

    private static string[] Cells(ProgramJob job, ProgramStep step)
    {
        var (read, load) = (job.Readout, step.Load);
        return
        [
            Count(step.Number),
            Count(step.Fold),
            ProgramWords.Of(step.EdgeInFront),
            ProgramWords.Of(step.Handling),
            Count(step.HandlingCost),
            ProgramWords.Of(step.GaugedEdge),
            ProgramWords.Of(step.Gauge.By),
            Length(step.Gauge.DistanceMm),
            TapeReading.Of(step.Gauge.DistanceMm, job.Tape).Text,
            Claim(step.Gauge.IsInRange),
            CsvText.Number(step.Gauge.FaceSlope.Degrees),
            CsvText.Number(step.FoldAngle.Degrees),
            CsvText.Number(step.StopAngle.Degrees),
            CsvText.Number(step.StopSetting.Degrees),
            Claim(step.IsStopChanged),
            .. job.Press is null ? Leaf() : Press(),
            Length(step.Clearance.Mm),
            step.Clearance.Nearest?.Word() ?? "",
            CsvText.Number(step.Clearance.AtAngle.Degrees),
            Length(step.FrontRunMm),
            Length(step.BackRunMm),
            "inside",
            .. step.Gauge.Marks is { } marks ? Line(marks) : [],
            job.Wording(step.Text),
        ];

        string[] Leaf() =>
        [
            CsvText.Number(read.TorqueInUnit(load.MomentNmm!.Value)),
            Force(load.HandleForceN),
            Force(load.LeafForceN),
            Force(load.ClampForceN),
        ];

        string[] Press() =>
        [
            CsvText.Number(step.IncludedAngle.Degrees), CsvText.Number(step.SpringbackAllowance.Degrees), Length(step.DepthMm!.Value),
            Force(load.ForceN), Force(load.ForceLowN),
        ];

        string[] Line(LineMarks marks) =>
        [
            Length(marks.Near.Mm),
            Length(marks.Far.Mm),
            step.Swing is { } swing ? CsvText.Number(swing.Degrees) : "",
            step.Section?.Word() ?? "",
        ];

        string Length(double mm) => CsvText.Number(read.InUnit(mm));

        string Force(double? newtons) => CsvText.Number(read.ForceInUnit(newtons!.Value));
    }

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Claim(bool isTrue) => isTrue ? "true" : "false";
}
