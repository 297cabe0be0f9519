namespace Forming.Prediction;

/// <summary>How far the panel that comes off may miss the one that is wanted.</summary>
public static class FinishedTolerance
{
    /// <summary>Allowed miss of the sweep: an assumption; ISO 2768-1 class v allows it for legs of 50 to 120 mm.</summary>
    public static readonly Angle Sweep = Angle.FromDegrees(1);

    /// <summary>Allowed miss of the radius over the middle folds, as a share: an assumption.</summary>
    public const double RadiusShare = 0.02;

    /// <summary>Allowed distance from the finished curve for its developed length: an assumption.</summary>
    private const double ProfileShare = 0.003;

    /// <summary>No less than this is asked [mm]: an assumption.</summary>
    private const double LeastProfileMm = 0.3;

    /// <summary>Allowed distance from the finished curve [mm].</summary>
    /// <param name="shape">The panel let go.</param>
    public static double ProfileMm(PredictedShape shape) => Math.Max(LeastProfileMm, ProfileShare * shape.WantedLengthMm);

    /// <summary>Miss of the radius as a share; null where the panel or the wanted curve is flat there.</summary>
    /// <param name="shape">The panel let go.</param>
    public static double? RadiusMiss(PredictedShape shape) =>
        shape is { RadiusMm: { } radius, WantedRadiusMm: { } wanted } ? Math.Abs((radius / wanted) - 1) : null;

    /// <summary>Whether the panel is within all of them.</summary>
    /// <param name="shape">The panel let go.</param>
    public static bool IsMet(PredictedShape shape) =>
        Math.Abs((shape.Sweep - shape.WantedSweep).Radians) <= Sweep.Radians
        && !(RadiusMiss(shape) > RadiusShare)
        && shape.MissMm <= ProfileMm(shape);
}
