namespace Forming.Programs;

/// <summary>What places the part for a fold.</summary>
public enum GaugedBy
{
    /// <summary>The flat edge behind lies against the stop.</summary>
    Flat,

    /// <summary>The folded part behind lies against the stop.</summary>
    FoldedPart,

    /// <summary>The pencil mark: the gauge does not reach.</summary>
    Mark,
}
