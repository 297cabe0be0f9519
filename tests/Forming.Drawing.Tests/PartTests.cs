using CsCheck;
using Forming.Drawing.Parts;
using Forming.Numerics;
using Forming.Results;
using Forming.Tests;

namespace Forming.Drawing.Tests;

/// <summary>Parts of every job: drawn or refused in words, and pictures that were looked at.</summary>
public sealed class PartTests
{
    [Theory]
    [InlineData("ribbed", DrawingPart.FormBlank)]
    [InlineData("ribbed", DrawingPart.CheckTemplate)]
    [InlineData("ribbed", DrawingPart.Rib)]
    [InlineData("ribbed", DrawingPart.GaugeInside)]
    [InlineData("ribbed", DrawingPart.GaugeOutside)]
    [InlineData("ribbed", DrawingPart.GaugePulled)]
    [InlineData("cone", DrawingPart.FormBlank)]
    [InlineData("cone", DrawingPart.PanelBlank)]
    [InlineData("cone", DrawingPart.GaugeInside)]
    [InlineData("clothoid-inches", DrawingPart.PanelBlank)]
    public void Picture_is_the_one_that_was_looked_at(string name, DrawingPart part) =>
        Golden.Matches($"{name}.{part}.svg", Written.Svg(Examples.Named(name), part));

    [Theory]
    [MemberData(nameof(Examples.Names), MemberType = typeof(Examples))]
    [Trait("Category", "Long")]
    public void Every_part_of_every_job_is_drawn_or_refused_in_words(string name)
    {
        var job = Examples.All[name]();
        foreach (var part in Enum.GetValues<DrawingPart>())
        {
            try
            {
                Assert.NotEmpty(Written.Svg(job, part));
                Assert.NotEmpty(Written.Pdf(job, part, PaperSize.Letter));
                Assert.NotEmpty(Written.Pdf(job, part, layout: BlankLayout.Full));
            }
            catch (NoSolutionException refused)
            {
                Assert.Equal("drawing.no-such-part", refused.Code);
                Assert.True(part == DrawingPart.Rib || job.Plan.Taper is not null, refused.Message);
            }
        }
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0, 100)]
    public void A_cone_without_leads_has_gauges(double leadInMm, double leadOutMm)
    {
        var job = Examples.BareCone(leadInMm, leadOutMm);
        Assert.NotEmpty(Written.Svg(job, DrawingPart.GaugeInside));
        Assert.NotEmpty(Written.Svg(job, DrawingPart.GaugeOutside));
    }

    [Fact]
    [Trait("Category", "Long")]
    public void A_template_is_one_piece_and_its_edge_is_the_bend() => Gen.Select(
        Gen.Double[3, 3000], Gen.Double[5, 170], Gen.Double[0, 100], Gen.Double[0, 100], Gen.Bool).ForAll((radius, sweep, leadIn, leadOut, isInside) =>
        {
            var turn = Angle.FromDegrees(sweep).Radians;
            var centre = new Point(0, radius);
            List<Point> edge = [new(-leadIn, 0)];
            edge.AddRange(Enumerable.Range(0, 361).Select(i => centre - (radius * Point.Along(turn * i / 360).Left())));
            edge.Add(edge[^1] + (leadOut * Point.Along(turn)));
            var distinct = Shapes.Ribbon.Under(edge, 1).Inner;
            if (TemplateBody.Of(distinct, isInside) is not { } body)
            {
                // Only a bend of a few millimetres leaves no plate to hold.
                Assert.True(isInside && radius < 60);
                return;
            }

            Assert.Null(SimplePolygon.FirstCrossing(body.Outline));
            var onEdge = TemplateBody.Thinned(distinct);
            Assert.Equal(onEdge, body.Outline[..onEdge.Length]);
            // What is left out of a curve is out by less than a hundredth of a millimetre.
            Assert.All(distinct, point => Assert.InRange(DistanceTo(onEdge, point), 0, 0.01));
        });

    private static double DistanceTo(Point[] line, Point point) => Enumerable.Range(1, line.Length - 1).Min(i =>
    {
        var along = line[i] - line[i - 1];
        var share = Math.Clamp((point - line[i - 1]).Dot(along) / along.Dot(along), 0, 1);
        return (point - line[i - 1] - (share * along)).Length;
    });
}
