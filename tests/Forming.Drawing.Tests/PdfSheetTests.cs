using System.Globalization;
using System.Text;
using Forming.Drawing.Parts;
using Forming.Drawing.Pdf;
using Forming.Drawing.Sheets;
using Forming.Layout;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Util;

namespace Forming.Drawing.Tests;

public class PdfSheetTests
{
    private const double MmPerPoint = 25.4 / 72;
    private const double FoldPen = 0.25;

    // Upper edge of the foot and the scale above it [points].
    private const double ScaleTop = 20 / MmPerPoint;

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    [Trait("Category", "Long")]
    public void Equal_jobs_give_equal_bytes(string name) =>
        Assert.Equal(Written.Pdf(Examples.All[name]()), Written.Pdf(Examples.All[name]()));

    [Fact]
    public void Different_jobs_have_different_ids() =>
        Assert.NotEqual(Id(Written.Pdf(Examples.SixFolds())), Id(Written.Pdf(Examples.TwentyFolds())));

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    [Trait("Category", "Long")]
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
    [InlineData("six-folds", PaperSize.A4, BlankLayout.Stick)]
    [InlineData("six-folds", PaperSize.Letter, BlankLayout.Full)]
    [InlineData("clothoid-inches", PaperSize.Letter, BlankLayout.Stick)]
    [InlineData("sixty-folds", PaperSize.A4, BlankLayout.Stick)]
    [InlineData("sixty-folds", PaperSize.A4, BlankLayout.Full)]
    [InlineData("close-folds", PaperSize.A4, BlankLayout.Stick)]
    [InlineData("close-folds", PaperSize.A4, BlankLayout.Full)]
    public void Layout_is_true_to_scale_and_names_every_fold_on_every_page_that_it_crosses(string name, PaperSize paper, BlankLayout layout)
    {
        var job = name == "close-folds" ? Examples.CloseFolds() : Examples.All[name]();
        using var document = PdfDocument.Open(Written.Pdf(job, DrawingPart.FormBlank, paper, layout));
        var found = new HashSet<int>();
        foreach (var page in document.GetPages().Where(IsTile))
        {
            // Fold lines are level lines of the fold pen, as the scale at the foot is and the sample in the legend, 10 mm long.
            var lines = LevelLines(page, FoldPen).Where(line => line.Y > ScaleTop && line.LengthMm > 10.1).Select(line => line.Y).OrderDescending().ToArray();
            var labels = Labels(page).OrderBy(label => label.Number).ToArray();
            Assert.Equal(lines.Length, labels.Length);
            Assert.All(labels.Zip(lines), pair => Assert.InRange((pair.First.Y - pair.Second) * MmPerPoint, -5, 5));
            for (var i = 1; i < lines.Length; i++)
            {
                Station before = job.Plan.Form.Stations[labels[i - 1].Number - 1], station = job.Plan.Form.Stations[labels[i].Number - 1];
                Assert.Equal(Math.Abs(station.AtMm - before.AtMm), (lines[i - 1] - lines[i]) * MmPerPoint, 0.01);
            }

            found.UnionWith(labels.Select(label => label.Number));
        }

        Assert.Equal(job.Plan.Form.Stations.Count, found.Count);
    }

    [Theory]
    [InlineData("cone", PaperSize.A4)]
    [InlineData("cone", PaperSize.Letter)]
    [InlineData("mirrored-taper", PaperSize.A4)]
    public void A_slanting_fold_is_named_on_every_page_that_it_crosses(string name, PaperSize size)
    {
        var job = Examples.All[name]();
        var folds = 0;
        foreach (var page in TiledLayout.Of(job, FlatParts.Of(job, DrawingPart.FormBlank), Paper.Of(size)))
        {
            // Ticks of the scale and the sample in the legend are shorter and level or upright.
            var crossing = page.Items.OfType<Stroke>().Count(stroke =>
                stroke.Pen == Pen.Fold && stroke.Points[0].X != stroke.Points[^1].X && stroke.Points[0].Y != stroke.Points[^1].Y);
            var named = page.Items.OfType<Label>().Select(label => label.Station).OfType<int>().ToArray();
            Assert.Equal(named.Distinct(), named);
            Assert.InRange(named.Length - crossing, 0, 1); // the fold in the middle may be level
            folds = Math.Max(folds, named.DefaultIfEmpty().Max());
        }

        Assert.Equal(job.Plan.Form.Stations.Count, folds);
    }

    [Theory]
    [InlineData(BlankLayout.Stick)]
    [InlineData(BlankLayout.Full)]
    [Trait("Category", "Long")]
    public void Labels_of_close_folds_do_not_lie_on_one_another(BlankLayout layout)
    {
        using var document = PdfDocument.Open(Written.Pdf(Examples.CloseFolds(), DrawingPart.FormBlank, layout: layout));
        foreach (var page in document.GetPages())
        {
            var boxes = page.GetWords().Where(word => word.TextOrientation == TextOrientation.Horizontal)
                .Select(word => word.BoundingBox).ToArray();
            for (var i = 0; i < boxes.Length; i++)
            {
                for (var j = i + 1; j < boxes.Length; j++)
                {
                    var isApart = boxes[i].Right <= boxes[j].Left || boxes[j].Right <= boxes[i].Left || boxes[i].Top <= boxes[j].Bottom || boxes[j].Top <= boxes[i].Bottom;
                    Assert.True(isApart, $"{boxes[i]} and {boxes[j]} on page {page.Number}");
                }
            }
        }
    }

