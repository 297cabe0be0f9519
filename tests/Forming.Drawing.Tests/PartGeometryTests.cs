using System.Globalization;
using System.Text;
using System.Xml.Linq;
using Forming.Curves;
using Forming.Drawing.Shapes;
using Forming.Results;
using NetTopologySuite.Geometries;

namespace Forming.Drawing.Tests;

/// <summary>What a shop cuts by, read back from the files by readers that know nothing of this project.</summary>
public sealed class PartGeometryTests
{
    private static readonly GeometryFactory Geometry = new();

    [ReaderTheory]
    [InlineData(200, 80, 14)]
    [InlineData(90, 60, 6)]
    [InlineData(150, 90, 16)]
    [InlineData(110, 150, 18)]
    public void A_rib_fits_the_inside_of_the_form(double radiusMm, double sweepDegrees, int folds)
    {
        var job = Examples.Ribbed(radiusMm, sweepDegrees, folds);
        var ribs = Outlines(job, DrawingPart.Rib, "RIB_CUT");
        Assert.Equal(job.Plan.Form.Ribs!.AtMm.Count, ribs.Length);
        var form = FormShape.Of(job).NearEnd;
        var sheet = PolygonOf(form.Outline);
        var rib = ribs[0];
        // Not into the sheet of the form, and close under every flat that it reaches.
        Assert.InRange(rib.Intersection(sheet).Area, 0, 1e-6 * sheet.Area);
        var inside = job.Plan.Form.Section.InsideProfile;
        var reached = 0;
        for (var j = 1; j + 1 < job.Plan.Form.Stations.Count; j++)
        {
            var middle = 0.5 * (inside[2 * j] + inside[(2 * j) + 1]);
            if (middle.X < ribs[0].EnvelopeInternal.MinX + 1)
                continue;
            Assert.InRange(rib.Distance(PointOf(middle)), 0, 0.05);
            reached++;
        }

        Assert.True(reached > job.Plan.Form.Stations.Count / 2);
    }

    [ReaderTheory]
    [InlineData(90, 30, 4)]
    [InlineData(90, 60, 6)]
    [InlineData(200, 80, 14)]
    public void A_rib_is_a_plate_to_hold_where_the_form_ends(double radiusMm, double sweepDegrees, int folds)
    {
        var job = Examples.Ribbed(radiusMm, sweepDegrees, folds);
        var rib = Outlines(job, DrawingPart.Rib, "RIB_CUT")[0];
        var inside = job.Plan.Form.Section.InsideProfile;
        var along = 1 / (inside[^1] - inside[^2]).Length * (inside[^1] - inside[^2]);
        Assert.Equal(0, rib.Distance(PointOf(inside[^1] + (2 * along) + (5 * along.Left()))));
    }

    [ReaderFact]
    public void A_rib_is_notched_for_the_end_of_the_lead_flat()
    {
        var job = Examples.Named("ribbed");
        var rib = Outlines(job, DrawingPart.Rib, "RIB_CUT")[0];
        var form = FormShape.Of(job).NearEnd;
        Point inner = form.Inner[^1], outer = form.Outer[^1], before = form.Inner[^2];
        var along = 1 / (inner - before).Length * (inner - before);
        // Beyond the flat's end the rib reaches most of the way to the contact face, and not past it.
        var beyond = (0.9 * outer) + (0.1 * inner) + (1 * along);
        Assert.InRange(rib.Distance(PointOf((0.5 * (inner + outer)) + (0.01 * along))), 0, 1e-6);
        Assert.True(rib.Distance(PointOf(beyond)) > 0);
        Assert.InRange(rib.Distance(PointOf(outer + along)), 0.2, 0.5);
    }

    [ReaderTheory]
    [InlineData("six-folds")]
    [InlineData("twenty-folds")]
    [InlineData("ribbed")]
    [InlineData("clothoid-inches")]
    public void The_check_template_touches_every_flat_of_the_contact_face_and_clears_the_folds(string name)
    {
        var job = Examples.Named(name);
        var template = Outlines(job, DrawingPart.CheckTemplate, "TEMPLATE_CUT").Single();
        var form = FormShape.Of(job).NearEnd;
        var sheet = PolygonOf(form.Outline);
        Assert.InRange(template.Intersection(sheet).Area, 0, 1e-6 * sheet.Area);
        var vertices = job.Plan.Form.Section.Vertices;
        for (var i = 2; i < vertices.Count - 1; i++)
            Assert.InRange(template.Distance(PointOf(0.5 * (vertices[i - 1] + vertices[i]))), 0, 0.001);
    }

