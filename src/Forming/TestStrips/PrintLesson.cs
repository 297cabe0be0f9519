namespace Forming.TestStrips;

/// <summary>What strips taught about the ripple that may show.</summary>
/// <param name="LargestSmoothMm">Largest ripple judged smooth [mm], or null where no strip came out smooth.</param>
/// <param name="SmallestShowingMm">Smallest ripple judged to show [mm], or null where none shows.</param>
/// <param name="AllowedRippleMm">Largest ripple judged smooth below every one that shows [mm], or null where there is none.</param>
/// <param name="SlopeThere">Slope of that strip, or null.</param>
/// <param name="Readings">The strips, one by one.</param>
/// <param name="Contradictions">Verdicts that go against each other.</param>
public sealed record PrintLesson(
    double? LargestSmoothMm,
    double? SmallestShowingMm,
    double? AllowedRippleMm,
    Angle? SlopeThere,
    IReadOnlyList<PrintReading> Readings,
    IReadOnlyList<PrintContradiction> Contradictions) : StripLesson;
