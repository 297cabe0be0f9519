namespace Forming.TestStrips;

/// <summary>A reason not to use what strips taught before it is cleared up.</summary>
/// <param name="Id">Stable id such as <c>yield-implausible</c>.</param>
/// <param name="Strips">Places of the strips in question; empty where it is all of them.</param>
/// <param name="Text">What is doubtful and what to look for, in words.</param>
public sealed record StripDoubt(string Id, IReadOnlyList<int> Strips, FormattableString Text);

/// <summary>Finds strips whose residual is too large for chance.</summary>
internal static class Outliers
{
    // Shared out over all strips (Bonferroni): one in twenty sets of good strips has a strip named without cause.
    private const double FalseAlarms = 0.05;

    /// <summary>Places of the outliers.</summary>
    /// <param name="residuals">Residuals of the fit.</param>
    /// <param name="leverages">How far each strip pulls the fit to itself, 0 to 1.</param>
    /// <param name="sumOfSquares">Sum of the squared residuals.</param>
    /// <param name="degreesOfFreedom">Strips less fitted values.</param>
    /// <param name="readingError">What one reading may be out by; a smaller residual is never named.</param>
    /// <remarks>Externally studentized residuals: each strip is held against the scatter of the others about the fit without it.</remarks>
    public static IReadOnlyList<int> Find(
        IReadOnlyList<double> residuals, IReadOnlyList<double> leverages, double sumOfSquares, int degreesOfFreedom, double readingError)
    {
        if (degreesOfFreedom < 2)
            return [];
        var limit = Margin.Student(degreesOfFreedom - 1, FalseAlarms / residuals.Count);
        return [.. Enumerable.Range(0, residuals.Count).Where(IsOut)];

        bool IsOut(int i)
        {
            var room = 1 - leverages[i];
            var residual = Math.Abs(residuals[i]);
            if (residual <= readingError || room < 1e-9)
                return false;
            var others = Math.Max(0, sumOfSquares - (residual * residual / room)) / (degreesOfFreedom - 1);
            return residual > limit * Math.Sqrt(others * room);
        }
    }
}
