namespace Forming.Prediction;

/// <summary>How a pull ended.</summary>
public enum WrapEnd
{
    /// <summary>The panel lies over every fold, in their order.</summary>
    Complete,

    /// <summary>The free side curled up too far before the panel touched the next fold.</summary>
    CurlsUp,

    /// <summary>The sheet slid forward until the hand came down on the form, with folds or the lead-out still ahead of it: the lever is too short.</summary>
    HandComesDown,

    /// <summary>The solver found no balance to go on with: that says nothing of the panel.</summary>
    SolverGaveUp,

    /// <summary>The solver took all the work that one prediction may take: that says nothing of the panel.</summary>
    WorkRanOut,
}
