using Forming.Estimates;

namespace Forming.Verification;

/// <summary>Learning curves against the coefficients that textbooks print, and both forms of the law.</summary>
internal static class LearningChecks
{
    private const double HalfDigit = 5.01e-4; // of three decimals

    /// <summary>The tables.</summary>
    public static IEnumerable<CheckTable> Tables() =>
    [
        CheckTable.Read("learning-curve-coefficients", "Learning over a batch", "{model} form, rate {rate}, panel {n}", Coefficients),
    ];

    private static CheckValue[] Coefficients(PrintedRow row)
    {
        var model = row.Text("model") == "unit" ? LearningModel.Unit : LearningModel.CumulativeAverage;
        var curve = new LearningCurve(model, row["rate"]);
        var n = (int)row["n"];
        return
        [
            row.Within("factor", "time of the n-th panel over that of the first", "", HalfDigit, () => curve.Unit(n)),
            row.Within("total", "time of the first n panels over that of the first", "", HalfDigit, () => curve.Total(n)),
        ];
    }
}
