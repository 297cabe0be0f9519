namespace Forming.Prediction;

/// <summary>How a pull ended.</summary>
public enum WrapEnd
{
    /// <summary>The panel lies over every fold, in their order.</summary>
    Complete,

    /// <summary>The free side curled up too far before the panel touched the next fold.</summary>
    CurlsUp,

    /// <summary>The equilibrium could not be followed any further.</summary>
    NotFollowed,
}
