using Forming.TestStrips;

namespace Forming.Verification;

/// <summary>What fits the strips against certified values and the table that every book prints.</summary>
internal static class StatisticsChecks
{
    private const string Norris = "nist-strd-norris";

    /// <summary>The tables.</summary>
    public static IEnumerable<CheckTable> Tables()
    {
        var line = new Lazy<StraightLine>(Fit);
        return
        [
            CheckTable.Read(
                Norris + "-certified",
                "Straight line by least squares",
                "the 36 pairs of the Norris data",
                row => [row.Near("value", row.Text("quantity"), "", row["share"], () => Figure(line.Value, row.Text("quantity")))]),
            CheckTable.Read(
                "students-t",
                "Student's t, 95 % two-sided",
                "{degreesOfFreedom} degrees of freedom",
                row => [row.Within("t", "quantile", "", 5.1e-4, () => Margin.Of(row["degreesOfFreedom"], (int)row["degreesOfFreedom"], 1e-9).Half)]),
        ];
    }

    private static StraightLine Fit()
    {
        var rows = CheckTable.File(Norris).Rows;
        return StraightLine.Fit([.. rows.Select(row => row.Number("x"))], [.. rows.Select(row => row.Number("y"))], 1e-9);
    }

    // Half an interval is Student's t times the certified standard deviation.
    private static double Figure(StraightLine line, string quantity)
    {
        var t = Margin.Student(line.Margin.DegreesOfFreedom);
        return quantity switch
        {
            "intercept" => line.Intercept,
            "slope" => line.Slope,
            "residual standard deviation" => line.Margin.Scatter!.Value,
            "degrees of freedom" => line.Margin.DegreesOfFreedom,
            "standard deviation of the slope" => (line.SlopeInterval.High!.Value - line.Slope) / t,
            "standard deviation of the intercept" => (line.Band(0).High!.Value - line.Intercept) / t,
            _ => double.NaN,
        };
    }
}
