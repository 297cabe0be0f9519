using System.Text;
using System.Text.Json;

namespace Forming.Drawing.Tests;

public class DxfLayoutTests
{
    [Theory]
    [MemberData(nameof(Examples.ThatCanBeMade), MemberType = typeof(Examples))]
    public void File_is_the_one_that_was_looked_at(string name) => Golden.Matches($"{name}.dxf", Written.Dxf(Examples.All[name]()));

    [ReaderTheory]
    [MemberData(nameof(Examples.ThatCanBeMade), MemberType = typeof(Examples))]
    public void Independent_readers_find_the_plan_seen_from_the_face_that_is_marked(string name)
    {
        var job = Examples.All[name]();
        var file = Encoding.ASCII.GetBytes(Written.Dxf(job));
        foreach (var reader in Readers.OfDxf)
        {
            using var report = Readers.Run(reader, file);
            Finds(job, report.RootElement);
            // The second reader is strict, and says what it would mend.
            Assert.Equal(reader.EndsWith(".py", StringComparison.Ordinal), report.RootElement.TryGetProperty("errors", out var errors));
            Assert.True(errors.ValueKind == JsonValueKind.Undefined || errors.GetArrayLength() == 0, errors.ToString());
        }
    }

    [ReaderTheory]
    [InlineData(DrawingPart.FormBlank, "FORM")]
    [InlineData(DrawingPart.PanelBlank, "PANEL")]
    [InlineData(DrawingPart.CheckTemplate, "TEMPLATE")]
    [InlineData(DrawingPart.Rib, "RIB")]
    [InlineData(DrawingPart.GaugeInside, "GAUGE")]
    [InlineData(DrawingPart.GaugeOutside, "GAUGE")]
    [InlineData(DrawingPart.GaugePulled, "GAUGE")]
    public void A_machine_is_given_one_part_on_layers_of_its_own(DrawingPart part, string kind)
    {
        var file = Encoding.ASCII.GetBytes(Written.Dxf(Examples.Named("ribbed"), part));
        foreach (var reader in Readers.OfDxf)
        {
            using var report = Readers.Run(reader, file);
            var entities = report.RootElement.GetProperty("entities").EnumerateArray().ToArray();
            Assert.All(entities, entity => Assert.StartsWith(kind + "_", entity.GetProperty("layer").GetString(), StringComparison.Ordinal));
            Assert.NotEmpty(On(entities, kind + "_CUT"));
            Assert.All(On(entities, kind + "_CUT"), edge => Assert.Equal("LWPOLYLINE", edge.GetProperty("type").GetString()));
        }
    }

    private static void Finds(DrawingJob job, JsonElement file)
    {
        var unit = job.Readout.UnitMm;
        Assert.Equal(job.Units == LengthUnit.In ? 1 : 4, file.GetProperty("header").GetProperty("$INSUNITS").GetInt32());
        var entities = file.GetProperty("entities").EnumerateArray().ToArray();
        var form = job.Plan.Form.Blank;
        // The plan is seen from the contact face.
        var folds = On(entities, "FORM_FOLD").ToArray();
        var flat = Shapes.FormBlankLines.Of(job);
        Assert.Equal(flat.Folds.Count, folds.Length);
        for (var i = 0; i < folds.Length; i++)
        {
            Same(TurnedOver(flat.Folds[i].Fold.End, form.WidthMm), folds[i].GetProperty("vertices")[0], unit);
            Same(TurnedOver(flat.Folds[i].Fold.Start, form.WidthMm), folds[i].GetProperty("vertices")[1], unit);
        }

        Assert.Equal(2 * folds.Length, On(entities, "FORM_TANGENT").Count());
        Assert.Equal(folds.Length, On(entities, "FORM_SIGHT").Count());
        var outline = On(entities, "FORM_CUT").Single().GetProperty("vertices");
        var corners = form.Outline.Skip(1).ToArray();
        for (var i = 0; i < corners.Length; i++)
            Same(TurnedOver(corners[i], form.WidthMm), outline[i], unit);
        Assert.Equal(job.Plan.Taper is null ? 0 : 1, On(entities, "FORM_STOCK").Count());
        Assert.Single(On(entities, "PANEL_CUT"));
        var marks = On(entities, "PANEL_MARK").Select(line => line.GetProperty("vertices")[1].GetProperty("x").GetDouble()).ToArray();
        Assert.Equal(job.Plan.Panel.Marks.Count, marks.Length);
        Assert.All(job.Plan.Panel.Marks, mark => Assert.Contains(marks, x => Math.Abs(x - ((mark.Near?.X ?? mark.AtMm) / unit)) < 1e-6));
    }

    private static Point TurnedOver(Point point, double widthMm) => new(point.X, widthMm - point.Y);

    [Fact]
    public void Text_stays_on_its_line_and_in_ascii()
    {
        var text = Written.Dxf(Examples.SixFolds() with { Title = "a\r\n  0\r\nEOF\r\n \u00D7" });
        Assert.True(text.All(character => character < 128));
        Assert.Contains("a    0  EOF   \\U+00D7", text, StringComparison.Ordinal);
        Assert.Single(text.Split("\r\n"), line => line == "EOF");
    }

    [Fact]
    public void What_cannot_be_made_is_refused()
    {
        var refused = Assert.Throws<Results.NoSolutionException>(() => Written.Dxf(Examples.CannotBeMade()));
        Assert.Equal("drawing.cannot-be-made", refused.Code);
    }

    private static IEnumerable<JsonElement> On(JsonElement[] entities, string layer) =>
        entities.Where(entity => entity.GetProperty("layer").GetString() == layer);

    private static void Same(Point expected, JsonElement actual, double unit)
    {
        Assert.Equal(expected.X / unit, actual.GetProperty("x").GetDouble(), 1e-6);
        Assert.Equal(expected.Y / unit, actual.GetProperty("y").GetDouble(), 1e-6);
    }
}
