namespace Forming.Jobs;

/// <summary>One field of a job, and what it is changed to.</summary>
/// <param name="Field">The field.</param>
/// <param name="Number">The new number in the caller's unit (angles in degrees); null for a word, or where the field is cleared.</param>
/// <param name="Word">The new word, one of the enum that the field names; null for a number.</param>
/// <param name="Part">Which bend of the curve; null for the whole.</param>
public sealed record JobChange(JobField Field, double? Number, Enum? Word = null, CurvePart? Part = null);

/// <summary>One bend of a curve that has several.</summary>
/// <param name="IsTaperEnd">Whether it is an end of a taper; else a piece of a chain.</param>
/// <param name="Index">Index of the piece; of a taper 0 is the near end and 1 the far one.</param>
public readonly record struct CurvePart(bool IsTaperEnd, int Index);

/// <summary>A field of a job that a remedy may change.</summary>
public enum JobField
{
    /// <summary>Thickness of the panel, a length.</summary>
    PanelThickness,

    /// <summary>Gauge of the panel's sheet, in the system it was stated in.</summary>
    PanelGauge,

    /// <summary>Flat before the curve, a length.</summary>
    PanelLeadIn,

    /// <summary>Flat after the curve, a length.</summary>
    PanelLeadOut,

    /// <summary>Hand to the end of the curve, a length; none lets the plan choose.</summary>
    PanelLever,

    /// <summary>How the folds lie to the panel's rolling direction, a <see cref="Grain"/>.</summary>
    PanelGrain,

    /// <summary>Ripple that may show, a length.</summary>
    PanelAllowedRipple,

    /// <summary>Slope that may show, an angle.</summary>
    PanelAllowedSlope,

    /// <summary>Strength coefficient of the panel's flow curve, a stress.</summary>
    PanelStrengthCoefficient,

    /// <summary>First fold back to the clamp, a length.</summary>
    ClampGap,

    /// <summary>Height of the clamp, a length.</summary>
    ClampHeight,

    /// <summary>How many people pull, a count.</summary>
    PullByPeople,

    /// <summary>What the machine that pulls is rated for, a force.</summary>
    PullByRated,

    /// <summary>Radius of an arc, a length.</summary>
    CurveRadius,

    /// <summary>Radius at the start of a progressive bend, a length; none is flat.</summary>
    CurveStartRadius,

    /// <summary>Radius at the end of a progressive bend, a length; none is flat.</summary>
    CurveEndRadius,

    /// <summary>Semi-axis of an ellipse along x, a length.</summary>
    CurveSemiAxisX,

    /// <summary>Semi-axis of an ellipse along y, a length.</summary>
    CurveSemiAxisY,

    /// <summary>Sweep of an arc or a progressive bend, an angle.</summary>
    CurveSweep,

    /// <summary>Direction of an ellipse's last normal, an angle.</summary>
    CurveToNormal,

    /// <summary>Thickness of the form, a length.</summary>
    FormThickness,

    /// <summary>Gauge of the form's sheet, in the system it was stated in.</summary>
    FormGauge,

    /// <summary>Inside radius of the folds, a length.</summary>
    FormFoldRadius,

    /// <summary>Flat before the first fold, a length.</summary>
    FormLeadIn,

    /// <summary>Flat after the last fold, a length.</summary>
    FormLeadOut,

    /// <summary>Width of the form along the folds, a length.</summary>
    FormWidth,

    /// <summary>Strength coefficient of the form's flow curve, a stress.</summary>
    FormStrengthCoefficient,

    /// <summary>How the folds lie to the form's rolling direction, a <see cref="Grain"/>.</summary>
    FormGrain,

    /// <summary>What supports the form, a <see cref="FormBacking"/>.</summary>
    FormBacking,

    /// <summary>Number of folds, a count; none lets the plan choose.</summary>
    SteppingFolds,

    /// <summary>Angle of a fold, an angle; none lets the plan choose.</summary>
    SteppingAngle,

    /// <summary>Distance between folds, a length; none lets the plan choose.</summary>
    SteppingSpacing,

    /// <summary>Widest facet wanted, a length; none sets no limit.</summary>
    SteppingMaxFacet,

    /// <summary>Half or full folds at the ends, a <see cref="Facets.SteppingEnds"/>.</summary>
    SteppingEnds,

    /// <summary>How folds are spread, a <see cref="Facets.SteppingRule"/>.</summary>
    SteppingRule,

    /// <summary>Longest fold of the brake, a length.</summary>
    BrakeLength,

    /// <summary>Narrowest facet of the brake, a length.</summary>
    BrakeMinFacet,

    /// <summary>Nose to where the leaf bears, a length; none takes the default.</summary>
    BrakeReach,

    /// <summary>Smallest step of the brake's stop, an angle.</summary>
    BrakeStopResolution,

    /// <summary>Smallest step of the tape, in the tape's own unit.</summary>
    MarksResolution,
}
