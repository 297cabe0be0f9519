namespace Forming.Curves.Fitting;

/// <summary>Takes out of a fit what bends the other way.</summary>
internal static class OneWay
{
    /// <summary>The nearest curve on the same knots without negative curvature: a straight line when nothing is left that bends.</summary>
    /// <param name="fit">A fit that may bend both ways.</param>
    /// <param name="precision">Steps smaller than this end a fit.</param>
    /// <remarks>Least squares with sign limits by active sets: negative curvatures are held at 0 and the rest fitted again, until none is left.</remarks>
    public static NormalFit From(NormalFit fit, double precision)
    {
        while (fit.Profile.Values.Min() < 0)
        {
            var values = fit.Profile.Values;
            fit = fit.Refit(fit.Profile.Flattened(k => values[k] < 0), precision);
        }

        return fit;
    }

    /// <summary>Whether a fit bends, and one way only.</summary>
    /// <param name="fit">The fit.</param>
    public static bool Bends(NormalFit fit) => fit.Profile.Values.Min() >= 0 && fit.Profile.Peak > 0;
}
