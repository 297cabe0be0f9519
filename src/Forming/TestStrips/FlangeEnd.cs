namespace Forming.TestStrips;

/// <summary>To where the legs of a folded strip are measured.</summary>
public enum FlangeEnd
{
    /// <summary>To the mold line, where the outside faces would meet if the fold were sharp.</summary>
    MoldLine,

    /// <summary>To the tangent line, where the straight part ends.</summary>
    TangentLine,
}
