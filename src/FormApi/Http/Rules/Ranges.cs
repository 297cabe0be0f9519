using FormApi.Http.Units;
using Forming.Curves.Fitting;

namespace FormApi.Http.Rules;

/// <summary>The ranges of every number in a request: generous, physical, there to keep slips and overflow out.</summary>
internal static class Ranges
{
    // No protractor reads less; angles without a floor lose their digits before they reach 0.
    private const double LeastAngle = 0.001;

    /// <summary>Thickness of a sheet.</summary>
    public static AllowedRange Thickness { get; } = Length(0.05, 25);

    /// <summary>Width along the folds.</summary>
    public static AllowedRange Width { get; } = Length(1, 1e5);

    /// <summary>A flat that may be missing.</summary>
    public static AllowedRange Flat { get; } = Length(0, 1e5);

    /// <summary>A flat between bends.</summary>
    public static AllowedRange FlatSegment { get; } = Length(0.01, 1e5);

    /// <summary>Radius of a curve.</summary>
    public static AllowedRange CurveRadius { get; } = Length(0.5, 1e5);

    /// <summary>Diameter of a curve.</summary>
    public static AllowedRange CurveDiameter { get; } = Length(1, 2e5);

    /// <summary>Sweep of a single bend.</summary>
    public static AllowedRange Sweep { get; } = new(LeastAngle, 360, Measure.Angle);

    /// <summary>Sweep of a bend in a chain; a reversal is refused with its place.</summary>
    public static AllowedRange SegmentSweep { get; } = new(-400, 400, Measure.Angle, Where: "in a chain");

    /// <summary>Direction of an ellipse's normal.</summary>
    public static AllowedRange Normal { get; } = new(-720, 720, Measure.Angle);

    /// <summary>Coordinate of a measured point.</summary>
    public static AllowedRange Coordinate { get; } = Length(-1e6, 1e6);

    /// <summary>Number of measured points.</summary>
    public static AllowedRange PointCount { get; } = new(PointsFit.FewestPoints, PointsFit.MostPoints, Measure.Count);

    /// <summary>Number of pieces in a chain.</summary>
    public static AllowedRange SegmentCount { get; } = new(1, 100, Measure.Count);

    /// <summary>Distance between the end planes of a taper.</summary>
    public static AllowedRange TaperLength { get; } = Length(1, 1e5);

    /// <summary>Start of a taper's far curve.</summary>
    public static AllowedRange TaperOffset { get; } = Length(-1e5, 1e5);

    /// <summary>How far a fitted curve may miss a point.</summary>
    public static AllowedRange FitTolerance { get; } = Length(0.001, 100);

    /// <summary>Inside radius of a fold.</summary>
    public static AllowedRange FoldRadius { get; } = Length(0.01, 1e4);

    /// <summary>Number of folds.</summary>
    public static AllowedRange Folds { get; } = new(1, 1000, Measure.Count);

    /// <summary>Angle of one fold.</summary>
    public static AllowedRange FoldAngle { get; } = new(0.05, 90, Measure.Angle);

    /// <summary>Spacing or facet.</summary>
    public static AllowedRange Facet { get; } = Length(0.1, 1e4);

    /// <summary>Number of folds of a standing form: two make a facet.</summary>
    public static AllowedRange StationCount { get; } = new(2, 1000, Measure.Count);

    /// <summary>Angle of an existing fold.</summary>
    public static AllowedRange StandingAngle { get; } = new(LeastAngle, 150, Measure.Angle);

    /// <summary>Facet of a standing form, or its lead-out.</summary>
    public static AllowedRange StandingFacet { get; } = Length(0.1, 1e5);

    /// <summary>Neutral factor K.</summary>
    public static AllowedRange NeutralFactor { get; } = new(0, 1, Measure.Number);

    /// <summary>Finished curvature over formed curvature.</summary>
    public static AllowedRange SpringbackFactor { get; } = new(0.02, 1, Measure.Number);

    /// <summary>Offset of the stop's line.</summary>
    public static AllowedRange StopOffset { get; } = new(-45, 45, Measure.Angle);

    /// <summary>Slope of the stop's line.</summary>
    public static AllowedRange StopSlope { get; } = new(0.1, 10, Measure.Number);

