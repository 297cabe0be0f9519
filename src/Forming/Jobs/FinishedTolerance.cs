namespace Forming.Jobs;

/// <summary>How far the panel that comes off may miss the one that is wanted.</summary>
/// <param name="Sweep">Allowed miss of the sweep.</param>
/// <param name="RadiusShare">Allowed miss of the radius over the middle folds, as a share, &gt; 0.</param>
/// <param name="ProfileMm">Allowed distance from the finished curve [mm], &gt; 0; null takes a share of its length.</param>
public sealed record FinishedTolerance(Angle Sweep, double RadiusShare, double? ProfileMm)
{
    /// <summary>Allowed distance from the finished curve for its developed length: an assumption.</summary>
    private const double ProfileShare = 0.003;

    /// <summary>No less than this is asked [mm]: an assumption.</summary>
    private const double LeastProfileMm = 0.3;

    /// <summary>
    /// What holds where nothing is said: 1°, which ISO 2768-1 class v allows for legs of 50 to 120 mm, and 2 % of the radius; both are
    /// assumptions here.
    /// </summary>
    public static FinishedTolerance Default { get; } = new(Angle.FromDegrees(1), 0.02, null);

    /// <summary>Allowed distance from a finished curve [mm].</summary>
    /// <param name="lengthMm">Its developed length [mm].</param>
    public double ProfileOver(double lengthMm) => ProfileMm ?? Math.Max(LeastProfileMm, ProfileShare * lengthMm);
}
