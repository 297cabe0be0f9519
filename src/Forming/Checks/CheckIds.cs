using Forming.Results;

namespace Forming.Checks;

/// <summary>What a check is called in every answer, and what kind of quantity its figure and its limit are.</summary>
/// <param name="Name">Stable id such as <c>facet-width</c>.</param>
/// <param name="Quantity">What kind of quantity figure and limit are.</param>
public sealed record CheckId(string Name, Quantity Quantity);

/// <summary>Every check there is, each with one meaning wherever it is answered.</summary>
public static class CheckIds
{
    /// <summary>Flat behind a fold in a press brake, against the die.</summary>
    public static CheckId BackRun { get; } = new("back-run", Quantity.Length);

    /// <summary>Length of the folds, against the brake.</summary>
    public static CheckId BrakeLength { get; } = new("brake-length", Quantity.Length);

    /// <summary>Share of what the brake is rated for.</summary>
    public static CheckId Capacity { get; } = new("capacity", Quantity.Number);

    /// <summary>Room for the clamp under what hangs over it.</summary>
    public static CheckId ClampAccess { get; } = new("clamp-access", Quantity.Length);

    /// <summary>Flat behind a fold in a leaf brake, against the clamping land.</summary>
    public static CheckId ClampLand { get; } = new("clamp-land", Quantity.Length);

    /// <summary>Clearance of the part from the tools below.</summary>
    public static CheckId ClearanceLower { get; } = new("clearance-lower", Quantity.Length);

    /// <summary>Clearance of the part from itself.</summary>
    public static CheckId ClearanceSelf { get; } = new("clearance-self", Quantity.Length);

    /// <summary>Clearance of the part from the tools above.</summary>
    public static CheckId ClearanceUpper { get; } = new("clearance-upper", Quantity.Length);

    /// <summary>How far the whole form closes too much or too little.</summary>
    public static CheckId ClosingTolerance { get; } = new("closing-tolerance", Quantity.Angle);

    /// <summary>Turned angle of the form, against what still lets the panel off.</summary>
    public static CheckId Closure { get; } = new("closure", Quantity.Angle);

    /// <summary>Opening of the die, against the thickness of the sheet.</summary>
    public static CheckId DieOpening { get; } = new("die-opening", Quantity.Length);

    /// <summary>Share by which the ends of a taper differ from their curves.</summary>
    public static CheckId EndBias { get; } = new("end-bias", Quantity.Number);

    /// <summary>How far the end of the form may lie off.</summary>
    public static CheckId EndTolerance { get; } = new("end-tolerance", Quantity.Length);

    /// <summary>Lift with which the part is put in again.</summary>
    public static CheckId Entry { get; } = new("entry", Quantity.Length);

    /// <summary>Width of a facet, against what shows.</summary>
    public static CheckId FacetWidth { get; } = new("facet-width", Quantity.Length);

    /// <summary>Strain in the panel, against what its flow curve is known for.</summary>
    public static CheckId FlowCurve { get; } = new("flow-curve", Quantity.Number);

    /// <summary>Miss of the flat layout when folded back.</summary>
    public static CheckId FoldBack { get; } = new("fold-back", Quantity.Length);

    /// <summary>Inside radius of the folds, against what cracks the sheet.</summary>
    public static CheckId FoldRadius { get; } = new("fold-radius", Quantity.Length);

    /// <summary>Turn of the form under the pull.</summary>
    public static CheckId FormGive { get; } = new("form-give", Quantity.Angle);

    /// <summary>Width of the form, against the panel.</summary>
    public static CheckId FormWidth { get; } = new("form-width", Quantity.Length);

    /// <summary>Moment in the form under the pull, against its first yield.</summary>
    public static CheckId FormYield { get; } = new("form-yield", Quantity.MomentPerWidth);

    /// <summary>Flat in front of a fold.</summary>
    public static CheckId FrontRun { get; } = new("front-run", Quantity.Length);

    /// <summary>Slope of the folded part where it meets the stop.</summary>
    public static CheckId GaugeFace { get; } = new("gauge-face", Quantity.Angle);

    /// <summary>Distance of the gauge.</summary>
    public static CheckId GaugeRange { get; } = new("gauge-range", Quantity.Length);

    /// <summary>Pull on the panel, against what hands or a winch do.</summary>
    public static CheckId HandForce { get; } = new("hand-force", Quantity.Force);

