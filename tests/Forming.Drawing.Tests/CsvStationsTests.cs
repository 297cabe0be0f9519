using System.Globalization;
using CsvHelper;

namespace Forming.Drawing.Tests;

public class CsvStationsTests
{
    [Theory]
    [MemberData(nameof(Examples.ThatCanBeMade), MemberType = typeof(Examples))]
    public void File_reads_back_as_the_plan(string name)
    {
        var job = Examples.All[name]();
        var unit = job.Readout.LengthName;
        using var csv = new CsvReader(new StringReader(Written.Csv(job)), CultureInfo.InvariantCulture);
        csv.Read();
        csv.ReadHeader();
        foreach (var station in job.Plan.Form.Stations)
        {
            Assert.True(csv.Read());
            Assert.Equal(station.Number, csv.GetField<int>("number"));
            Assert.Equal(station.AtMm / job.Readout.UnitMm, csv.GetField<double>($"at [{unit}]"), 1e-8);
            Assert.Equal(station.MarkText, csv.GetField(3));
            Assert.Equal(station.SightLineMm / job.Readout.UnitMm, csv.GetField<double>($"sight line [{unit}]"), 1e-8);
            Assert.Equal(station.FoldAngle.Degrees, csv.GetField<double>("fold angle [deg]"), 1e-8);
            Assert.Equal(station.StopAngle!.Value.Degrees, csv.GetField<double>("stop angle [deg]"), 1e-8);
            Assert.Equal(station.StopSetting!.Value.Degrees, csv.GetField<double>("stop setting [deg]"), 1e-8);
            Assert.Equal(station.RadiusMm is null, csv.GetField(11)!.Length == 0);
        }

        Assert.False(csv.Read());
    }

    [Fact]
    public void Lines_end_as_rfc_4180_has_it()
    {
        var text = Written.Csv(Examples.SixFolds());
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        Assert.Equal(7, text.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.Equal(text.Count(character => character == '\n'), text.Count(character => character == '\r'));
    }

    [Theory]
    [MemberData(nameof(Examples.ThatCanBeMade), MemberType = typeof(Examples))]
    public void File_is_the_one_that_was_looked_at(string name) => Golden.Matches($"{name}.csv", Written.Csv(Examples.All[name]()));

    [Fact]
    public void What_cannot_be_made_is_refused()
    {
        var refused = Assert.Throws<Results.NoSolutionException>(() => Written.Csv(Examples.CannotBeMade()));
        Assert.Equal("drawing.cannot-be-made", refused.Code);
    }
}
