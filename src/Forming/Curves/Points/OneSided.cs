namespace Forming.Curves.Points;

/// <summary>Takes out of a fit what bends the other way.</summary>
internal static class OneSided
{
    /// <summary>The nearest curve on the same knots without negative curvature; null when nothing is left that bends.</summary>
    /// <param name="fit">A fit that may bend both ways.</param>
    /// <param name="precision">Steps smaller than this end a fit.</param>
    /// <remarks>Least squares with sign limits by active sets: negative curvatures are held at 0 and the rest fitted again, until none is left.</remarks>
    public static NormalFit? From(NormalFit fit, double precision)
    {
        while (fit.Profile.Values.Min() < 0)
        {
            var values = fit.Profile.Values;
            var held = fit.Profile.Flattened(k => values[k] < 0);
            if (held.UnknownCount == 0) return null;
            fit = fit.Refit(held, precision);
        }

        return fit.Profile.Peak > 0 ? fit : null;
    }
}
