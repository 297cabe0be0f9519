namespace Forming.Pulling;

/// <summary>The clamp that holds form and panel to the bench.</summary>
/// <param name="GapMm">From the first fold back to the clamp [mm], &gt; 0.</param>
/// <param name="HeightMm">Room it needs above the lead-in [mm], at least 0.</param>
public sealed record Clamp(double GapMm, double HeightMm)
{
    /// <summary>25 mm back, 40 mm high: an assumption.</summary>
    public static Clamp Default { get; } = new(25, 40);
}
