namespace Forming.Results;

/// <summary>What hands, clamps and sheets are asked to bear at most: each limit is written here once.</summary>
public static class WorkingLimits
{
    /// <summary>Horizontal push or pull, standing, whole body [N]: source key <c>push-pull-1986</c>.</summary>
    public const double HandForceN = 225;

    /// <summary>Lifting load constant under ideal conditions [kg]: source key <c>niosh-94-110</c>.</summary>
    public const double LiftKg = 23;

    /// <summary>What one person's hands can keep level along an edge [mm]: an assumption.</summary>
    public const double OnePersonWidthMm = 1200;

    /// <summary>More than this many do not lift one blank together: an assumption.</summary>
    public const int MostLifters = 4;

    /// <summary>Share of what a brake is rated for past which too little is left in hand: common practice, no source.</summary>
    public const double CapacityInHand = 0.8;

    /// <summary>A caller's flow curve may miss the proof stress by this share without a word: an assumption.</summary>
    public const double ProofTolerance = 0.10;

    /// <summary>Least inside radius over thickness: below it no neutral factor is published and no bend is drawn.</summary>
    public const double LeastRadiusOverThickness = 0.2;

    /// <summary>Opening of a die over the thickness bent in it, below which air bending is no longer relied on: an assumption.</summary>
    public const double LeastOpeningOverThickness = 5;

    /// <summary>Standard gravity [m/s²].</summary>
    public const double Gravity = 9.80665;

    /// <summary>Share of the form's first yield past which the estimate, at most 12 % too small, leaves too little in hand.</summary>
    public const double NearYield = 0.8;
}
