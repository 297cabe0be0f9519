namespace Forming.Verification;

/// <summary>How a check value came out.</summary>
public enum CheckVerdict
{
    /// <summary>Within the tolerance.</summary>
    Pass,

    /// <summary>Outside it, or not a number at all.</summary>
    Fail,
}