    [Theory]
    [InlineData(40, 60)]
    [InlineData(90, 90)]
    [InlineData(220, 150)]
    [InlineData(800, 25)]
    [InlineData(2500, 60)]
    public void The_panel_gauges_have_the_finished_radius(double radiusMm, double sweepDegrees)
    {
        var job = Examples.ArcJob(radiusMm, sweepDegrees);
        var thickness = job.Panel.Sheet.ThicknessMm;
        var insideMm = job.Panel.Surface switch
        {
            Surface.Inside => radiusMm,
            Surface.Outside => radiusMm - thickness,
            _ => radiusMm - (thickness / 2),
        };
        var inside = Picture(job, DrawingPart.GaugeInside);
        var outside = Picture(job, DrawingPart.GaugeOutside);
        var centre = new Point(0, insideMm);
        for (var i = 1; i < 20; i++)
        {
            // From the middle of the bend out: first the inside gauge's edge, then the panel, then the outside gauge's.
            var ray = Point.Along((-Math.PI / 2) + (Angle.FromDegrees(sweepDegrees).Radians * i / 20));
            Assert.InRange(inside.Boundary.Distance(PointOf(centre + (insideMm * ray))), 0, 0.02);
            Assert.InRange(outside.Boundary.Distance(PointOf(centre + ((insideMm + thickness) * ray))), 0, 0.02);
        }

        Assert.InRange(inside.Distance(outside), thickness - 0.02, thickness + 0.001);
    }

    [ReaderTheory]
    [InlineData("six-folds")]
    [InlineData("twenty-folds")]
    [InlineData("ribbed")]
    [InlineData("clothoid-inches")]
    public void The_gauge_for_the_panel_as_pulled_lies_over_the_curve_that_the_form_offers(string name)
    {
        var job = Examples.Named(name);
        var gauge = Outlines(job, DrawingPart.GaugePulled, "GAUGE_CUT").Single();
        var contact = job.Plan.Form.Section.ContactCurve;
        Assert.All(contact, point => Assert.InRange(
            gauge.Distance(PointOf(point)), job.Panel.Sheet.ThicknessMm - 0.05, job.Panel.Sheet.ThicknessMm + 0.05));
    }

    [ReaderFact]
    public void A_cone_has_a_gauge_for_each_end()
    {
        var job = Examples.Cone();
        var thickness = job.Panel.Sheet.ThicknessMm;
        var taper = (TaperCurve)job.Panel.Curve;
        double[] radii = [((ArcCurve)taper.Near).RadiusMm, ((ArcCurve)taper.Far).RadiusMm];
        // A cone's wall is thicker in a plane square to its axis than square to itself.
        var lean = Math.Atan((radii[1] - radii[0]) / taper.LengthMm);
        foreach (var (part, offset) in new[] { (DrawingPart.GaugeInside, 0.0), (DrawingPart.GaugeOutside, thickness / Math.Cos(lean)) })
        {
            var gauges = Outlines(job, part, "GAUGE_CUT");
            Assert.Equal(2, gauges.Length);
            for (var i = 0; i < 2; i++)
            {
                var middle = job.Panel.Surface == Surface.Inside ? 0.0 : job.Panel.Surface == Surface.Mid ? thickness / 2 / Math.Cos(lean) : thickness / Math.Cos(lean);
                Assert.Equal(radii[i] - middle + offset, RadiusOf(gauges[i]), 0.05);
            }
        }
    }

    [Theory]
    [InlineData("six-folds", DrawingPart.Rib, "no ribs")]
    [InlineData("cone", DrawingPart.Rib, "no ribs")]
    [InlineData("cone", DrawingPart.CheckTemplate, "not drawn")]
    [InlineData("cone", DrawingPart.GaugePulled, "not drawn")]
    public void A_part_that_a_job_does_not_have_is_refused_in_words(string name, DrawingPart part, string why)
    {
        var job = Examples.Named(name);
        foreach (var write in (Action[])[() => Written.Dxf(job, part), () => Written.Svg(job, part), () => Written.Pdf(job, part)])
        {
            var refused = Assert.Throws<NoSolutionException>(write);
            Assert.Equal("drawing.no-such-part", refused.Code);
            Assert.Contains(why, refused.Message, StringComparison.Ordinal);
            Assert.NotNull(refused.Allowed);
        }
    }

    [Fact]
    public void A_taper_has_no_story_stick() => Assert.Equal(
        "drawing.no-such-part",
        Assert.Throws<NoSolutionException>(() => Written.Pdf(Examples.Cone(), layout: BlankLayout.Stick)).Code);

    [Theory]
    [InlineData(DrawingPart.Rib)]
    [InlineData(DrawingPart.FormBlank)]
    [InlineData(DrawingPart.GaugeInside)]
    public void A_form_that_cannot_be_made_gives_a_machine_no_part(DrawingPart part) => Assert.Equal(
        "drawing.cannot-be-made", Assert.Throws<NoSolutionException>(() => Written.Dxf(Examples.CannotBeMade(), part)).Code);

