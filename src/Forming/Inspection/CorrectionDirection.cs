namespace Forming.Inspection;

/// <summary>Which way a fold may be corrected.</summary>
public enum CorrectionDirection
{
    /// <summary>Folded further only: the brake does it.</summary>
    CloseOnly,

    /// <summary>Folded further, or opened again.</summary>
    Both,
}
