using Forming.Results;

namespace Forming.Checks;

/// <summary>
/// What a check is called in every answer, what kind of quantity its value and its limit are, and to which side of it the value should lie.
/// </summary>
/// <param name="Name">Stable id such as <c>facet-width</c>.</param>
/// <param name="Quantity">What kind of quantity value and limit are.</param>
/// <param name="Bound">To which side of the limit the value should lie, unless the check itself says otherwise.</param>
public sealed record CheckId(string Name, Quantity Quantity, Bound Bound);

/// <summary>Every check there is, each with one meaning wherever it is answered.</summary>
public static class CheckIds
{
    /// <summary>Flat behind a fold in a press brake, against the die.</summary>
    public static CheckId BackRun { get; } = new("back-run", Quantity.Length, Bound.Least);

    /// <summary>Length of the folds, against the brake.</summary>
    public static CheckId BrakeLength { get; } = new("brake-length", Quantity.Length, Bound.Most);

    /// <summary>Share of what the brake is rated for.</summary>
    public static CheckId Capacity { get; } = new("capacity", Quantity.Number, Bound.Most);

    /// <summary>Room for the clamp under what hangs over it.</summary>
    public static CheckId ClampAccess { get; } = new("clamp-access", Quantity.Length, Bound.Least);

    /// <summary>Flat behind a fold in a leaf brake, against the clamping land.</summary>
    public static CheckId ClampLand { get; } = new("clamp-land", Quantity.Length, Bound.Least);

    /// <summary>Clearance of the part from the tools below.</summary>
    public static CheckId ClearanceLower { get; } = new("clearance-lower", Quantity.Length, Bound.Least);

    /// <summary>Clearance of the part from itself.</summary>
    public static CheckId ClearanceSelf { get; } = new("clearance-self", Quantity.Length, Bound.Least);

    /// <summary>Clearance of the part from the tools above.</summary>
    public static CheckId ClearanceUpper { get; } = new("clearance-upper", Quantity.Length, Bound.Least);

    /// <summary>How far the whole form closes too much or too little.</summary>
    public static CheckId ClosingTolerance { get; } = new("closing-tolerance", Quantity.Angle, Bound.Most);

    /// <summary>Turned angle of the form, against what still lets the panel off.</summary>
    public static CheckId Closure { get; } = new("closure", Quantity.Angle, Bound.Most);

    /// <summary>Opening of the die, against the thickness of the sheet.</summary>
    public static CheckId DieOpening { get; } = new("die-opening", Quantity.Length, Bound.Least);

    /// <summary>Share by which the ends of a taper differ from their curves.</summary>
    public static CheckId EndBias { get; } = new("end-bias", Quantity.Number, Bound.Most);

    /// <summary>How far the end of the form may lie off.</summary>
    public static CheckId EndTolerance { get; } = new("end-tolerance", Quantity.Length, Bound.Most);

    /// <summary>Lift with which the part is put in again.</summary>
    public static CheckId Entry { get; } = new("entry", Quantity.Length, Bound.Least);

    /// <summary>Width of a facet, against what shows.</summary>
    public static CheckId FacetWidth { get; } = new("facet-width", Quantity.Length, Bound.Most);

    /// <summary>Ripple of the panel let go, as a share of what its finish allows.</summary>
    public static CheckId FacetsShow { get; } = new("facets-show", Quantity.Number, Bound.Most);

    /// <summary>Strain in the panel, against what its flow curve is known for.</summary>
    public static CheckId FlowCurve { get; } = new("flow-curve", Quantity.Number, Bound.Most);

    /// <summary>How far the panel let go misses the wanted mean radius over its middle folds, as a share.</summary>
    public static CheckId FinishedRadius { get; } = new("finished-radius", Quantity.Number, Bound.Most);

    /// <summary>How far it lies off the finished curve, laid over it as well as it goes.</summary>
    public static CheckId FinishedShape { get; } = new("finished-shape", Quantity.Length, Bound.Most);

    /// <summary>How far its sweep misses the finished one.</summary>
    public static CheckId FinishedSweep { get; } = new("finished-sweep", Quantity.Angle, Bound.Most);

    /// <summary>Miss of the flat layout when folded back.</summary>
    public static CheckId FoldBack { get; } = new("fold-back", Quantity.Length, Bound.Most);

    /// <summary>Inside radius of the folds, against what cracks the sheet.</summary>
    public static CheckId FoldRadius { get; } = new("fold-radius", Quantity.Length, Bound.Least);

    /// <summary>Turn of the form under the pull.</summary>
    public static CheckId FormGive { get; } = new("form-give", Quantity.Angle, Bound.Most);

    /// <summary>Width of the form, against the panel.</summary>
    public static CheckId FormWidth { get; } = new("form-width", Quantity.Length, Bound.Least);

    /// <summary>Moment in the form under the pull, against its first yield.</summary>
    public static CheckId FormYield { get; } = new("form-yield", Quantity.MomentPerWidth, Bound.Most);

    /// <summary>Flat in front of a fold.</summary>
    public static CheckId FrontRun { get; } = new("front-run", Quantity.Length, Bound.Least);

