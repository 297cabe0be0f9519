namespace Forming.TestStrips;

/// <summary>What strips taught about the neutral line.</summary>
/// <param name="Factor">Neutral factor K with its interval.</param>
/// <param name="Margin">How far a single strip may lie from it, in units of its own reading error.</param>
/// <param name="Published">K by the published formula, the mean over the strips; null where it does not reach.</param>
/// <param name="Readings">The strips, one by one.</param>
public sealed record NeutralLesson(
    Interval Factor, Margin Margin, double? Published, IReadOnlyList<NeutralReading> Readings) : StripLesson;