    /// <summary>Step of an angle stop.</summary>
    public static AllowedRange StopResolution { get; } = new(0.001, 10, Measure.Angle);

    /// <summary>Longest fold of a brake.</summary>
    public static AllowedRange BrakeLength { get; } = Length(1, 1e5);

    /// <summary>From the nose to where the leaf bears; the length of the whole leaf is a slip.</summary>
    public static AllowedRange Reach { get; } =
        new(0.1, 250, Measure.Length, TooLarge: "The reach is from the nose to where the leaf bears on the sheet, not the length of the leaf.");

    /// <summary>Opening of a die.</summary>
    public static AllowedRange DieOpening { get; } = Length(0.1, 500);

    /// <summary>Thickness a brake is rated for.</summary>
    public static AllowedRange RatedThickness { get; } = Length(0.05, 100);

    /// <summary>Hand to the end of the curve.</summary>
    public static AllowedRange Lever { get; } = Length(0, 1e5);

    /// <summary>Clamp to the first fold.</summary>
    public static AllowedRange ClampGap { get; } = Length(0, 1e4);

    /// <summary>Height of a clamp.</summary>
    public static AllowedRange ClampHeight { get; } = Length(0, 1e4);

    /// <summary>How deep a clamp bears.</summary>
    public static AllowedRange ClampDepth { get; } = Length(0.1, 1e4);

    /// <summary>Ripple that may show.</summary>
    public static AllowedRange Ripple { get; } = Length(0.0001, 100);

    /// <summary>Slope that may show.</summary>
    public static AllowedRange Slope { get; } = new(0.001, 45, Measure.Angle);

    /// <summary>How far a finished sweep may miss.</summary>
    public static AllowedRange FinishedAngle { get; } = new(0.01, 45, Measure.Angle);

    /// <summary>How far a finished radius may miss, as a share.</summary>
    public static AllowedRange FinishedRadius { get; } = new(0.0001, 0.5, Measure.Number);

    /// <summary>How far a finished panel may lie off its curve.</summary>
    public static AllowedRange FinishedProfile { get; } = Length(0.001, 1000);

    /// <summary>Side of a stock sheet.</summary>
    public static AllowedRange StockSide { get; } = Length(1, 1e5);

    /// <summary>Number of stock sheets.</summary>
    public static AllowedRange StockCount { get; } = new(1, 20, Measure.Count);

    /// <summary>Smallest step of a tape in mm, in its own unit.</summary>
    public static AllowedRange MmResolution { get; } = new(0.001, 100, Measure.Number, Where: "on a mm tape");

    /// <summary>Smallest step of a tape in inches, in its own unit.</summary>
    public static AllowedRange InchResolution { get; } = new(0.0001, 4, Measure.Number, Where: "on an inch tape");

    /// <summary>Young's modulus.</summary>
    public static AllowedRange YoungsModulus { get; } = Stress(1000, 1e6);

    /// <summary>Poisson's ratio.</summary>
    public static AllowedRange PoissonRatio { get; } = new(0, 0.49, Measure.Number);

    /// <summary>A strength.</summary>
    public static AllowedRange Strength { get; } = Stress(1, 5000);

    /// <summary>Strength coefficient of a flow curve.</summary>
    public static AllowedRange StrengthCoefficient { get; } = Stress(1, 10000);

    /// <summary>Strain-hardening exponent.</summary>
    public static AllowedRange StrainHardening { get; } = new(0, 1, Measure.Number);

    /// <summary>Total elongation; a fraction is a slip that would make half-hard sheet of anything.</summary>
    public static AllowedRange Elongation { get; } = new(1, 100, Measure.Percent, TooSmall: "The elongation is in percent: 8, not 0.08.");

    /// <summary>Density.</summary>
    public static AllowedRange Density { get; } = new(500, 25000, Measure.Density);

    /// <summary>Smallest bend radius over thickness.</summary>
    public static AllowedRange MinRadius { get; } = new(0, 50, Measure.Number);

    /// <summary>Number of test strips.</summary>
    public static AllowedRange StripCount { get; } = new(1, 100, Measure.Count);

