namespace Forming.Springback;

/// <summary>Which of a sheet's strengths a flow curve misses.</summary>
public enum FlowCurveMiss
{
    /// <summary>None that matters.</summary>
    None,

    /// <summary>The proof stress.</summary>
    Proof,

    /// <summary>The ultimate strength.</summary>
    Ultimate,
}
