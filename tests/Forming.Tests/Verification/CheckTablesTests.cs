using System.Text.RegularExpressions;
using Forming.Materials;
using Forming.Verification;

namespace Forming.Tests.Verification;

/// <summary>The engine against every printed table: the same checks that a running service answers.</summary>
public partial class CheckTablesTests
{
    private static readonly Dictionary<string, CheckValue> Values =
        CheckTables.All.SelectMany(table => table.Values).ToDictionary(value => value.Id);

    public static TheoryData<string> Ids => [.. Values.Keys];

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_engine_comes_to_the_printed_value(string id)
    {
        var value = Values[id];
        var result = value.Verify();
        Assert.True(
            result.Verdict == CheckVerdict.Pass,
            $"{value.Quantity} ({value.Given}): expected {value.Expected:R}, got {result.Got:R} {value.Unit}, allowed {value.Tolerance:R}");
        Assert.InRange(Math.Abs(value.Compute() - value.Expected), 0, value.Tolerance);
    }

    // A check that nothing could fail would say nothing: one tolerance too far to either side, and each of them does.
    [Fact]
    public void Every_value_fails_once_it_is_off_by_more_than_its_tolerance()
    {
        foreach (var (value, got) in Recomputed())
        {
            var step = (1.001 * value.Tolerance) + (1e-9 * Math.Max(1, Math.Abs(got)));
            Assert.Equal(CheckVerdict.Fail, new CheckedValue(value with { Expected = got + step }, got).Verdict);
            Assert.Equal(CheckVerdict.Fail, new CheckedValue(value with { Expected = got - step }, got).Verdict);
            Assert.Equal(CheckVerdict.Pass, new CheckedValue(value with { Expected = got }, got).Verdict);
        }
    }

    // A printed range, such as 4 to 6 thicknesses, is no tolerance of ours.
    [Fact]
    public void No_tolerance_is_wider_than_a_tenth()
    {
        var wide = Values.Values.Where(value => value.Tolerance > Math.Max(0.1 * Math.Abs(value.Expected), 1e-9))
            .Select(value => $"{value.Id}: {value.Expected} ± {value.Tolerance}");
        Assert.True(!wide.Any(), string.Join(Environment.NewLine, wide));
    }

    [Fact]
    public void What_cannot_be_compared_fails()
    {
        var value = Values["din-6935-angles.1.minutes"];
        Assert.All(
            [
                value with { Tolerance = -value.Tolerance },
                value with { Tolerance = double.NaN },
                value with { Tolerance = double.PositiveInfinity },
                value with { Expected = double.NaN },
                value with { Expected = double.PositiveInfinity },
                value with { Compute = () => double.NaN },
                value with { Expected = double.PositiveInfinity, Compute = () => double.PositiveInfinity },
                value with { Compute = () => throw new InvalidOperationException() },
            ],
            broken => Assert.Equal(CheckVerdict.Fail, broken.Verify().Verdict));
        Assert.Equal(CheckVerdict.Pass, value.Verify().Verdict);
    }

    [Fact]
    public void One_value_off_fails_the_report_and_is_named()
    {
        var table = CheckTables.All.Single(table => table.Id == "din-6935-angles");
        Assert.Equal(CheckVerdict.Pass, VerificationReport.Run([table]).Verdict);
        var broken = table with { Values = [.. table.Values.Select((value, i) => i == 2 ? value with { Expected = value.Expected + 1 } : value)] };
        var report = VerificationReport.Run([broken]);
        Assert.Equal(CheckVerdict.Fail, report.Verdict);
        Assert.Equal(["din-6935-angles.3.minutes"], report.Failed);
        Assert.Equal(CheckVerdict.Fail, VerificationReport.Run([]).Verdict);
    }

    [Fact]
    public void Every_value_has_a_source_and_stands_no_better_than_it()
    {
        foreach (var value in Values.Values)
        {
            Assert.True(value.Status >= SourceCatalog.Find(value.Source).Status, value.Id);
            Assert.NotEmpty(value.Quantity);
            Assert.DoesNotMatch(Unfilled(), value.Given);
        }

        Assert.All(CheckTables.All, table => Assert.True(table.Subject.Length > 0 && table.Citation.Length > 0 && table.Values.Count > 0, table.Id));
    }

    [Fact]
    public void Every_table_that_is_embedded_is_checked()
    {
        // The statute's ounces and the dataset's pairs are what others of the tables are calculated from.
        string[] inputs = ["us-1893-standard-gauge", "nist-strd-norris"];
        var embedded = typeof(CheckTables).Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith("Forming.Verification.Tables.", StringComparison.Ordinal)).Select(name => name[28..^4]);
        var gauges = Gauges.Systems.Select(system => "gauges-" + system.Id);
        Assert.Equal(embedded.Concat(gauges).Order(StringComparer.Ordinal), CheckTables.All.Select(table => table.Id).Concat(inputs).Order(StringComparer.Ordinal));
    }

    // Counted by hand: rows of the tables times what is compared in each.
    [Theory]
    [InlineData("bend-allowance-checks", 9 * 6)]
    [InlineData("faa-bend-allowance-chart", 22)]
    [InlineData("abramowitz-stegun-table-7-7", 11 * 2)]
    [InlineData("tabellenbuch-springback-factors", 38)]
    [InlineData("iso-2768-1-lengths", 30)]
    [InlineData("gauges-manufacturers-standard", 28)]
    [InlineData("gauges-galvanized", 23)]
    [InlineData("gauges-us-standard", 28)]
    [InlineData("gauges-brown-sharpe", 28)]
    [InlineData("kalpakjian-schmid-table-16-3", 4)]
    [InlineData("faa-1998-ac-43-13-1b-table-4-6", 2)]
    [InlineData("aluminum-association-2005-table-3-1", 13)]
    [InlineData("wrap-model-panels", 10 * 4)]
    [InlineData("learning-curve-coefficients", 26 * 2)]
    [InlineData("worked-jobs", 2 * 26)]
    [InlineData("print-through-arithmetic", 3 * 11)]
    [InlineData("brake-arithmetic", 2 * 8)]
    [InlineData("flow-curve-estimates", 7 * 3)]
    [InlineData("finite-element-wraps", 2 * 4)]
    [InlineData("finite-element-give", 6)]
    public void No_row_is_passed_over(string id, int values) =>
        Assert.Equal(values, CheckTables.All.Single(table => table.Id == id).Values.Count);

    private static IEnumerable<(CheckValue Value, double Got)> Recomputed() =>
        VerificationReport.Run(CheckTables.All).Values.Select(result => (result.Value, result.Got));

    [GeneratedRegex(@"[{}]")]
    private static partial Regex Unfilled();
}
