using Forming.Curves.Points;

namespace FormApi.Http;

/// <summary>The ranges of every number in a request: generous, physical, there to keep slips and overflow out.</summary>
internal static class Ranges
{
    // No protractor reads less; angles without a floor lose their digits before they reach 0.
    private const double LeastAngle = 0.001;

    /// <summary>Thickness of a sheet.</summary>
    public static Range Thickness { get; } = Length(0.05, 25);

    /// <summary>Width along the folds.</summary>
    public static Range Width { get; } = Length(1, 1e5);

    /// <summary>A flat that may be missing.</summary>
    public static Range Flat { get; } = Length(0, 1e5);

    /// <summary>A flat between bends.</summary>
    public static Range FlatSegment { get; } = Length(0.01, 1e5);

    /// <summary>Radius of a curve.</summary>
    public static Range CurveRadius { get; } = Length(0.5, 1e5);

    /// <summary>Sweep of a bend that stands alone.</summary>
    public static Range Sweep { get; } = new(LeastAngle, 360, Measure.Angle);

    /// <summary>Sweep of a bend in a chain; a reversal is refused with its place.</summary>
    public static Range SegmentSweep { get; } = new(-400, 400, Measure.Angle);

    /// <summary>Direction of an ellipse's normal.</summary>
    public static Range Normal { get; } = new(-720, 720, Measure.Angle);

    /// <summary>Coordinate of a measured point.</summary>
    public static Range Coordinate { get; } = Length(-1e6, 1e6);

    /// <summary>Number of measured points.</summary>
    public static Range PointCount { get; } = new(PointsFit.FewestPoints, PointsFit.MostPoints, Measure.Count);

    /// <summary>Number of pieces in a chain.</summary>
    public static Range SegmentCount { get; } = new(1, 100, Measure.Count);

    /// <summary>Distance between the end planes of a taper.</summary>
    public static Range TaperLength { get; } = Length(1, 1e5);

    /// <summary>Start of a taper's far curve.</summary>
    public static Range TaperOffset { get; } = Length(-1e5, 1e5);

    /// <summary>How far a fitted curve may miss a point.</summary>
    public static Range FitTolerance { get; } = Length(0.001, 100);

    /// <summary>Inside radius of a fold.</summary>
    public static Range FoldRadius { get; } = Length(0.01, 1e4);

    /// <summary>Number of folds.</summary>
    public static Range Folds { get; } = new(1, 1000, Measure.Count);

    /// <summary>Angle of one fold.</summary>
    public static Range FoldAngle { get; } = new(0.05, 90, Measure.Angle);

    /// <summary>Spacing or facet.</summary>
    public static Range Facet { get; } = Length(0.1, 1e4);

    /// <summary>Number of folds of a standing form: two make a facet.</summary>
    public static Range StationCount { get; } = new(2, 1000, Measure.Count);

    /// <summary>Angle of a fold that stands.</summary>
    public static Range StandingAngle { get; } = new(LeastAngle, 150, Measure.Angle);

    /// <summary>Facet of a standing form, or its lead-out.</summary>
    public static Range StandingFacet { get; } = Length(0.1, 1e5);

    /// <summary>Neutral factor K.</summary>
    public static Range NeutralFactor { get; } = new(0, 1, Measure.Number);

    /// <summary>Finished curvature over formed curvature.</summary>
    public static Range SpringbackFactor { get; } = new(0.02, 1, Measure.Number);

    /// <summary>Offset of the stop's line.</summary>
    public static Range StopOffset { get; } = new(-45, 45, Measure.Angle);

    /// <summary>Slope of the stop's line.</summary>
    public static Range StopSlope { get; } = new(0.1, 10, Measure.Number);

    /// <summary>Step of an angle stop.</summary>
    public static Range StopResolution { get; } = new(0.001, 10, Measure.Angle);

    /// <summary>Longest fold of a brake.</summary>
    public static Range BrakeLength { get; } = Length(1, 1e5);

    /// <summary>From the nose to where the leaf bears; the length of the whole leaf is a slip.</summary>
    public static Range Reach { get; } =
        new(0.1, 250, Measure.Length, TooLarge: "The reach is from the nose to where the leaf bears on the sheet, not the length of the leaf.");

