namespace Forming.Tolerances;

/// <summary>How well folds are made: fold i turns by its own angle, the bias and a Gaussian error; its mark lies off by another.</summary>
/// <param name="Bias">What every fold turns too far.</param>
/// <param name="Scatter">Standard deviation of a fold angle about that, at least 0.</param>
/// <param name="MarkScatterMm">Standard deviation of a mark from the datum [mm], at least 0; both edges of the blank are exact.</param>
public sealed record FoldAccuracy(Angle Bias, Angle Scatter, double MarkScatterMm)
{
    /// <summary>±1° and ±0.8 mm, each two standard deviations: an assumption for hand-set brakes.</summary>
    public static FoldAccuracy Default { get; } = new(Angle.Zero, Angle.FromDegrees(0.5), 0.4);

    /// <summary>Whether nobody gave the scatter, so that it is the default.</summary>
    public bool ScatterIsAssumed { get; init; }

    /// <summary>Whether nobody gave the mark scatter, so that it is the default.</summary>
    public bool MarkScatterIsAssumed { get; init; }
}
