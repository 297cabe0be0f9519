namespace Forming.Numerics;

/// <summary>Narrows a peak by the golden section.</summary>
internal static class GoldenSection
{
    private const double Share = 0.6180339887498949;

    private const int Rounds = 40;

    /// <summary>Where a function is largest between two places that bracket one peak.</summary>
    /// <param name="function">The function.</param>
    /// <param name="low">The lower place.</param>
    /// <param name="high">The upper place.</param>
    public static double Peak(Func<double, double> function, double low, double high)
    {
        for (var round = 0; round < Rounds; round++)
        {
            double left = high - (Share * (high - low)), right = low + (Share * (high - low));
            if (function(left) < function(right))
                low = left;
            else
                high = right;
        }

        return (low + high) / 2;
    }
}
