namespace Forming.Facets;

/// <summary>Rules for spreading folds along a curve.</summary>
public enum SteppingRule
{
    /// <summary>Folds spread evenly over the turned angle: one stop setting.</summary>
    EqualAngle,

    /// <summary>Folds spread evenly over the flat blank: one divider setting.</summary>
    EqualSpacing,

    /// <summary>Folds as far apart as the finish allows everywhere.</summary>
    FewestFolds,
}
