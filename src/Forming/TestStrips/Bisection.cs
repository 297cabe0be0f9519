namespace Forming.TestStrips;

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