    [Fact]
    public void A_story_stick_is_one_page_wide()
    {
        var job = Examples.TwentyFolds();
        using var stick = PdfDocument.Open(Written.Pdf(job, DrawingPart.FormBlank));
        using var full = PdfDocument.Open(Written.Pdf(job, DrawingPart.FormBlank, layout: BlankLayout.Full));
        Assert.True(stick.NumberOfPages < full.NumberOfPages);
        Assert.All(stick.GetPages(), page => Assert.DoesNotContain("page A2", page.Text, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("six-folds", 100)]
    [InlineData("clothoid-inches", 101.6)]
    public void A_square_to_measure_is_as_large_as_it_says(string name, double sideMm)
    {
        var job = Examples.All[name]();
        foreach (var part in Enum.GetValues<DrawingPart>().Where(part => part is not (DrawingPart.Rib or DrawingPart.StripCard or DrawingPart.PanelCard)))
        {
            using var document = PdfDocument.Open(Written.Pdf(job, part));
            var squares = document.GetPages()
                .SelectMany(page => page.Paths, (page, path) => (page, box: path.GetBoundingRectangle()))
                .Where(square => square.box is { } box && Math.Abs((box.Width * MmPerPoint) - sideMm) < 0.001 && Math.Abs((box.Height * MmPerPoint) - sideMm) < 0.001);
            Assert.Contains(sideMm == 100 ? "measure 100 mm" : "measure 4 in", Assert.Single(squares).page.Text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    [Trait("Category", "Long")]
    public void No_printed_line_is_thinner_than_the_standard_allows(string name)
    {
        using var document = PdfDocument.Open(Written.Pdf(Examples.All[name]()));
        Assert.All(
            document.GetPages().SelectMany(page => page.Paths).Where(path => path.IsStroked),
            path => Assert.True(path.LineWidth * MmPerPoint > 0.13 - 1e-3, $"{path.LineWidth * MmPerPoint} mm"));
    }

    [Fact]
    public void A_viewer_is_told_not_to_fit_pages_to_the_paper()
    {
        foreach (var pdf in (byte[][])[Written.Pdf(Examples.SixFolds()), Written.Pdf(Examples.SixFolds(), DrawingPart.GaugeInside)])
        {
            using var document = PdfDocument.Open(pdf);
            var catalog = document.Structure.Catalog.CatalogDictionary;
            Assert.True(catalog.TryGet(UglyToad.PdfPig.Tokens.NameToken.Create("ViewerPreferences"), out var preferences));
            Assert.Contains("PrintScaling, /None", Resolved(document, preferences), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_page_lies_on_its_side_where_that_saves_one()
    {
        using var document = PdfDocument.Open(Written.Pdf(Examples.Cone(), DrawingPart.FormBlank));
        Assert.All(document.GetPages(), page => Assert.True(page.Width > page.Height));
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
    [Trait("Category", "Long")]
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

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    [Trait("Category", "Long")]
    public void No_sheet_is_taken_for_a_few_lines_and_all_keep_their_margins(string name)
    {
        foreach (var paper in (Pdf.Paper[])[Pdf.Paper.Of(PaperSize.A4), Pdf.Paper.Of(PaperSize.Letter)])
        {
            var pages = Pdf.SheetPages.Of(Examples.All[name](), paper).ToArray();
            // Two at the foot of every page.
            Assert.All(pages, page => Assert.InRange(page.Items.OfType<Sheets.Label>().Count(), 10, int.MaxValue));
            Assert.All(pages.SelectMany(page => page.Items.OfType<Sheets.Label>()), label => Assert.InRange(
                label.At.Y, Pdf.Paper.Margin, paper.Height - Pdf.Paper.Margin + 0.01));
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

    private static string Resolved(PdfDocument document, UglyToad.PdfPig.Tokens.IToken token) =>
        (token is UglyToad.PdfPig.Tokens.IndirectReferenceToken reference ? document.Structure.GetObject(reference.Data).Data : token).ToString()!;

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
        from i in Enumerable.Range(1, Math.Max(0, words.Length - 1))
        where words[i] == "mark" && int.TryParse(words[i - 1], CultureInfo.InvariantCulture, out _)
        select (line.Y, int.Parse(words[i - 1], CultureInfo.InvariantCulture));

    private static IEnumerable<(double Y, double LengthMm)> LevelLines(Page page, double penMm) =>
        from path in page.Paths
        where path.IsStroked && Math.Abs(path.LineWidth * MmPerPoint - penMm) < 0.001
        let box = path.GetBoundingRectangle()
        where box is { Height: < 1e-6, Width: > 1 }
        select (box.Value.Bottom, box.Value.Width * MmPerPoint);
}
