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
            Assert.Contains(job.Readout.Length(station.AtMm), cells);
            if (station.Line is { } line)
            {
                Assert.Contains(line.MarkFar.Text, cells);
                Assert.Contains(job.Readout.Length(line.BaseFarMm), cells);
            }
            Assert.Contains(Readout.Degrees(station.FoldAngle), cells);
            Assert.Contains(Readout.Degrees(station.StopSetting), cells);
        }
    }

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    public void No_text_lies_on_another_or_leaves_the_sheet(string name)
    {
        var job = Examples.All[name]();
        TextBox.AssertApart(XDocument.Parse(Written.Svg(job)).Root!, Upright(job));
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
    private static IEnumerable<XElement> Upright(DrawingJob job) => Texts(job).Where(text => text.Attribute("transform") is null);

    private static XElement[] Texts(DrawingJob job) => [.. XDocument.Parse(Written.Svg(job)).Descendants(Svg + "text")];
}