    /// <summary>Pull on the brake's handle.</summary>
    public static CheckId HandleForce { get; } = new("handle-force", Quantity.Force);

    /// <summary>Lever, against the longest that keeps the wrap in order.</summary>
    public static CheckId Lever { get; } = new("lever", Quantity.Length);

    /// <summary>Mass of the heaviest blank, against who lifts it.</summary>
    public static CheckId LiftMass { get; } = new("lift-mass", Quantity.Mass);

    /// <summary>Distance of neighbouring marks, against what a tape tells apart.</summary>
    public static CheckId MarksApart { get; } = new("marks-apart", Quantity.Length);

    /// <summary>Width of the widest facet, against what was asked for.</summary>
    public static CheckId MaxFacet { get; } = new("max-facet", Quantity.Length);

    /// <summary>Narrowest facet, against what the brake can fold.</summary>
    public static CheckId MinimumFacet { get; } = new("minimum-facet", Quantity.Length);

    /// <summary>Radius over thickness, against where the bending model holds.</summary>
    public static CheckId ModelRange { get; } = new("model-range", Quantity.Number);

    /// <summary>Cost of handling in the best order.</summary>
    public static CheckId Order { get; } = new("order", Quantity.Number);

    /// <summary>Flat of the panel under the clamp.</summary>
    public static CheckId PanelClamp { get; } = new("panel-clamp", Quantity.Length);

    /// <summary>Radius of the panel, against what cracks it.</summary>
    public static CheckId PanelRadius { get; } = new("panel-radius", Quantity.Length);

    /// <summary>Width of the panel, against how many pull.</summary>
    public static CheckId PanelWidth { get; } = new("panel-width", Quantity.Length);

    /// <summary>Ripple of the predicted panel, against its finish.</summary>
    public static CheckId PredictedRipple { get; } = new("predicted-ripple", Quantity.Length);

    /// <summary>The same where the slope of the ripple comes nearer to its limit than the height does.</summary>
    public static CheckId PredictedRippleBySlope { get; } = new("predicted-ripple", Quantity.Angle);

    /// <summary>Height of the line of pull.</summary>
    public static CheckId PullLine { get; } = new("pull-line", Quantity.Length);

    /// <summary>Lift with which the part is slid on.</summary>
    public static CheckId Push { get; } = new("push", Quantity.Length);

    /// <summary>Folds after refining.</summary>
    public static CheckId RefinedFolds { get; } = new("refined-folds", Quantity.Number);

    /// <summary>Lift with which the part comes off.</summary>
    public static CheckId Removal { get; } = new("removal", Quantity.Length);

    /// <summary>Room that the finished half has while the second is pulled.</summary>
    public static CheckId SecondHalfClearance { get; } = new("second-half-clearance", Quantity.Length);

    /// <summary>Pull on the second half.</summary>
    public static CheckId SecondHalfPull { get; } = new("second-half-pull", Quantity.Force);

    /// <summary>Largest stop angle, against the brake.</summary>
    public static CheckId StopAngle { get; } = new("stop-angle", Quantity.Angle);

    /// <summary>Smallest fold angle, against the steps of the stop.</summary>
    public static CheckId StopResolution { get; } = new("stop-resolution", Quantity.Angle);

    /// <summary>Straight part between two folds.</summary>
    public static CheckId StraightPart { get; } = new("straight-part", Quantity.Length);

    /// <summary>Strength of the panel, against its yield stress.</summary>
    public static CheckId StrengthCoefficient { get; } = new("strength-coefficient", Quantity.Stress);

    /// <summary>Turned angle of the form, against the curve.</summary>
    public static CheckId SweepMatch { get; } = new("sweep-match", Quantity.Angle);

    /// <summary>How far the folds of a taper miss the panel.</summary>
    public static CheckId TouchMiss { get; } = new("touch-miss", Quantity.Length);

    /// <summary>How far a mold line may lie off.</summary>
    public static CheckId VertexTolerance { get; } = new("vertex-tolerance", Quantity.Length);

    /// <summary>Lever of the simulated pull, against the longest that keeps the folds in order.</summary>
    public static CheckId WrapOrder { get; } = new("wrap-order", Quantity.Length);

    /// <summary>Lever at which the simulated pull was lost.</summary>
    public static CheckId WrapSolver { get; } = new("wrap-solver", Quantity.Length);
}
