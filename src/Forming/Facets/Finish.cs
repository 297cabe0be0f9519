namespace Forming.Facets;

/// <summary>How much of the facets may show in the finished panel.</summary>
/// <param name="Name">Name of the finish.</param>
/// <param name="RippleMm">Largest peak-to-valley height over one facet [mm], &gt; 0.</param>
/// <param name="Slope">Largest slope against the smooth curve, &gt; 0.</param>
/// <remarks>The three named limits are assumptions; a shop's own come from test strips.</remarks>
public sealed record Finish(string Name, double RippleMm, Angle Slope)
{
    /// <summary>Name of a finish whose limits are the caller's own.</summary>
    public const string OwnName = "own";

    /// <summary>Paint or polish that mirrors its surroundings.</summary>
    public static Finish Gloss { get; } = new("gloss", 0.02, Angle.FromDegrees(0.3));

    /// <summary>Satin or mill finish.</summary>
    public static Finish Satin { get; } = new("satin", 0.10, Angle.FromDegrees(1.25));

    /// <summary>Out of sight.</summary>
    public static Finish Hidden { get; } = new("hidden", 0.40, Angle.FromDegrees(3));
}
