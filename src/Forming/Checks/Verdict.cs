namespace Forming.Checks;

/// <summary>How one check came out.</summary>
public enum Verdict
{
    /// <summary>Within the limit.</summary>
    Pass,

    /// <summary>Past the limit, or not known, in something that can still be made.</summary>
    Warn,

    /// <summary>Cannot be folded, or is unsafe.</summary>
    Fail,
}
