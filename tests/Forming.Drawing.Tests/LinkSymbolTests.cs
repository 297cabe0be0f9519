using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Forming.Drawing.Pdf;
using Forming.Drawing.Svg;
using UglyToad.PdfPig;
using ZXing.Common;
using ZXing.QrCode.Internal;

namespace Forming.Drawing.Tests;

/// <summary>The link on a sheet, read back from what was written by a reader that knows nothing of the writer.</summary>
public partial class LinkSymbolTests
{
    // ISO/IEC 18004: four modules stay light all round.
    private const double QuietModules = 4;

    private const double MmPerPoint = 25.4 / 72;

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static TheoryData<string> Links() => new()
    {
        "https://forms.example/v1/links/q1YqzkhML8pMSVWyUkpMykxLTlGqBQA/drawing",
        Long(400),
        Long(1023),
    };

    [Theory]
    [MemberData(nameof(Links))]
    public void Screen_sheet_leads_to_its_link(string link)
    {
        var root = XDocument.Parse(Written.Svg(Examples.SixFolds() with { Link = link })).Root!;
        AssertRead(link, root);
    }

    [Theory]
    [MemberData(nameof(Links))]
    public void Screen_sheet_of_a_program_leads_to_its_link(string link)
    {
        var job = ProgramExamples.Of("six-folds") with { Link = link };
        AssertRead(link, XDocument.Parse(Written.Text(stream => ProgramSvgSheet.Write(job, stream))).Root!);
    }

    [Theory]
    [MemberData(nameof(Links))]
    [Trait("Category", "Long")]
    public void Paper_sheet_leads_to_its_link_and_the_symbol_stays_on_the_paper(string link)
    {
        foreach (var paper in new[] { PaperSize.A4, PaperSize.Letter })
        {
            AssertRead(link, Written.Pdf(Examples.SixFolds() with { Link = link }, paper));
            AssertRead(link, Written.Bytes(stream => ProgramPdfSheet.Write(ProgramExamples.Of("six-folds") with { Link = link }, paper, stream)));
        }
    }

    [Fact]
    public void The_mark_of_what_cannot_be_made_leaves_the_symbol_alone()
    {
        var link = Long(1000);
        var root = XDocument.Parse(Written.Svg(Examples.CannotBeMade() with { Link = link })).Root!;
        AssertRead(link, root);
        // What lies below it is covered, quiet zone and all, before it is drawn.
        var path = Symbol(root);
        var cover = path.ElementsBeforeSelf(Svg + "path").Last();
        Assert.Equal("#fff", (string?)cover.Attribute("fill"));
        var (tiles, covered) = (Boxes(path), Assert.Single(Boxes(cover)));
        var (module, around) = (Module(tiles), Around(tiles));
        Assert.Equal(around.Left - (QuietModules * module), covered.Left, 0.02);
        Assert.Equal(around.Right + (QuietModules * module), covered.Right, 0.02);
        Assert.Equal(around.Top - (QuietModules * module), covered.Top, 0.02);
        Assert.Equal(around.Bottom + (QuietModules * module), covered.Bottom, 0.02);
        Assert.All(root.Descendants(Svg + "text").Where(text => text.Value == "CANNOT BE MADE" && text.Attribute("transform") is not null), text => Assert.True(text.IsBefore(cover)));
    }

    [Fact]
    public void A_sheet_without_a_link_has_no_symbol()
    {
        Assert.DoesNotContain("crispEdges", Written.Svg(Examples.SixFolds()), StringComparison.Ordinal);
        using var document = PdfDocument.Open(Written.Pdf(Examples.SixFolds()));
        Assert.DoesNotContain(document.GetPages(), page => page.GetWords().Any(word => word.Text == "LINK"));
    }

    private static string Long(int length)
    {
        const string head = "https://forms.example/v1/links/", tail = "/drawing", letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
        var random = new Random(length);
        return head + string.Concat(Enumerable.Range(0, length - head.Length - tail.Length).Select(_ => letters[random.Next(letters.Length)])) + tail;
    }

