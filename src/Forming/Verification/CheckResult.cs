namespace Forming.Verification;

/// <summary>A check value and what the engine makes of it.</summary>
/// <param name="Value">The value.</param>
/// <param name="Got">The engine's own, in the value's unit; NaN where it has none.</param>
public sealed record CheckResult(CheckValue Value, double Got)
{
    /// <summary>Engine less table, in the value's unit.</summary>
    public double Difference => Got - Value.Expected;

    /// <summary>How it came out. What cannot be compared has failed: no number, no tolerance, a negative or an endless one.</summary>
    public CheckVerdict Verdict =>
        double.IsFinite(Value.Tolerance) && Math.Abs(Difference) <= Value.Tolerance ? CheckVerdict.Pass : CheckVerdict.Fail;
}
