using Forming.Materials;

namespace Forming.TestStrips;

/// <summary>What is asked of strips pulled round a form.</summary>
public sealed record SpringbackQuestion
{
    /// <summary>Material of the strips, and the thickness of the panel to come.</summary>
    public required Sheet Sheet { get; init; }

    /// <summary>The strips, at least one.</summary>
    public required IReadOnlyList<SpringbackStrip> Strips { get; init; }

    /// <summary>95 % of measured finished radii lie within this share of the true one, dimensionless, &gt; 0.</summary>
    public double ReadingError { get; init; } = 0.02;

    /// <summary>Finished inside radii of the panel to come [mm]; empty takes the middle one of the strips.</summary>
    public IReadOnlyList<double> TargetsMm { get; init; } = [];
}
