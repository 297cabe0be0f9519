namespace Forming.Curves;

/// <summary>Where the far curve of a taper starts, seen along the folds.</summary>
public enum TaperPlacement
{
    /// <summary>Both curves start from one centre of curvature: two arcs make a right cone.</summary>
    Concentric,

    /// <summary>Both curves start at one point.</summary>
    Flush,

    /// <summary>The caller says.</summary>
    Offset,
}
