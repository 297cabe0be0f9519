namespace Forming.Plans;

/// <summary>What the checks come to.</summary>
public enum PlanVerdict
{
    /// <summary>Every check passed.</summary>
    Ready,

    /// <summary>At least one check warns.</summary>
    Attention,

    /// <summary>At least one check failed.</summary>
    CannotBeMade,
}
