using System.Text.RegularExpressions;
using Forming.Results;

namespace Forming.Drawing.Tests;

/// <summary>The card that a shop fills in with what was measured on a panel.</summary>
public sealed class PanelCardTests
{
    [Fact]
    public void It_asks_for_what_a_correction_needs_beside_what_was_planned()
    {
        var job = Examples.Named("six-folds");
        var card = Written.Svg(job, DrawingPart.PanelCard);
        foreach (var field in new[] { "panel.thickness", "measured.sweep", "measured.radius", "panel.lever", "stations.angle", "/v1/panels/corrections" })
            Assert.Contains(field, card, StringComparison.Ordinal);
        Assert.Contains("between folds 3 and 5", card, StringComparison.Ordinal);
        foreach (var station in job.Plan.Form.Stations)
            Assert.Contains($"{station.Number}: {Readout.Degrees(station.FoldAngle)}", card, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("six-folds")]
    [InlineData("twenty-folds")]
    [InlineData("forty-folds")]
    public void It_is_one_page(string name)
    {
        var pages = Written.Pdf(Examples.Named(name), DrawingPart.PanelCard);
        Assert.Single(Regex.Matches(System.Text.Encoding.Latin1.GetString(pages), "/Type\\s*/Page\\b"));
    }

    [Fact]
    public void A_taper_has_none_and_a_machine_gets_none()
    {
        Assert.Contains("tapered", Assert.Throws<NoSolutionException>(() => Written.Svg(Examples.Named("cone"), DrawingPart.PanelCard)).Message, StringComparison.Ordinal);
        Assert.Contains("to fill in", Assert.Throws<NoSolutionException>(() => Written.Dxf(Examples.Named("six-folds"), DrawingPart.PanelCard)).Message, StringComparison.Ordinal);
    }
}
