namespace Forming.Estimates;

/// <summary>How a form stands against another method, over all counts of panels.</summary>
public enum BreakEvenOutcome
{
    /// <summary>Cheaper at every count.</summary>
    Always,

    /// <summary>Cheaper from some count on.</summary>
    From,

    /// <summary>Cheaper up to some count only.</summary>
    UpTo,

    /// <summary>Cheaper up to some count, dearer beyond it, cheaper again from a larger one on.</summary>
    UpToAndFrom,

    /// <summary>Cheaper at no count.</summary>
    Never,

    /// <summary>Cheaper at no count within the horizon; beyond it not told.</summary>
    NotWithinHorizon,
}
