namespace Forming.Learning;

/// <summary>A learnt value, and how far the readings leave it open.</summary>
/// <param name="Value">The best value, in the unit of the value.</param>
/// <param name="Low">Lower end, 95 %, or null where the readings set none.</param>
/// <param name="High">Upper end, 95 %, or null where the readings set none.</param>
public readonly record struct Interval(double Value, double? Low, double? High)
{
    /// <summary>The value with a half-width on both sides.</summary>
    /// <param name="value">The best value.</param>
    /// <param name="half">The half-width, at least 0.</param>
    public static Interval Around(double value, double half) => new(value, value - half, value + half);

    /// <summary>Whether a value lies within.</summary>
    /// <param name="value">The value.</param>
    public bool Holds(double value) => !(value < Low) && !(value > High);
}

/// <summary>Halves an interval until no number lies between its ends.</summary>
/// <remarks>
/// For functions that run to infinity at one end of the interval, where a method with slopes or quotients would meet one.
/// </remarks>
internal static class Bisection
{
    private const int MostSteps = 200;

    /// <summary>Where a function passes from at most zero to above it.</summary>
    /// <param name="function">The function; may be infinite at the upper end.</param>
    /// <param name="low">Where it is at most zero.</param>
    /// <param name="high">Where it is above zero.</param>
    public static double Solve(Func<double, double> function, double low, double high)
    {
        for (var step = 0; step < MostSteps; step++)
        {
            var middle = low + ((high - low) / 2);
            if (middle <= low || middle >= high)
                break;
            if (function(middle) > 0)
                high = middle;
            else
                low = middle;
        }

        return low;
    }
}