    [ReaderTheory]
    [InlineData(DrawingPart.GaugeInside, "GAUGE_CUT")]
    [InlineData(DrawingPart.GaugeOutside, "GAUGE_CUT")]
    [InlineData(DrawingPart.GaugePulled, "GAUGE_CUT")]
    [InlineData(DrawingPart.CheckTemplate, "TEMPLATE_CUT")]
    public void A_picture_of_a_part_is_as_large_as_the_part(DrawingPart part, string layer)
    {
        var job = Examples.Named("ribbed");
        var picture = Picture(job, part);
        Assert.InRange(picture.SymmetricDifference(Outlines(job, part, layer).Single()).Area, 0, 0.002 * picture.Length);
        var svg = XDocument.Parse(Written.Svg(job, part)).Root!;
        string[] box = svg.Attribute("viewBox")!.Value.Split(' ');
        Assert.Equal(box[2] + "mm", svg.Attribute("width")!.Value);
        Assert.Equal(box[3] + "mm", svg.Attribute("height")!.Value);
    }

    // The outline of a picture in the section's frame: the lead-in runs level to where the bend begins.
    private static Polygon Picture(DrawingJob job, DrawingPart part)
    {
        var cut = XDocument.Parse(Written.Svg(job, part)).Descendants().First(item => item.Attribute("stroke-width")?.Value == "0.45");
        var numbers = cut.Attribute("d")!.Value.Split('M').Last(path => path.EndsWith('Z')).Split(['L', ' ', ',', 'Z'], StringSplitOptions.RemoveEmptyEntries)
            .Select(number => double.Parse(number, CultureInfo.InvariantCulture)).ToArray();
        var corners = numbers.Chunk(2).Select(pair => new Point(pair[0], -pair[1])).ToArray();
        // The edge comes first, from the end of the lead-in.
        var end = FlatEnd(job, part);
        return PolygonOf(corners.Select(corner => corner - corners[0] + end));
    }

    private static Point FlatEnd(DrawingJob job, DrawingPart part)
    {
        var outside = new Point(0, part is DrawingPart.GaugeInside or DrawingPart.CheckTemplate ? 0 : -job.Panel.Sheet.ThicknessMm);
        return part == DrawingPart.CheckTemplate
            ? job.Plan.Form.Section.Vertices[0]
            : outside - new Point(Math.Min(100, job.Panel.LeadInMm), 0);
    }

    // In millimetres, as the first reader and the second read it.
    private static Polygon[] Outlines(DrawingJob job, DrawingPart part, string layer)
    {
        var file = Encoding.ASCII.GetBytes(Written.Dxf(job, part));
        var read = Readers.OfDxf.Select(reader =>
        {
            using var report = Readers.Run(reader, file);
            return report.RootElement.GetProperty("entities").EnumerateArray()
                .Where(entity => entity.GetProperty("layer").GetString() == layer)
                .Select(entity => PolygonOf(entity.GetProperty("vertices").EnumerateArray().Select(vertex => new Point(
                    vertex.GetProperty("x").GetDouble() * job.Readout.UnitMm, vertex.GetProperty("y").GetDouble() * job.Readout.UnitMm))))
                .ToArray();
        }).ToArray();
        Assert.All(read[0].Zip(read[1]), pair => Assert.True(pair.First.EqualsExact(pair.Second, 1e-9)));
        Assert.All(read[0], outline => Assert.True(outline.IsValid));
        return read[0];
    }

    // Circle through three corners in the middle of the longest run of short edges.
    private static double RadiusOf(Polygon outline)
    {
        var corners = outline.Coordinates[..^1];
        var run = Enumerable.Range(1, corners.Length - 2)
            .Where(i => corners[i].Distance(corners[i - 1]) < 20 && corners[i].Distance(corners[i + 1]) < 20)
            .ToArray();
        Coordinate a = corners[run[2]], b = corners[run[run.Length / 4]], c = corners[run[(run.Length / 2) - 3]];
        return a.Distance(b) * b.Distance(c) * c.Distance(a) / (4 * new Triangle(a, b, c).Area());
    }

    private static Polygon PolygonOf(IEnumerable<Point> corners)
    {
        Coordinate[] ring = [.. corners.Select(point => new Coordinate(point.X, point.Y))];
        return Geometry.CreatePolygon([.. ring, ring[0]]);
    }

    private static NetTopologySuite.Geometries.Point PointOf(Point point) => Geometry.CreatePoint(new Coordinate(point.X, point.Y));
}