    /// <summary>Opening of a die.</summary>
    public static Range DieOpening { get; } = Length(0.1, 500);

    /// <summary>Thickness a brake is rated for.</summary>
    public static Range RatedThickness { get; } = Length(0.05, 100);

    /// <summary>Hand to the end of the curve.</summary>
    public static Range Lever { get; } = Length(0, 1e5);

    /// <summary>Clamp to the first fold.</summary>
    public static Range ClampGap { get; } = Length(0.1, 1e4);

    /// <summary>Height of a clamp.</summary>
    public static Range ClampHeight { get; } = Length(0, 1e4);

    /// <summary>Ripple that may show.</summary>
    public static Range Ripple { get; } = Length(0.0001, 100);

    /// <summary>Slope that may show.</summary>
    public static Range Slope { get; } = new(0.001, 45, Measure.Angle);

    /// <summary>Side of a stock sheet.</summary>
    public static Range StockSide { get; } = Length(1, 1e5);

    /// <summary>Number of stock sheets.</summary>
    public static Range StockCount { get; } = new(1, 20, Measure.Count);

    /// <summary>Smallest step of a tape in mm, in its own unit.</summary>
    public static Range MmResolution { get; } = new(0.001, 100, Measure.Number);

    /// <summary>Smallest step of a tape in inches, in its own unit.</summary>
    public static Range InchResolution { get; } = new(0.0001, 4, Measure.Number);

    /// <summary>Young's modulus.</summary>
    public static Range YoungsModulus { get; } = Stress(1000, 1e6);

    /// <summary>Poisson's ratio.</summary>
    public static Range PoissonRatio { get; } = new(0, 0.49, Measure.Number);

    /// <summary>A strength.</summary>
    public static Range Strength { get; } = Stress(1, 5000);

    /// <summary>Strength coefficient of a flow curve.</summary>
    public static Range StrengthCoefficient { get; } = Stress(1, 10000);

    /// <summary>Strain-hardening exponent.</summary>
    public static Range StrainHardening { get; } = new(0, 1, Measure.Number);

    /// <summary>Total elongation; a fraction is a slip that would make half-hard sheet of anything.</summary>
    public static Range Elongation { get; } = new(1, 100, Measure.Percent, TooSmall: "The elongation is in percent: 8, not 0.08.");

    /// <summary>Density.</summary>
    public static Range Density { get; } = new(500, 25000, Measure.Density);

    /// <summary>Smallest bend radius over thickness.</summary>
    public static Range MinRadius { get; } = new(0, 50, Measure.Number);

    /// <summary>Number of test strips.</summary>
    public static Range StripCount { get; } = new(1, 100, Measure.Count);

    /// <summary>Number of figures wanted of test strips.</summary>
    public static Range TargetCount { get; } = new(1, 50, Measure.Count);

    /// <summary>Angle of a test strip, set or measured.</summary>
    public static Range StripAngle { get; } = new(LeastAngle, 180, Measure.Angle);

    /// <summary>Fold angle of a strip whose legs reach to the mold line, which runs off towards a half turn.</summary>
    public static Range NeutralStripAngle { get; } = new(1, 170, Measure.Angle);

    /// <summary>Error of a measured angle.</summary>
    public static Range AngleError { get; } = new(0.001, 10, Measure.Angle);

    /// <summary>Error of a measured length.</summary>
    public static Range LengthError { get; } = Length(0.001, 10);

    /// <summary>Error of a measured radius.</summary>
    public static Range RadiusErrorPercent { get; } = new(0.01, 50, Measure.Percent);

    /// <summary>Error of an assumed slope.</summary>
    public static Range SlopeError { get; } = new(0, 10, Measure.Number);

    /// <summary>Touching fold to the hand, on a test strip.</summary>
    public static Range StripLever { get; } = Length(1, 1e5);

    /// <summary>Systematic error of a fold.</summary>
    public static Range AngleBias { get; } = new(-10, 10, Measure.Angle);