    /// <summary>Number of values wanted of test strips.</summary>
    public static AllowedRange TargetCount { get; } = new(1, 50, Measure.Count);

    /// <summary>Angle of a test strip, set or measured.</summary>
    public static AllowedRange StripAngle { get; } = new(LeastAngle, 180, Measure.Angle);

    /// <summary>Fold angle of a strip whose legs reach to the mold line, which runs off towards a half turn.</summary>
    public static AllowedRange NeutralStripAngle { get; } = new(1, 170, Measure.Angle);

    /// <summary>Error of a measured angle.</summary>
    public static AllowedRange AngleError { get; } = new(0.001, 10, Measure.Angle);

    /// <summary>Error of a measured length.</summary>
    public static AllowedRange LengthError { get; } = Length(0.001, 10);

    /// <summary>Error of a measured radius.</summary>
    public static AllowedRange RadiusErrorPercent { get; } = new(0.01, 50, Measure.Percent);

    /// <summary>Error of an assumed slope.</summary>
    public static AllowedRange SlopeError { get; } = new(0, 10, Measure.Number);

    /// <summary>Width of a test strip.</summary>
    public static AllowedRange StripWidth { get; } = Length(1, 1e4);

    /// <summary>Finished sweep of a test strip.</summary>
    public static AllowedRange StripSweep { get; } = new(LeastAngle, 360, Measure.Angle);

    /// <summary>Folds of a form that a test strip is pulled over.</summary>
    public static AllowedRange StripStations { get; } = new(2, 60, Measure.Count);

    /// <summary>How far a finished radius may be off.</summary>
    public static AllowedRange StripTolerance { get; } = Length(0.01, 1e4);

    /// <summary>Touching fold to the hand, on a test strip.</summary>
    public static AllowedRange StripLever { get; } = Length(1, 1e5);

    /// <summary>Systematic error of a fold.</summary>
    public static AllowedRange AngleBias { get; } = new(-10, 10, Measure.Angle);

    /// <summary>Standard deviation of a fold.</summary>
    public static AllowedRange AngleScatter { get; } = new(0, 10, Measure.Angle);

    /// <summary>Standard deviation of a mark.</summary>
    public static AllowedRange MarkScatter { get; } = Length(0, 10);

    /// <summary>Standard deviation of a yield stress.</summary>
    public static AllowedRange YieldScatter { get; } = new(0, 30, Measure.Percent);

    /// <summary>Standard deviation of a thickness.</summary>
    public static AllowedRange ThicknessScatter { get; } = Length(0, 2);

    /// <summary>Standard deviation of Young's modulus.</summary>
    public static AllowedRange ModulusScatter { get; } = new(0, 10, Measure.Percent);

    /// <summary>With how much confidence facets are to pass.</summary>
    public static AllowedRange Confidence { get; } = new(Forming.Facets.Stepping.LeastConfidence, 0.99, Measure.Number);

    /// <summary>Tolerance of a closing angle.</summary>
    public static AllowedRange ClosingTolerance { get; } = new(LeastAngle, 90, Measure.Angle);

    /// <summary>Tolerance of a place.</summary>
    public static AllowedRange PlaceTolerance { get; } = Length(0.001, 1e4);

    /// <summary>Standard deviations that have to fit into a tolerance.</summary>
    public static AllowedRange Coverage { get; } = new(0.5, 6, Measure.Number);

    /// <summary>A measured fold; 0 was not made.</summary>
    public static AllowedRange MeasuredAngle { get; } = new(0, 150, Measure.Angle);

    /// <summary>Measured sweep of a panel; 0 for one that came off flat [°].</summary>
    public static AllowedRange MeasuredSweep { get; } = new(0, 400, Measure.Angle);

    /// <summary>Number of measured folds.</summary>
    public static AllowedRange MeasuredCount { get; } = new(1, 1000, Measure.Count);

    /// <summary>Number of measured facets.</summary>
    public static AllowedRange MeasuredFacets { get; } = new(0, 999, Measure.Count);

    /// <summary>Number of flats of a template.</summary>
    public static AllowedRange TemplateFlats { get; } = new(2, 1001, Measure.Count);

