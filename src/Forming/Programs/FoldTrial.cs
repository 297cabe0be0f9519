using Forming.Checks;
using Forming.Programs.Brakes;
using Forming.Programs.Motion;

namespace Forming.Programs;

/// <summary>One fold tried with some others made already: runs, clearances, gauge.</summary>
internal sealed class FoldTrial
{
    /// <summary>What it takes to lay out a stretch, in distances to a jaw's edge.</summary>
    private const int BuiltAs = 16;

    /// <summary>A difference that a person can read off a tape [mm].</summary>
    private const double Readable = 0.01;

    private readonly BrakeTools _tools;
    private readonly ProgramBrake _brake;
    private readonly PartSide _back;
    private readonly PartSide _front;
    private readonly Effort _effort;
    private readonly Swing _swing;
    private readonly CheckId? _failure;
    private readonly Clearance _contact;
    private Clearance? _upper;
    private Clearance? _lower;
    private Clearance? _self;
    private Gauging? _gauge;
    private FreePart? _before;
    private FreePart? _after;
    private double? _liftBefore;
    private double? _liftAfter;

    public FoldTrial(BrakeTools tools, ProgramBrake brake, Effort effort, FoldSet made, int fold, PartEdge edgeInFront)
    {
        (_tools, _brake, _effort, Made, Fold, EdgeInFront) = (tools, brake, effort, made, fold, edgeInFront);
        _front = PartSide.Of(tools.Part, made, fold, edgeInFront);
        _back = PartSide.Of(tools.Part, made, fold, EdgeBehind);
        effort.Spend(BuiltAs * (_front.Points.Length + _back.Points.Length));
        _swing = new(tools, brake, effort, fold, _back, _front);
        (ShortestFrontMm, ShortestBackMm) = tools.ShortestRuns(fold);
        (_failure, _contact) = Failure();
    }

    public FoldSet Made { get; }

    public int Fold { get; }

    public PartEdge EdgeInFront { get; }

    public PartEdge EdgeBehind => EdgeInFront == PartEdge.End ? PartEdge.Start : PartEdge.End;

    public double FrontRunMm => _front.RunMm;

    public double BackRunMm => _back.RunMm;

    /// <summary>Whether the run in front is shorter at the fold's far end, or else at its near one; null where it is even.</summary>
    public bool? IsFrontShorterFar => ShorterFar(_front);

    /// <summary>The same of the run behind.</summary>
    public bool? IsBackShorterFar => ShorterFar(_back);

    public double ShortestFrontMm { get; }

    public double ShortestBackMm { get; }

    /// <summary>Whether a punch makes the fold.</summary>
    public bool IsPressed => _tools.BothSwing;

    /// <summary>Whether both runs are long enough.</summary>
    public bool Runs => FrontRunMm >= ShortestFrontMm && BackRunMm >= ShortestBackMm;

    /// <summary>The check that the fold fails, or null.</summary>
    public CheckId? FailedCheck => _failure;

    /// <summary>Whether the fold can be made at all.</summary>
    public bool IsClear => _failure is null;

    public Clearance Upper => _upper ??= _failure == CheckIds.ClearanceUpper ? _contact : _swing.FromUpper(Plenty);

    public Clearance Lower => _lower ??= _failure == CheckIds.ClearanceLower ? _contact : _swing.FromLower(Plenty);

    public Clearance Self => _self ??= _failure == CheckIds.ClearanceSelf ? _contact : _swing.FromItself(Plenty);

    /// <summary>The least of the three; a jaw that is struck is named before the part that strikes itself.</summary>
    public Clearance Least => !Runs ? default
        : _failure is not null ? _contact
        : Upper.Mm <= Math.Min(Lower.Mm, Self.Mm) ? Upper : Lower.Mm <= Self.Mm ? Lower : Self;

    /// <summary>Whether it clears by less than is asked for.</summary>
    public bool IsTight => Least.Mm < _brake.ClearanceMm;