    /// <summary>Standard deviation of a fold.</summary>
    public static Range AngleScatter { get; } = new(0, 10, Measure.Angle);

    /// <summary>Standard deviation of a mark.</summary>
    public static Range MarkScatter { get; } = Length(0, 10);

    /// <summary>Tolerance of a closing angle.</summary>
    public static Range ClosingTolerance { get; } = new(LeastAngle, 90, Measure.Angle);

    /// <summary>Tolerance of a place.</summary>
    public static Range PlaceTolerance { get; } = Length(0.001, 1e4);

    /// <summary>Standard deviations that have to fit into a tolerance.</summary>
    public static Range Coverage { get; } = new(0.5, 6, Measure.Number);

    /// <summary>A measured fold; 0 was not made.</summary>
    public static Range MeasuredAngle { get; } = new(0, 150, Measure.Angle);

    /// <summary>Number of measured folds.</summary>
    public static Range MeasuredCount { get; } = new(1, 1000, Measure.Count);

    /// <summary>Number of measured facets.</summary>
    public static Range MeasuredFacets { get; } = new(0, 999, Measure.Count);

    /// <summary>Number of flats of a template.</summary>
    public static Range TemplateFlats { get; } = new(2, 1001, Measure.Count);

    /// <summary>Number of points on one flat of a template.</summary>
    public static Range TemplatePoints { get; } = new(2, 200, Measure.Count);

    /// <summary>Steps of the stop that one fold may be corrected by.</summary>
    public static Range CorrectionSteps { get; } = new(1, 100, Measure.Count);

    /// <summary>Number of folds of a form that a program is wanted for.</summary>
    public static Range ProgramStationCount { get; } = new(1, Forming.Programs.GivenPart.MostFolds, Measure.Count);

    /// <summary>Number of corners of a tool's outline.</summary>
    public static Range OutlineCount { get; } = new(3, 200, Measure.Count);

    /// <summary>Coordinate of a tool's outline.</summary>
    public static Range OutlineCoordinate { get; } = Length(-1e4, 1e4);

    /// <summary>Size of a part of a brake.</summary>
    public static Range ToolSize { get; } = Length(0.1, 1e4);

    /// <summary>A length about a brake that may be missing.</summary>
    public static Range ToolRoom { get; } = Length(0, 1e4);

    /// <summary>How far past its stop a fold may go.</summary>
    public static Range OverTravel { get; } = new(0, 10, Measure.Angle);

    /// <summary>People who pull one panel: more is no crew, a machine pulls.</summary>
    public static Range Crew { get; } = new(1, Forming.Plans.PullBy.MostPeople, Measure.Count);

    /// <summary>Force a press brake or a winch is rated for.</summary>
    public static Range RatedForce { get; } = new(1, 1e9, Measure.Force);

    /// <summary>Time of an element of work, once or for each of what it counts, in minutes.</summary>
    public static Range WorkMinutes { get; } = new(0, 1e5, Measure.Number);

    /// <summary>An amount of money, in the caller's currency.</summary>
    public static Range Money { get; } = new(0, 1e9, Measure.Number);

    /// <summary>Panels of a batch.</summary>
    public static Range Pieces { get; } = new(1, 100_000, Measure.Count);

    /// <summary>Times a blank is put into the brake.</summary>
    public static Range Handlings { get; } = new(1, 1000, Measure.Count);

    /// <summary>Changes of the stop, test strips, checks by template.</summary>
    public static Range WorkCount { get; } = new(0, 1000, Measure.Count);

    /// <summary>Time after a doubling over the time before: below half the mean could not fall so fast.</summary>
    public static Range LearningRate { get; } = new(0.5, 1, Measure.Number, AboveMin: true);

    /// <summary>Low bound over the likely figure.</summary>
    public static Range SpreadLow { get; } = new(0, 1, Measure.Number);

    /// <summary>High bound over the likely figure.</summary>
    public static Range SpreadHigh { get; } = new(1, 10, Measure.Number);

    private static Range Length(double min, double max) => new(min, max, Measure.Length);

    private static Range Stress(double min, double max) => new(min, max, Measure.Stress);
}
