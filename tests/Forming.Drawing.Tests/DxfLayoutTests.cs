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
    public void An_independent_reader_finds_the_plan(string name)
    {
        var job = Examples.All[name]();
        using var report = Readers.Run("read-dxf.cjs", Encoding.ASCII.GetBytes(Written.Dxf(job)));
        var unit = job.Readout.UnitMm;
        Assert.Equal(job.Units == LengthUnit.In ? 1 : 4, report.RootElement.GetProperty("header").GetProperty("$INSUNITS").GetInt32());
        var entities = report.RootElement.GetProperty("entities").EnumerateArray().ToArray();
        var flat = Shapes.FormBlankLines.Of(job);
        var folds = On(entities, "FOLD").ToArray();
        Assert.Equal(flat.Folds.Count, folds.Length);
        for (var i = 0; i < folds.Length; i++)
        {
            Same(flat.Folds[i].Fold.Start, folds[i].GetProperty("vertices")[0], unit);
            Same(flat.Folds[i].Fold.End, folds[i].GetProperty("vertices")[1], unit);
        }

        Assert.Equal(2 * folds.Length, On(entities, "TANGENT").Count());
        var outlines = On(entities, "OUTLINE").ToArray();
        Assert.Equal(2, outlines.Length);
        var corners = job.Plan.Form.Blank.Outline.Skip(1).ToArray();
        for (var i = 0; i < corners.Length; i++)
            Same(corners[i], outlines[0].GetProperty("vertices")[i], unit);
        var marks = On(entities, "MARK").Select(line => line.GetProperty("vertices")[0].GetProperty("x").GetDouble()).ToArray();
        Assert.Equal(job.Plan.Panel.Marks.Count, marks.Length);
        Assert.All(job.Plan.Panel.Marks, mark => Assert.Contains(marks, x => Math.Abs(x - ((mark.Near?.X ?? mark.AtMm) / unit)) < 1e-6));
    }

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