    private static void AssertRead(string link, XElement root)
    {
        var boxes = Boxes(Symbol(root));
        Assert.Equal(link, Read(boxes, Module(boxes)));
        var quiet = Quiet(boxes);
        var sheet = root.Attribute("viewBox")!.Value.Split(' ').Select(Number).ToArray();
        Assert.True(quiet.Left >= sheet[0] && quiet.Top >= sheet[1] && quiet.Right <= sheet[0] + sheet[2] && quiet.Bottom <= sheet[1] + sheet[3]);
        var texts = root.Descendants(Svg + "text").Where(text => text.Attribute("transform") is null).Select(TextBox.Of);
        Assert.DoesNotContain(texts, text => text.Overlaps(new("symbol", quiet.Left, quiet.Top, quiet.Right, quiet.Bottom)));
    }

    private static void AssertRead(string link, byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        var page = document.GetPages().Single(page => page.GetWords().Any(word => word.Text == "LINK"));
        // Rectangles filled black; all of the symbol are one module high, and nothing else on a sheet is filled so often.
        var boxes = page.Paths
            .Where(path => path.IsFilled && !path.IsStroked && path.FillColor?.ToRGBValues() is (0, 0, 0))
            .Select(path => path.GetBoundingRectangle()!.Value)
            .Select(box => new Box(box.Left * MmPerPoint, (page.Height - box.Top) * MmPerPoint, box.Right * MmPerPoint, (page.Height - box.Bottom) * MmPerPoint))
            .GroupBy(box => Math.Round(box.Bottom - box.Top, 2))
            .MaxBy(boxes => boxes.Count())!
            .ToArray();
        var module = Module(boxes);
        // As small as a camera still reads from paper.
        Assert.InRange(module, 0.45, 1);
        Assert.Equal(link, Read(boxes, module));
        var quiet = Quiet(boxes);
        Assert.True(quiet is { Left: > 0, Top: > 0 } && quiet.Right < page.Width * MmPerPoint && quiet.Bottom < page.Height * MmPerPoint, quiet.ToString());
        Assert.DoesNotContain(page.Letters, letter =>
            letter.TextOrientation == UglyToad.PdfPig.Content.TextOrientation.Horizontal
            && letter.BoundingBox.Left * MmPerPoint < quiet.Right
            && letter.BoundingBox.Right * MmPerPoint > quiet.Left
            && (page.Height - letter.BoundingBox.Top) * MmPerPoint < quiet.Bottom
            && (page.Height - letter.BoundingBox.Bottom) * MmPerPoint > quiet.Top);
    }

    private static string Read(IReadOnlyList<Box> boxes, double module)
    {
        var around = Around(boxes);
        var side = (int)Math.Round((around.Right - around.Left) / module);
        Assert.Equal(side, (int)Math.Round((around.Bottom - around.Top) / module));
        var matrix = new BitMatrix(side);
        foreach (var box in boxes)
        {
            var row = (int)Math.Round((box.Top - around.Top) / module);
            for (var column = (int)Math.Round((box.Left - around.Left) / module); column < Math.Round((box.Right - around.Left) / module); column++)
                matrix[column, row] = true;
        }

        return new Decoder().decode(matrix, null).Text;
    }

    private static XElement Symbol(XElement root) =>
        Assert.Single(root.Descendants(Svg + "path"), path => (string?)path.Attribute("shape-rendering") == "crispEdges" && (string?)path.Attribute("fill") == "#000");

    private static Box[] Boxes(XElement path) =>
        [.. Rectangles().Matches(path.Attribute("d")!.Value).Select(match => new Box(Number(match, 1), Number(match, 2), Number(match, 3), Number(match, 4)))];

    private static double Module(IEnumerable<Box> boxes) => boxes.Average(box => box.Bottom - box.Top);

    private static Box Quiet(IReadOnlyList<Box> boxes)
    {
        var (around, rim) = (Around(boxes), QuietModules * Module(boxes));
        return new(around.Left - rim, around.Top - rim, around.Right + rim, around.Bottom + rim);
    }

    private static Box Around(IReadOnlyList<Box> boxes) =>
        new(boxes.Min(box => box.Left), boxes.Min(box => box.Top), boxes.Max(box => box.Right), boxes.Max(box => box.Bottom));

    private static double Number(Match match, int group) => Number(match.Groups[group].Value);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"M([\d.]+),([\d.]+)H([\d.]+)V([\d.]+)H[\d.]+Z?")]
    private static partial Regex Rectangles();

    private readonly record struct Box(double Left, double Top, double Right, double Bottom);
}
