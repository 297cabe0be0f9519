using System.Globalization;
using System.Text;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Util;

namespace Forming.Drawing.Tests;

public class PdfSheetTests
{
    private const double MmPerPoint = 25.4 / 72;
    private const double FoldPen = 0.3 * 0.4;

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    public void Equal_jobs_give_equal_bytes(string name) =>
        Assert.Equal(Written.Pdf(Examples.All[name]()), Written.Pdf(Examples.All[name]()));

    [Fact]
    public void Different_jobs_have_different_ids() =>
        Assert.NotEqual(Id(Written.Pdf(Examples.SixFolds())), Id(Written.Pdf(Examples.TwentyFolds())));

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    public void Sheet_has_a_row_for_every_station(string name)
    {
        var job = Examples.All[name]();
        using var document = PdfDocument.Open(Written.Pdf(job));
        var rows = document.GetPages().Where(page => !IsTile(page)).SelectMany(Lines).ToHashSet();
        foreach (var station in job.Plan.Form.Stations)
        {
            var places = station.Line is { } line
                ? $"{line.MarkFar.Text} {station.MarkText} "
                : $"{station.MarkText} {job.Readout.Length(station.AtMm)} {job.Readout.LaidOut(station.SightLineMm)} ";
            Assert.Contains(rows, row => row.StartsWith(string.Create(CultureInfo.InvariantCulture, $"{station.Number} {places}"), StringComparison.Ordinal)
                && row.EndsWith($" {Readout.Degrees(station.FoldAngle)} {Readout.Degrees(station.StopSetting)}", StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("six-folds", PaperSize.A4)]
    [InlineData("six-folds", PaperSize.Letter)]
    [InlineData("clothoid-inches", PaperSize.Letter)]
    [InlineData("sixty-folds", PaperSize.A4)]
    public void Layout_is_true_to_scale(string name, PaperSize paper)
    {
        var job = Examples.All[name]();
        using var document = PdfDocument.Open(Written.Pdf(job, paper));
        var found = new HashSet<int>();
        foreach (var page in document.GetPages().Where(IsTile))
        {
            // Fold lines are level lines of the fold pen; its width tells them from all others. Each lies right below its label.
            var lines = LevelLines(page, FoldPen).Select(line => line.Y).ToArray();
            var drawn = (from label in Labels(page) select (Station: job.Plan.Form.Stations[label.Number - 1], Y: lines.Where(y => y < label.Y).Max())).ToArray();
            foreach (var (station, y) in drawn)
            {
                Assert.Equal(Math.Abs(station.AtMm - drawn[0].Station.AtMm), Math.Abs(y - drawn[0].Y) * MmPerPoint, 0.01);
                found.Add(station.Number);
            }
        }

        Assert.Equal(job.Plan.Form.Stations.Count, found.Count);
    }

    [Theory]
    [InlineData("six-folds", 100)]
    [InlineData("clothoid-inches", 101.6)]
    public void Check_scale_is_as_long_as_it_says(string name, double lengthMm)
    {
        using var document = PdfDocument.Open(Written.Pdf(Examples.All[name]()));
        foreach (var page in document.GetPages().Where(IsTile))
            Assert.Contains(LevelLines(page, FoldPen), line => Math.Abs(line.LengthMm - lengthMm) < 0.001);
    }

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    public void Every_station_is_on_the_layout(string name)
    {
        var job = Examples.All[name]();
        using var document = PdfDocument.Open(Written.Pdf(job));
        if (job.Plan.Taper is not null)
        {
            // Labels lie along slanting lines.
            var text = string.Concat(document.GetPages().Where(IsTile).Select(page => page.Text));
            Assert.All(job.Plan.Form.Stations, station => Assert.Contains($"right {station.MarkText}, fold", text, StringComparison.Ordinal));
            return;
        }

        var words = document.GetPages().Where(IsTile).SelectMany(Lines).ToArray();
        foreach (var station in job.Plan.Form.Stations)
        {
            var label = string.Create(CultureInfo.InvariantCulture, $"{station.Number} mark {station.MarkText},");
            Assert.Contains(words, line => line.StartsWith(label, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Many_at_once_are_each_as_if_alone()
    {
        var alone = Written.Pdf(Examples.SixFolds());
        var together = new byte[16][];
        Parallel.For(0, together.Length, i => together[i] = Written.Pdf(Examples.SixFolds()));
        Assert.All(together, bytes => Assert.Equal(alone, bytes));
    }

    [Theory]
    [InlineData("\u0001 control")]
    [InlineData("\U0001F600 \u677F\u91D1")]
    [InlineData("\uD800 half a pair")]
    [InlineData("(brackets) \\ and Date(D:12345678901234)")]
    [InlineData("")]
    public void Any_title_can_be_written(string title)
    {
        var job = Examples.SixFolds() with { Title = title };
        using var document = PdfDocument.Open(Written.Pdf(job));
        Assert.True(document.NumberOfPages > 2);
        Assert.NotEmpty(Written.Svg(job));
        Assert.NotEmpty(Written.Dxf(job));
        Assert.NotEmpty(Written.Glb(job));
    }

    [Fact]
    public void Two_hundred_folds_with_long_names_are_all_there()
    {
        var job = Examples.TwoHundredFolds();
        using var document = PdfDocument.Open(Written.Pdf(job));
        var rows = document.GetPages().Where(page => !IsTile(page)).SelectMany(Lines).ToHashSet();
        Assert.All(job.Plan.Form.Stations, station => Assert.Contains(rows, row => row.StartsWith(
            string.Create(CultureInfo.InvariantCulture, $"{station.Number} {station.MarkText} "), StringComparison.Ordinal)));
    }

    [Fact]
    public void Every_page_of_what_cannot_be_made_says_so()
    {
        using var document = PdfDocument.Open(Written.Pdf(Examples.CannotBeMade()));
        Assert.All(document.GetPages(), page => Assert.Contains("CANNOT BE MADE", page.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void Page_operators_are_the_ones_that_were_looked_at()
    {
        using var document = PdfDocument.Open(Written.Pdf(Examples.SixFolds()));
        var text = new StringBuilder();
        foreach (var page in document.GetPages())
        {
            text.Append(CultureInfo.InvariantCulture, $"page {page.Number}\n");
            foreach (var operation in page.Operations)
            {
                using var written = new MemoryStream();
                operation.Write(written);
                text.Append(Encoding.Latin1.GetString(written.ToArray()).TrimEnd()).Append('\n');
            }
        }

        Golden.Matches("six-folds.pdf.txt", text.ToString());
    }

    private static string Id(byte[] pdf)
    {
        var text = Encoding.Latin1.GetString(pdf);
        return text[text.LastIndexOf("/ID[<", StringComparison.Ordinal)..][5..37];
    }

    private static bool IsTile(Page page) => page.Text.Contains("measure this line first", StringComparison.Ordinal);

    // The mark across a page of what cannot be made is not a line to read.
    private static IEnumerable<(double Y, string Text)> LevelText(Page page) => DefaultWordExtractor.Instance
        .GetWords([.. page.Letters.Where(letter => letter.TextOrientation == TextOrientation.Horizontal)])
        .GroupBy(word => Math.Round(word.Letters[0].StartBaseLine.Y, 1))
        .Select(line => (line.Key, string.Join(' ', line.OrderBy(word => word.BoundingBox.Left).Select(word => word.Text))));

    private static IEnumerable<string> Lines(Page page) => LevelText(page).Select(line => line.Text);

    private static IEnumerable<(double Y, int Number)> Labels(Page page) =>
        from line in LevelText(page)
        let words = line.Text.Split(' ')
        where words is [_, "mark", ..]
        select (line.Y, int.Parse(words[0], CultureInfo.InvariantCulture));

    private static IEnumerable<(double Y, double LengthMm)> LevelLines(Page page, double penMm) =>
        from path in page.Paths
        where path.IsStroked && Math.Abs(path.LineWidth * MmPerPoint - penMm) < 0.001
        let box = path.GetBoundingRectangle()
        where box is { Height: < 1e-6, Width: > 1 }
        select (box.Value.Bottom, box.Value.Width * MmPerPoint);
}
