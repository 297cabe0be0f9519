using Forming.Results;
using UglyToad.PdfPig;

namespace Forming.Drawing.Tests;

/// <summary>The card that is filled in by hand beside the strips.</summary>
public class StripCardTests
{
    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    public void A_strip_card_is_one_page_on_either_paper(string name)
    {
        foreach (var paper in Enum.GetValues<PaperSize>())
        {
            using var card = PdfDocument.Open(Written.Pdf(Examples.All[name](), DrawingPart.StripCard, paper));
            Assert.Equal(1, card.NumberOfPages);
        }
    }

    // Whoever types the card in finds the request's own words above every column.
    [Fact]
    public void The_columns_of_a_strip_card_are_named_as_the_request_names_them()
    {
        var card = Written.Svg(Examples.All["six-folds"](), DrawingPart.StripCard);
        foreach (var field in new[] { "thickness", "width", "formRadius", "lever", "finishedRadius", "finishedSweep", "verdict" })
            Assert.Contains(">" + field, card, StringComparison.Ordinal);
    }

    [Fact]
    public void A_strip_card_is_not_cut() => Assert.Equal(
        "drawing.no-such-part",
        Assert.Throws<NoSolutionException>(() => Written.Dxf(Examples.All["six-folds"](), DrawingPart.StripCard)).Code);
}