    /// <summary>Number of points on one flat of a template.</summary>
    public static AllowedRange TemplatePoints { get; } = new(2, 200, Measure.Count);

    /// <summary>Steps of the stop that one fold may be corrected by.</summary>
    public static AllowedRange CorrectionSteps { get; } = new(1, 100, Measure.Count);

    /// <summary>Number of folds of a form that a program is wanted for.</summary>
    public static AllowedRange ProgramStationCount { get; } = new(1, Forming.Programs.Brakes.GivenPart.MostFolds, Measure.Count);

    /// <summary>Number of corners of a tool's outline.</summary>
    public static AllowedRange OutlineCount { get; } = new(3, 200, Measure.Count);

    /// <summary>Coordinate of a tool's outline.</summary>
    public static AllowedRange OutlineCoordinate { get; } = Length(-1e4, 1e4);

    /// <summary>Size of a part of a brake.</summary>
    public static AllowedRange ToolSize { get; } = Length(0.1, 1e4);

    /// <summary>A length about a brake that may be missing.</summary>
    public static AllowedRange ToolRoom { get; } = Length(0, 1e4);

    /// <summary>How far past its stop a fold may go.</summary>
    public static AllowedRange OverTravel { get; } = new(0, 10, Measure.Angle);

    /// <summary>People who pull one panel: more is no crew, a machine pulls.</summary>
    public static AllowedRange Crew { get; } = new(1, Forming.Jobs.PullBy.MostPeople, Measure.Count);

    /// <summary>Force a press brake or a winch is rated for.</summary>
    public static AllowedRange RatedForce { get; } = new(1, 1e9, Measure.Force);

    /// <summary>Time of an element of work, once or for each of what it counts, in minutes.</summary>
    public static AllowedRange WorkMinutes { get; } = new(0, 1e5, Measure.Number);

    /// <summary>An amount of money, in the caller's currency.</summary>
    public static AllowedRange Money { get; } = new(0, 1e9, Measure.Number);

    /// <summary>Panels of a batch.</summary>
    public static AllowedRange Pieces { get; } = new(1, 100_000, Measure.Count);

    /// <summary>Counts of panels that one estimate prices.</summary>
    public static AllowedRange PieceCounts { get; } = new(1, 20, Measure.Count);

    /// <summary>Share that overhead adds.</summary>
    public static AllowedRange Overhead { get; } = new(0, 5, Measure.Number);

    /// <summary>Share of a sheet that is scrap.</summary>
    public static AllowedRange ScrapShare { get; } = new(0, 0.95, Measure.Number);

    /// <summary>Turn of a hit.</summary>
    public static AllowedRange HitAngle { get; } = new(0.05, 90, Measure.Angle);

    /// <summary>From hit to hit.</summary>
    public static AllowedRange HitPitch { get; } = Length(0.1, 1e4);

    /// <summary>Times a blank is put into the brake.</summary>
    public static AllowedRange Handlings { get; } = new(1, 1000, Measure.Count);

    /// <summary>Changes of the stop, test strips, checks by template, ribs, trial panels.</summary>
    public static AllowedRange WorkCount { get; } = new(0, 1000, Measure.Count);

    /// <summary>Clamps of one pull.</summary>
    public static AllowedRange Clamps { get; } = new(1, 1000, Measure.Count);

    /// <summary>Time after a doubling over the time before: below half the mean could not fall so fast.</summary>
    public static AllowedRange LearningRate { get; } = new(0.5, 1, Measure.Number, AboveMin: true);

    /// <summary>Low bound over the likely value.</summary>
    public static AllowedRange SpreadLow { get; } = new(0, 1, Measure.Number);

    /// <summary>High bound over the likely value.</summary>
    public static AllowedRange SpreadHigh { get; } = new(1, 10, Measure.Number);

    /// <summary>Places that a comparison varies.</summary>
    public static AllowedRange VaryCount { get; } = new(1, 10, Measure.Count);

    /// <summary>Combinations of a comparison.</summary>
    public static AllowedRange Combinations { get; } = new(1, 500, Measure.Count);

    private static AllowedRange Length(double min, double max) => new(min, max, Measure.Length);

    private static AllowedRange Stress(double min, double max) => new(min, max, Measure.Stress);
}