    public Gauging Gauge => _gauge ??= _tools.Part.Flat is { } flat ? ByLine(flat) : Gauging.Of(_tools, _brake, _back, Fold, () =>
    {
        // Measured to a tape's reading, not held against a jaw: finer chords.
        var (fineFront, fineBack) = (
            PartSide.Of(_tools.Part, Made, Fold, EdgeInFront, PartSide.Fine),
            PartSide.Of(_tools.Part, Made, Fold, EdgeBehind, PartSide.Fine));
        _effort.Spend(BuiltAs * (fineFront.Points.Length + fineBack.Points.Length));
        var pose = new PartPose(fineBack, fineFront);
        pose.Set(_tools, Fold, 0);
        return pose.Back;
    });

    /// <summary>The part before the fold.</summary>
    public FreePart Before => _before ??= Free(0);

    /// <summary>The part after the fold.</summary>
    public FreePart After => _after ??= Free(_tools.Part.FoldAngles[Fold]);

    /// <summary>How far the upper jaw can rise from the part before the fold [mm].</summary>
    public double LiftBefore => _liftBefore ??= Extraction.Lift(_tools, _brake, _effort, Placed(0), _back, _front);

    /// <summary>How far the upper jaw can rise from the part after the fold [mm].</summary>
    public double LiftAfter => _liftAfter ??= Extraction.Lift(_tools, _brake, _effort, Placed(_tools.Part.FoldAngles[Fold]), _back, _front);

    /// <summary>The moves that take the part out after the fold, or null where no simple way was found.</summary>
    public IReadOnlyList<RigidMove>? WayOut =>
        WayFrom(After, _tools.Part.FoldAngles[Fold], LiftAfter);

    /// <summary>
    /// The moves that take the part out before the fold, which reversed put it in, or null where no simple way was found.
    /// </summary>
    public IReadOnlyList<RigidMove>? WayIn => WayFrom(Before, 0, LiftBefore);

    /// <summary>Where both sides lie at an angle of the fold.</summary>
    /// <param name="turn">The angle [rad].</param>
    public PartPose Placed(double turn)
    {
        var pose = new PartPose(_back, _front);
        pose.Set(_tools, Fold, turn);
        return pose;
    }

    /// <summary>Where along the fold the part comes nearest; null where nothing is near, and where the folds are parallel.</summary>
    public FoldPlace? LeastPlace => _tools.Part.Flat is not null && Least is { Nearest: not null } least ? _swing.PlaceOf(least) : null;

    private static bool? ShorterFar(PartSide side) => side.LongestRunMm - side.RunMm > Readable ? side.IsShorterFar : null;

    // No gauge sets a line that is not parallel to the edge: its two marks do.
    private Gauging ByLine(TaperFlat flat) => new(
        GaugedBy.Mark,
        flat.ToEdgeMm(Fold, EdgeBehind, _tools.BothSwing ? null : EdgeBehind, _tools.GaugeReferenceMm),
        false,
        new(Math.PI / 2))
    {
        IsOverFoldedPart = _back.IsFolded,
        Marks = flat.MarksOf(Fold, _tools.BothSwing ? null : EdgeBehind, _tools.GaugeReferenceMm),
    };

    // Clearance asked for has to be one that is distinguished from more.
    private double Plenty => Math.Max(_brake.PlentyMm, _brake.ClearanceMm);

    private (CheckId? Check, Clearance Contact) Failure()
    {
        if (FrontRunMm < ShortestFrontMm)
            return (CheckIds.FrontRun, default);
        if (BackRunMm < ShortestBackMm)
            return (_tools.BothSwing ? CheckIds.BackRun : CheckIds.ClampLand, default);
        var met = _swing.FromUpper(Swing.Any);
        if (met.Mm <= 0)
            return (CheckIds.ClearanceUpper, met);
        met = _swing.FromLower(Swing.Any);
        if (met.Mm <= 0)
            return (CheckIds.ClearanceLower, met);
        met = _swing.FromItself(Swing.Any);
        return met.Mm <= 0 ? (CheckIds.ClearanceSelf, met) : (null, default);
    }

    private IReadOnlyList<RigidMove>? WayFrom(FreePart part, double turn, double lift) =>
        Extraction.WayOut(_tools, _effort, part, _tools.Beneath(Fold, turn), _tools.DepthMm(Fold, turn) ?? 0, lift);

    private FreePart Free(double turn) =>
        FreePart.Of(Placed(turn), PartPose.FoldAt(_tools, Fold, turn), _back, _front, EdgeInFront == PartEdge.Start);
}
