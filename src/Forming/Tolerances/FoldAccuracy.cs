namespace Forming.Tolerances;

/// <summary>How well folds are made: fold i turns by its own angle, the bias and a Gaussian error; its mark lies off by another.</summary>
/// <param name="Bias">What every fold turns too far.</param>
/// <param name="Scatter">Standard deviation of a fold angle about that, at least 0.</param>
/// <param name="MarkScatterMm">Standard deviation of a mark from the datum [mm], at least 0; both edges of the blank are exact.</param>
public sealed record FoldAccuracy(Angle Bias, Angle Scatter, double MarkScatterMm)
{
    /// <summary>±1° and ±0.8 mm, each two standard deviations: an assumption for hand-set brakes.</summary>
    public static FoldAccuracy Default { get; } = new(Angle.Zero, Angle.FromDegrees(0.5), 0.4);

    /// <summary>Whether a scatter is the assumed one, whoever gave it: what the figures rest on must follow from the figures alone.</summary>
    public bool IsAssumed =>
        Math.Abs(Scatter.Radians - Default.Scatter.Radians) < Same || Math.Abs(MarkScatterMm - Default.MarkScatterMm) < Same;

    // What a length loses on its way through inches with nine decimals.
    private const double Same = 1e-6;
}
