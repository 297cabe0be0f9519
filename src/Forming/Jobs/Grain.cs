namespace Forming.Jobs;

/// <summary>How the folds lie to the rolling direction.</summary>
public enum Grain
{
    /// <summary>Not known; treated as along.</summary>
    Unknown,

    /// <summary>Folds square to the rolling direction.</summary>
    Across,

    /// <summary>Folds parallel to the rolling direction.</summary>
    Along,
}
