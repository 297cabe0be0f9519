namespace Forming.TestStrips;

/// <summary>What strips taught about springback.</summary>
/// <param name="YieldMpa">Effective yield stress [MPa] with its interval.</param>
/// <param name="YieldOverModulus">The same over Young's modulus, dimensionless.</param>
/// <param name="NominalYieldMpa">The material's own yield stress [MPa].</param>
/// <param name="Margin">How far a single finished radius may lie from the expected one, as a share.</param>
/// <param name="Readings">The strips, one by one.</param>
/// <param name="Effects">What the yield does to the form of each wanted radius.</param>
public sealed record SpringbackLesson(
    Interval YieldMpa,
    Interval YieldOverModulus,
    double NominalYieldMpa,
    Margin Margin,
    IReadOnlyList<SpringbackReading> Readings,
    IReadOnlyList<SpringbackEffect> Effects) : StripLesson;
