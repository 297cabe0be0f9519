namespace Forming.Results;

/// <summary>The gate that every number passes on its way into an answer, a drawing or a file.</summary>
public static class Finite
{
    /// <summary>The number, which is one.</summary>
    /// <param name="value">The number.</param>
    /// <exception cref="NoSolutionException"><c>figure.not-finite</c>: it is endless or no number at all, and nobody may act on it.</exception>
    public static double Of(double value) => double.IsFinite(value)
        ? value
        : throw new NoSolutionException(
            "figure.not-finite",
            "",
            $"a figure of this job comes to no number: something given lies far outside what sheet metal and a brake can do",
            $"figures of a real sheet, form and brake");
}
