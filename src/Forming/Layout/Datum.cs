namespace Forming.Layout;

/// <summary>Where marks are measured from.</summary>
public enum Datum
{
    /// <summary>The edge of the blank at the lead-in.</summary>
    Edge,

    /// <summary>The edge of the blank at the lead-out.</summary>
    FarEdge,

    /// <summary>The middle of the blank; marks towards the lead-in are negative.</summary>
    Centre,
}