    /// <summary>Slope of the folded part where it meets the stop.</summary>
    public static CheckId GaugeFace { get; } = new("gauge-face", Quantity.Angle, Bound.Least);

    /// <summary>Distance of the gauge.</summary>
    public static CheckId GaugeRange { get; } = new("gauge-range", Quantity.Length, Bound.Most);

    /// <summary>Pull on the panel, against what hands or a winch do.</summary>
    public static CheckId HandForce { get; } = new("hand-force", Quantity.Force, Bound.Most);

    /// <summary>Pull on the brake's handle.</summary>
    public static CheckId HandleForce { get; } = new("handle-force", Quantity.Force, Bound.Most);

    /// <summary>Lever, against the longest that keeps the wrap in order.</summary>
    public static CheckId Lever { get; } = new("lever", Quantity.Length, Bound.Most);

    /// <summary>Mass of the heaviest blank, against who lifts it.</summary>
    public static CheckId LiftMass { get; } = new("lift-mass", Quantity.Mass, Bound.Most);

    /// <summary>Distance of neighbouring marks, against what a tape can show.</summary>
    public static CheckId MarksApart { get; } = new("marks-apart", Quantity.Length, Bound.Least);

    /// <summary>Width of the widest facet, against what was asked for.</summary>
    public static CheckId MaxFacet { get; } = new("max-facet", Quantity.Length, Bound.Most);

    /// <summary>Narrowest facet, against what the brake can fold.</summary>
    public static CheckId MinimumFacet { get; } = new("minimum-facet", Quantity.Length, Bound.Least);

    /// <summary>Radius over thickness, against where the bending model holds.</summary>
    public static CheckId ModelRange { get; } = new("model-range", Quantity.Number, Bound.Least);

    /// <summary>Cost of handling in the best order.</summary>
    public static CheckId Order { get; } = new("order", Quantity.Number, Bound.Most);

    /// <summary>How far 95 of 100 panels may lie off in radius or sweep, as a share.</summary>
    public static CheckId Outlook { get; } = new("outlook", Quantity.Number, Bound.Most);

    /// <summary>Flat of the panel under the clamp.</summary>
    public static CheckId PanelClamp { get; } = new("panel-clamp", Quantity.Length, Bound.Least);

    /// <summary>Radius of the panel, against what cracks it.</summary>
    public static CheckId PanelRadius { get; } = new("panel-radius", Quantity.Length, Bound.Least);

    /// <summary>Width of the panel, against how many pull.</summary>
    public static CheckId PanelWidth { get; } = new("panel-width", Quantity.Length, Bound.Most);

    /// <summary>Height of the line of pull.</summary>
    public static CheckId PullLine { get; } = new("pull-line", Quantity.Length, Bound.Most);

    /// <summary>Whether it is known what comes off the form.</summary>
    public static CheckId Outcome { get; } = new("outcome", Quantity.Number, Bound.Most);

    /// <summary>Lift with which the part is slid on.</summary>
    public static CheckId Push { get; } = new("push", Quantity.Length, Bound.Least);

    /// <summary>Lift with which the part comes off.</summary>
    public static CheckId Removal { get; } = new("removal", Quantity.Length, Bound.Least);

    /// <summary>Room that the finished half has while the second is pulled.</summary>
    public static CheckId SecondHalfClearance { get; } = new("second-half-clearance", Quantity.Length, Bound.Least);

    /// <summary>Pull on the second half.</summary>
    public static CheckId SecondHalfPull { get; } = new("second-half-pull", Quantity.Force, Bound.Most);

    /// <summary>Largest stop angle, against the brake.</summary>
    public static CheckId StopAngle { get; } = new("stop-angle", Quantity.Angle, Bound.Most);

    /// <summary>Smallest fold angle, against the steps of the stop.</summary>
    public static CheckId StopResolution { get; } = new("stop-resolution", Quantity.Angle, Bound.Least);

    /// <summary>Straight part between two folds.</summary>
    public static CheckId StraightPart { get; } = new("straight-part", Quantity.Length, Bound.Least);

    /// <summary>Strength of the panel, against its yield stress.</summary>
    public static CheckId StrengthCoefficient { get; } = new("strength-coefficient", Quantity.Stress, Bound.Least);

    /// <summary>Turned angle of the form, against the curve.</summary>
    public static CheckId SweepMatch { get; } = new("sweep-match", Quantity.Angle, Bound.Most);

    /// <summary>How far the folds of a taper miss the panel.</summary>
    public static CheckId TouchMiss { get; } = new("touch-miss", Quantity.Length, Bound.Most);

    /// <summary>How far a mold line may lie off.</summary>
    public static CheckId VertexTolerance { get; } = new("vertex-tolerance", Quantity.Length, Bound.Most);

    /// <summary>Lever of the simulated pull, against the longest that keeps the folds in order.</summary>
    public static CheckId WrapOrder { get; } = new("wrap-order", Quantity.Length, Bound.Most);

    /// <summary>Lever at which the simulated pull was lost.</summary>
    public static CheckId WrapSolver { get; } = new("wrap-solver", Quantity.Length, Bound.Most);
}
