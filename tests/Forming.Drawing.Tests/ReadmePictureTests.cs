using Forming.Curves;
using Forming.Drawing.Blocks;
using Forming.Drawing.Svg;
using Forming.Facets;
using Forming.Materials;

namespace Forming.Drawing.Tests;

/// <summary>The picture that README shows: section and form blank of its first request.</summary>
public sealed class ReadmePictureTests
{
    [Fact]
    public void Picture_is_the_section_and_the_blank_of_the_first_request()
    {
        MaterialCatalog.Default.TryFind("al-5052-h32", out var aluminium);
        MaterialCatalog.Default.TryFind("steel-cr-cs", out var steel);
        var job = Examples.Job(
            "Cab corner: section and form blank",
            new()
            {
                Sheet = new(aluminium!, 1.6),
                Curve = new ArcCurve(95, Angle.FromDegrees(85)),
                WidthMm = 820,
                LeadInMm = 60,
                LeadOutMm = 220,
                Finish = Finish.Satin,
            },
            new() { Sheet = new(steel!, 2), FoldRadiusMm = 2, LeadInMm = 70, LeadOutMm = 60, WidthMm = 820, Stepping = new() });
        Assert.Equal(7, job.Plan.Form.Stations.Count);
        Assert.Equal(127.122758728, job.Plan.Form.Sweep.Degrees, 1e-6);
        Golden.Matches("readme.svg", Written.Text(stream => SvgSheet.Write(
            stream,
            PrintedPage.Of(job.Units),
            job.Title,
            "The form in section with the panel as pulled and as finished, and the flat form blank with its seven fold lines.",
            SheetComposer.Stacked([SectionBlock.Of(job, null, 110), .. FormBlankBlocks.Of(job, double.PositiveInfinity)]))));
    }
}
