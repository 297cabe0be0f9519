using MathNet.Numerics.Distributions;

namespace Forming.TestStrips;

/// <summary>How far a single reading may lie from what is true, 19 times of 20.</summary>
/// <remarks>
/// One rule for all strips. Where strips are left over after fitting, their own scatter times Student's t; but never less than the
/// reading error, for readings that agree better than they can be read agree by luck. Where none is left over, the reading error alone.
/// </remarks>
public readonly record struct Margin
{
    /// <summary>Confidence of every interval.</summary>
    public const double Confidence = 0.95;

    private Margin(double half, double? scatter, int degreesOfFreedom, bool isReadingError)
    {
        Half = half;
        Scatter = scatter;
        DegreesOfFreedom = degreesOfFreedom;
        IsReadingError = isReadingError;
    }

    /// <summary>Half-width for one reading at <see cref="Confidence"/>, in the unit of the reading.</summary>
    public double Half { get; }

    /// <summary>Standard deviation of the strips about the fit, in the unit of the reading; null where no strip is left over.</summary>
    public double? Scatter { get; }

    /// <summary>Strips less fitted values.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Whether the half-width is the stated reading error and not the scatter of the strips.</summary>
    public bool IsReadingError { get; }

    /// <summary>The margin of a fit.</summary>
    /// <param name="sumOfSquares">Sum of the squared residuals, in the square of the reading's unit.</param>
    /// <param name="degreesOfFreedom">Strips less fitted values, at least 0.</param>
    /// <param name="readingError">Half-width within which 95 % of readings lie, in the unit of the reading, &gt; 0.</param>
    public static Margin Of(double sumOfSquares, int degreesOfFreedom, double readingError)
    {
        if (degreesOfFreedom == 0)
            return new(readingError, null, 0, true);
        var scatter = Math.Sqrt(sumOfSquares / degreesOfFreedom);
        var half = Student(degreesOfFreedom) * scatter;
        return half < readingError
            ? new(readingError, scatter, degreesOfFreedom, true)
            : new(half, scatter, degreesOfFreedom, false);
    }

    /// <summary>Two-sided quantile of Student's t.</summary>
    /// <param name="degreesOfFreedom">Degrees of freedom, at least 1.</param>
    /// <param name="outside">Share left outside on both sides together.</param>
    internal static double Student(int degreesOfFreedom, double outside = 1 - Confidence) =>
        StudentT.InvCDF(0, 1, degreesOfFreedom, 1 - (outside / 2));
}
