using Forming.Results;

namespace Forming.Verification;

/// <summary>A value of a printed table, and how the engine computes it.</summary>
public sealed record CheckValue
{
    /// <summary>Stable id: table, row and value, such as <c>clothoid-a100.2.x</c>.</summary>
    public required string Id { get; init; }

    /// <summary>What is calculated, in words.</summary>
    public required string Quantity { get; init; }

    /// <summary>What it is calculated from, in words, with the digits and units of the table.</summary>
    public required string Given { get; init; }

    /// <summary>The value of the table, in <see cref="Unit"/>.</summary>
    public required double Expected { get; init; }

    /// <summary>How far the engine's own value may lie from it to either side, in <see cref="Unit"/>, at least 0.</summary>
    public required double Tolerance { get; init; }

    /// <summary>Unit of the table; empty where the value has none.</summary>
    public required string Unit { get; init; }

    /// <summary>Key of the source.</summary>
    public required string Source { get; init; }

    /// <summary>How the value was come by.</summary>
    public required Status Status { get; init; }

    /// <summary>
    /// Calculates the value by the engine's own functions, in <see cref="Unit"/>; values of one row may share what is calculated once.
    /// </summary>
    public required Func<double> Compute { get; init; }

    /// <summary>Calculates the value and holds it against the table.</summary>
    /// <returns>The result; a calculation that throws has failed, whatever it threw.</returns>
    public CheckedValue Verify()
    {
        try
        {
            return new(this, Compute());
        }
        catch (Exception)
        {
            return new(this, double.NaN);
        }
    }
}

/// <summary>The result of a check value.</summary>
public enum CheckVerdict
{
    /// <summary>Within the tolerance.</summary>
    Pass,

    /// <summary>Outside it, or not a number at all.</summary>
    Fail,
}

/// <summary>A check value and what the engine makes of it.</summary>
/// <param name="Value">The value.</param>
/// <param name="Got">The engine's own, in the value's unit; NaN where it has none.</param>
public sealed record CheckedValue(CheckValue Value, double Got)
{
    /// <summary>Engine less table, in the value's unit.</summary>
    public double Difference => Got - Value.Expected;

    /// <summary>The result. What cannot be compared has failed: no number, no tolerance, a negative or an endless one.</summary>
    public CheckVerdict Verdict =>
        double.IsFinite(Value.Tolerance) && Math.Abs(Difference) <= Value.Tolerance ? CheckVerdict.Pass : CheckVerdict.Fail;
}
