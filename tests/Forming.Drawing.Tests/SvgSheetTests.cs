using System.Globalization;
using System.Xml.Linq;

namespace Forming.Drawing.Tests;

public class SvgSheetTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    public void Sheet_is_the_one_that_was_looked_at(string name) =>
        Golden.Matches($"{name}.svg", Written.Svg(Examples.All[name]()));

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    public void Sheet_names_itself_and_fits_any_width(string name)
    {
        var job = Examples.All[name]();
        var root = XDocument.Parse(Written.Svg(job)).Root!;
        Assert.Equal(Svg + "svg", root.Name);
        Assert.Equal("100%", root.Attribute("width")!.Value);
        Assert.Null(root.Attribute("height"));
        Assert.NotNull(root.Attribute("viewBox"));
        Assert.Equal(job.Title, root.Element(Svg + "title")!.Value);
        Assert.Contains(job.Fingerprint, root.Element(Svg + "desc")!.Value, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    public void Every_station_appears_once_with_its_figures(string name)
    {
        var job = Examples.All[name]();
        var texts = Texts(job);
        var stations = texts.Where(text => text.Attribute("data-station") is not null).ToArray();
        Assert.Equal(
            job.Plan.Form.Stations.Select(station => station.Number.ToString(CultureInfo.InvariantCulture)),
            stations.Select(text => text.Value));
        foreach (var station in job.Plan.Form.Stations)
        {
            var row = stations[station.Number - 1].Attribute("y")!.Value;
            var cells = texts.Where(text => text.Attribute("y")!.Value == row).Select(text => text.Value).ToArray();
            Assert.Contains(station.MarkText, cells);
            if (station.Line is { } line)
            {
                Assert.Contains(line.MarkFar.Text, cells);
                // The sight line is a fold radius towards the lead-out from the first tangent line.
                var sight = job.Readout.OnTape(SightAtTheRightEdge(job, line));
                Assert.Contains(sight, cells);
            }
            else
            {
                Assert.Contains(job.Readout.Length(station.AtMm), cells);
                Assert.Contains(job.Readout.LaidOut(station.SightLineMm), cells);
            }
            Assert.Contains(Readout.Degrees(station.FoldAngle), cells);
            Assert.Contains(Readout.Degrees(station.StopSetting), cells);
        }
    }

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    [Trait("Category", "Long")]
    public void No_text_lies_on_another_or_leaves_the_sheet(string name)
    {
        var job = Examples.All[name]();
        TextBox.AssertApart(XDocument.Parse(Written.Svg(job)).Root!, Upright(job));
    }

    [Fact]
    public void What_the_caller_says_of_the_job_is_on_its_sheet_and_nothing_else()
    {
        var job = Examples.Clothoid();
        var texts = Texts(job).Select(text => text.Value).ToArray();
        foreach (var (name, value) in job.Given!.Fields())
        {
            Assert.Contains(name, texts);
            Assert.Contains(value, texts);
        }

        Assert.Equal(["part", "date"], new TitleBlock(Part: "7", Date: "May").Fields().Select(field => field.Name));
        var other = Texts(job with { Given = new(null, "a", "b", "c", "d", "e", "f") }).Select(text => text.Value).ToArray();
        Assert.Equal(texts.Except(other).Order(), job.Given.Fields().Select(field => field.Value).Order());
        var bare = Texts(job with { Given = null }).Select(text => text.Value).ToArray();
        Assert.DoesNotContain(bare, job.Given.Fields().Select(field => field.Name).Contains);
    }

    [Theory]
    [InlineData("Müller & Søn A/S, №5 Ø 20 ½ Ωmega Деталь", null)]
    [InlineData("line\nbreak", "\n")]
    [InlineData("板金", "板")]
    [InlineData("smile \U0001F600", "\U0001F600")]
    [InlineData("שלום", "ש")]
    [InlineData("e\u0301", "\u0301")]
    [InlineData("\u202Eevil", "\u202E")]
    [InlineData("half \uD800", "\uFFFD")]
    public void A_character_that_no_sheet_can_show_is_named(string text, string? lacking) => Assert.Equal(lacking, TitleBlock.NotShown(text));

    [Fact]
    public void The_section_gives_radius_sweep_flats_and_the_developed_length()
    {
        var texts = Texts(Examples.SixFolds()).Select(text => text.Value).ToArray();
        Assert.Contains("R 90 inside", texts);
        Assert.Contains("60°", texts);
        Assert.Contains("lead-in 80", texts);
        Assert.Contains("lead-out 150", texts);
        // Beside the curve itself, and as a part of 80 + (90 + 0.6) π/3 + 150.
        Assert.Contains("developed 94.88", texts);
        Assert.Contains("Developed: 80.00 + 94.88 + 150.00 = 324.88 mm", texts);
        Assert.Contains(Texts(Examples.Clothoid()).Select(text => text.Value), text => text == "R 3.15 to flat inside");
    }

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    public void The_next_steps_are_on_the_sheet(string name)
    {
        var job = Examples.All[name]();
        var words = string.Join(' ', Texts(job).Select(text => text.Value));
        Assert.NotEmpty(job.Plan.Next);
        Assert.All(job.Plan.Next, step => Assert.Contains(job.Wording(step.Text), words, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    public void A_browsers_print_cuts_no_line_of_text(string name)
    {
        var job = Examples.All[name]();
        var root = XDocument.Parse(Written.Svg(job)).Root!;
        var isInch = job.Units == LengthUnit.In;
        Assert.Equal(isInch ? "@page{size:letter;margin:10mm}" : "@page{size:A4;margin:10mm}", root.Element(Svg + "style")!.Value);
        // The picture is 160 of its own units wide and fills the paper between its margins; it begins at -5.
        var pitch = isInch ? (279.4 - 20) * 160 / (215.9 - 20) : (297 - 20) * 160 / (210.0 - 20);
        Assert.All(Upright(job).Select(TextBox.Of), text => Assert.Equal(Math.Floor((text.Top + 5) / pitch), Math.Floor((text.Bottom + 5) / pitch)));
    }

    [Fact]
    public void The_pull_has_a_row_for_every_fold_that_the_panel_reaches()
    {
        var job = Examples.SixFolds();
        var steps = job.Plan.Panel.Prediction!.Steps;
        Assert.NotEmpty(steps);
        var texts = Texts(job).Select(text => text.Value).ToArray();
        foreach (var step in steps)
            Assert.Contains(Readout.Degrees(step.EndAngle), texts);
        Assert.Contains("lead-out", texts);
        Assert.Contains("Pull", texts);
    }

    [Fact]
    public void What_cannot_be_made_says_so_across_the_sheet()
    {
        var marks = Texts(Examples.CannotBeMade()).Where(text => text.Value == "CANNOT BE MADE").ToArray();
        Assert.True(marks.Count(text => text.Attribute("transform") is not null) >= 3);
        Assert.Contains(marks, text => text.Attribute("transform") is null);
        Assert.DoesNotContain(Texts(Examples.SixFolds()), text => text.Value == "CANNOT BE MADE");
    }

    [Fact]
    public void A_title_with_markup_stays_text()
    {
        var job = Examples.SixFolds() with { Title = "a<b>&\"c\" \u0001 \U0001F600" };
        Assert.Equal("a<b>&\"c\"   \U0001F600", XDocument.Parse(Written.Svg(job)).Root!.Element(Svg + "title")!.Value);
    }

    [Fact]
    public void Two_hundred_folds_and_long_names_leave_nothing_on_top_of_anything()
    {
        var job = Examples.TwoHundredFolds();
        TextBox.AssertApart(XDocument.Parse(Written.Svg(job)).Root!, Upright(job));
    }

    // All but what lies across the sheet.
    [Fact]
    public void Marks_of_a_cone_are_its_lead_and_its_arc_along_both_cut_edges()
    {
        // A right cone between radii 60 and 120, 400 long, of a sheet 1.2 thick, measured inside; the arcs of the mid surface.
        var job = Examples.Cone();
        var slant = Math.Atan2(60, 400);
        double ArcOf(double radius) => Math.PI / 2 * (radius + (0.6 * Math.Cos(slant)));
        foreach (var (name, along) in (IEnumerable<(string, Func<double, double>)>)
            [
                ("first tangent line: over the form's first tangent line", _ => job.Panel.LeadInMm),
                ("last tangent line", radius => job.Panel.LeadInMm + ArcOf(radius)),
                ("pull here", radius => job.Panel.LeadInMm + ArcOf(radius) + job.Plan.Panel.Pull.LeverMm),
            ])
        {
            var row = Texts(job).Single(text => text.Value == name).Attribute("y")!.Value;
            var cells = Texts(job).Where(text => text.Attribute("y")!.Value == row).Select(text => text.Value).ToArray();
            Assert.Equal(along(120), double.Parse(cells[1], CultureInfo.InvariantCulture), 0.05);
            Assert.Equal(along(60), double.Parse(cells[2], CultureInfo.InvariantCulture), 0.05);
        }
    }

    [Fact]
    public void A_tapered_blank_can_be_cut_from_the_ordinates_on_its_sheet()
    {
        var job = Examples.Cone();
        var texts = Texts(job).Select(text => text.Value).ToArray();
        Assert.Contains("Cut the form", texts);
        Assert.Contains("Cut the panel", texts);
        var blank = job.Plan.Form.Blank;
        foreach (var station in job.Plan.Form.Stations)
        {
            Assert.Contains(job.Readout.Length(station.Line!.Near.X), texts);
            Assert.Contains(job.Readout.Length(blank.WidthMm - station.Line.Far.Y), texts);
        }

        Assert.DoesNotContain("Cut the form", Texts(Examples.SixFolds()).Select(text => text.Value));
    }

    [Fact]
    public void Fold_and_sight_line_of_a_taper_are_given_at_both_edges_of_its_sheet()
    {
        var job = Examples.Cone();
        var rows = Texts(job).GroupBy(text => text.Attribute("y")!.Value, text => text.Value).Select(row => row.ToArray()).Where(row => row.Length == 9).ToArray();
        foreach (var station in job.Plan.Form.Stations)
        {
            var row = rows.Single(cells => cells[0] == station.Number.ToString(CultureInfo.InvariantCulture));
            Assert.Equal(job.Readout.LaidOut(station.Line!.BaseFarMm), row[5]);
            Assert.Equal(job.Readout.LaidOut(station.Line.BaseNearMm), row[6]);
            Assert.Equal(job.Readout.LaidOut(SightAtTheRightEdge(job, station.Line)), row[8]);
        }
    }

    [Fact]
    public void A_mirrored_taper_is_cut_by_two_curves_and_the_flat_between()
    {
        var job = Examples.MirroredTaper();
        var (panel, texts) = (job.Plan.Panel, Texts(job));
        var width = panel.Blank.WidthMm;
        var rows = texts.GroupBy(text => text.Attribute("y")!.Value, text => text.Value).Select(row => row.ToArray()).ToArray();
        string[][] tangents = [.. panel.Marks.Where(mark => mark.Name.Contains("tangent line", StringComparison.Ordinal)).Select(mark => (string[])
        [
            job.Readout.LaidOut(mark.Far!.Value.X), job.Readout.LaidOut(width - mark.Far.Value.Y),
            job.Readout.LaidOut(mark.Near!.Value.X), job.Readout.LaidOut(width - mark.Near.Value.Y),
        ])];
        Assert.Equal(4, tangents.Length);
        var numbers = tangents.Select(cells => rows.Single(row => row.Length == 5 && row.Skip(1).SequenceEqual(cells))[0]);
        Assert.Equal(["1", "9", "10", "18"], numbers);
    }

    private static double SightAtTheRightEdge(DrawingJob job, Layout.FoldLine line)
    {
        Point near = line.FirstTangentNear, along = line.FirstTangentFar - near;
        // Level lines a distance apart cross y = 0 that distance over the sine apart.
        var crossing = near.X - (along.X / along.Y * near.Y);
        return crossing + (job.Form.FoldRadiusMm * along.Length / along.Y);
    }

    private static IEnumerable<XElement> Upright(DrawingJob job) => Texts(job).Where(text => text.Attribute("transform") is null);

    private static XElement[] Texts(DrawingJob job) => [.. XDocument.Parse(Written.Svg(job)).Descendants(Svg + "text")];
}
