using System.Globalization;
using System.Text;
using System.Xml.Linq;
using CsvHelper;
using Forming.Drawing.Blocks;
using Forming.Drawing.Csv;
using Forming.Drawing.Pdf;
using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;
using Forming.Drawing.Svg;
using Forming.Programs;
using UglyToad.PdfPig;

namespace Forming.Drawing.Tests;

/// <summary>The sheet and the file of a program.</summary>
public class ProgramSheetTests
{
    public static TheoryData<string> Names => [.. ProgramExamples.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void Sheet_is_the_one_that_was_looked_at(string name) =>
        Golden.Matches($"program-{name}.svg", Svg(ProgramExamples.Of(name)));

    [Theory]
    [MemberData(nameof(Names))]
    public void File_is_the_one_that_was_looked_at(string name) =>
        Golden.Matches($"program-{name}.csv", Csv(ProgramExamples.Of(name)));

    [Theory]
    [MemberData(nameof(Names))]
    [Trait("Category", "Long")]
    public void No_text_lies_on_another_and_nothing_leaves_the_sheet(string name)
    {
        var root = XDocument.Parse(Svg(ProgramExamples.Of(name))).Root!;
        TextBox.AssertApart(root, Texts(root));
        var strokes = ProgramBlocks.Of(ProgramExamples.Of(name)).SelectMany(block => block.Items).OfType<Stroke>();
        Assert.All(strokes.SelectMany(stroke => stroke.Points), point => Assert.InRange(point.X, -0.01, Page.Width + 0.01));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_step_has_its_row_and_every_handling_its_picture(string name)
    {
        var job = ProgramExamples.Of(name);
        var texts = Texts(XDocument.Parse(Svg(job)).Root!).ToArray();
        var rows = texts.GroupBy(text => text.Attribute("y")!.Value).Select(row => row.Select(text => text.Value).ToArray()).ToArray();
        foreach (var step in job.Program.Steps)
        {
            Assert.Contains(rows, row => row.Length >= 7
                && row[0] == step.Number.ToString(CultureInfo.InvariantCulture)
                && row[1] == step.Fold.ToString(CultureInfo.InvariantCulture)
                && (step.Gauge.Marks is { } marks
                    ? row.Contains(marks.Near.Text) && row.Contains(marks.Far.Text)
                    : row.Contains(step.Gauge.By == GaugedBy.Mark ? $"mark {job.Readout.OnTape(job.MarkMm(step))}" : job.Readout.LaidOut(step.Gauge.DistanceMm)))
                && row.Contains(step.DepthMm is { } depth ? job.Readout.Length(depth) : Readout.Degrees(step.StopSetting)));
        }

        var handlings = job.Program.Steps.Count(step => step.Handling != Handling.Push);
        Assert.Equal(handlings, job.Handlings().Count);
        Assert.Equal(job.Program.Steps, job.Handlings().SelectMany(steps => steps));
        var changes = job.Program.Steps.Count(step => step.Handling == Handling.Push && step.IsStopChanged);
        Assert.Equal(handlings + changes, texts.Count(text => text.Value.StartsWith("Shown: step", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_step_out_of_the_gauges_range_gives_its_pencil_mark_and_is_named()
    {
        var job = ProgramExamples.Of("forty-folds");
        var beyond = job.Program.Steps.Where(step => !step.Gauge.IsInRange).ToArray();
        Assert.Equal(Enumerable.Range(31, 10).Reverse(), beyond.Select(step => step.Fold));
        var words = string.Join(' ', Texts(XDocument.Parse(Svg(job)).Root!).Select(text => text.Value));
        Assert.Contains("set folds 40 to 31 by pencil mark", words, StringComparison.Ordinal);
        Assert.All(beyond, step => Assert.Contains($"mark {job.Readout.OnTape(job.MarkMm(step))}", words, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("six-folds")]
    [InlineData("sixty-folds")]
    public void Mark_of_a_step_is_the_one_on_the_forms_own_sheet(string name)
    {
        var job = Examples.All[name]();
        var part = Programs.Brakes.ProgramPart.Of(job.Plan, job.Job);
        var length = job.Plan.Form.Blank.LengthMm;
        Assert.All(job.Plan.Form.Stations, station => Assert.Equal(
            job.Marks.Datum == Layout.Datum.FarEdge ? length - station.AtMm : station.AtMm, part.MarkMm(station.Number - 1), 1e-6));
    }

    [Fact]
    public void A_press_is_set_by_the_rams_depth_and_a_cap_is_no_measurement()
    {
        var job = ProgramExamples.Of("half-turn-press");
        var texts = Texts(XDocument.Parse(Svg(job)).Root!).Select(text => text.Value).ToArray();
        Assert.All(job.Program.Steps, step => Assert.Null(step.Clearance.Nearest));
        Assert.DoesNotContain("stop", texts);
        Assert.Contains("ram, mm", texts);
        Assert.Equal(job.Program.Steps.Count, texts.Count(text => text == "≥ 10.00"));
        Assert.Contains("below where it touches the flat sheet", BenchWording.Of(job.Program.Steps[0].Text), StringComparison.Ordinal);
        Assert.Equal(["eyes", "noise"], job.Program.Safety.Select(note => note.Id).Where(id => id is "eyes" or "noise"));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void File_reads_back_as_the_program(string name)
    {
        var job = ProgramExamples.Of(name);
        var text = Csv(job);
        Assert.Equal(text.Count(character => character == '\n'), text.Count(character => character == '\r'));
        using var csv = new CsvReader(new StringReader(text), CultureInfo.InvariantCulture);
        csv.Read();
        csv.ReadHeader();
        var unit = job.Readout.LengthName;
        foreach (var step in job.Program.Steps)
        {
            Assert.True(csv.Read());
            Assert.Equal(step.Number, csv.GetField<int>("number"));
            Assert.Equal(step.Fold, csv.GetField<int>("fold"));
            Assert.Equal(step.Gauge.DistanceMm / job.Readout.UnitMm, csv.GetField<double>($"gauge distance [{unit}]"), 1e-8);
            Assert.Equal(step.StopAngle.Degrees, csv.GetField<double>("stop angle [deg]"), 1e-8);
            Assert.Equal(step.StopSetting.Degrees, csv.GetField<double>("stop setting [deg]"), 1e-8);
            Assert.Equal(step.Clearance.Mm / job.Readout.UnitMm, csv.GetField<double>($"clearance [{unit}]"), 1e-8);
            if (step.Gauge.Marks is { } marks)
            {
                Assert.Equal(marks.Near.Mm / job.Readout.UnitMm, csv.GetField<double>($"near mark [{unit}]"), 1e-8);
                Assert.Equal(marks.Far.Mm / job.Readout.UnitMm, csv.GetField<double>($"far mark [{unit}]"), 1e-8);
                Assert.Equal(step.Swing?.Degrees ?? 0, csv.GetField<double?>("swing [deg]") ?? 0, 1e-8);
            }

            if (step.DepthMm is { } depth)
                Assert.Equal(depth / job.Readout.UnitMm, csv.GetField<double>($"depth [{unit}]"), 1e-8);
            else
                Assert.Equal(step.Load.MomentNmm!.Value, csv.GetField<double>("moment [N·mm]"), 1e-6);
        }

        Assert.False(csv.Read());
    }

    [Fact]
    public void Pages_hold_every_step_and_equal_programs_give_equal_bytes()
    {
        var job = ProgramExamples.Of("forty-folds");
        var bytes = Written.Bytes(stream => ProgramPdfSheet.Write(job, PaperSize.A4, stream));
        Assert.Equal(bytes, Written.Bytes(stream => ProgramPdfSheet.Write(job, PaperSize.A4, stream)));
        using var document = PdfDocument.Open(bytes);
        Assert.InRange(document.NumberOfPages, 2, 6);
        var words = document.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text).ToHashSet();
        Assert.All(job.Program.Steps.Where(step => step.Gauge.By != GaugedBy.Mark), step => Assert.Contains(job.Readout.LaidOut(step.Gauge.DistanceMm), words));
        Assert.All(document.GetPages(), page => Assert.Contains("Brake program", page.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void The_part_is_drawn_where_the_program_has_it()
    {
        var job = ProgramExamples.Of("six-folds");
        var step = job.Program.Steps[^1];
        var placed = job.Program.At(step, step.StopAngle);
        var ribbon = Ribbon.About([.. placed.Back.Reverse(), .. placed.Front], 2);
        Assert.Equal(2, (ribbon.Inner[0] - ribbon.Outer[0]).Length, 1e-9);
        Assert.Equal(2, (ribbon.Inner[^1] - ribbon.Outer[^1]).Length, 1e-9);
        // Clamped behind: flat on the bed, a thickness below the beam.
        Assert.Equal(0, ribbon.Inner[0].Y, 1e-9);
        Assert.Equal(-2, ribbon.Outer[0].Y, 1e-9);
    }

    [Fact]
    public void Hatching_stays_inside_and_fills_evenly()
    {
        Point[] hollow = [new(0, 0), new(40, 0), new(40, 30), new(30, 30), new(30, 10), new(10, 10), new(10, 30), new(0, 30)];
        var lines = Hatch.Of(hollow, 1, new(-5, -5), new(50, 50)).ToArray();
        Assert.All(lines, line =>
        {
            var middle = 0.5 * (line.Start + line.End);
            Assert.True(middle.Y < 10 || middle.X < 10 || middle.X > 30, middle.ToString());
        });
        // Lines a unit apart: their whole length is the area.
        Assert.Equal(800, lines.Sum(line => (line.End - line.Start).Length), 20.0);
        Assert.All(Hatch.Of(hollow, 1, new(5, 5), new(15, 15)), line => Assert.InRange(line.Start.X, 5, 15));
    }

    private static string Svg(ProgramJob job) => Written.Text(stream => ProgramSvgSheet.Write(job, stream));

    private static string Csv(ProgramJob job) => Encoding.UTF8.GetString(Written.Bytes(stream => CsvProgram.Write(job, stream)));

    private static IEnumerable<XElement> Texts(XElement root) => root.Descendants(XName.Get("text", "http://www.w3.org/2000/svg"));
}
