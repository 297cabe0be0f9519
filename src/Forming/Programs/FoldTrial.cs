using Forming.Checks;
using Forming.Programs.Brakes;
using Forming.Programs.Motion;

namespace Forming.Programs;

/// <summary>One fold tried with some others made already: runs, clearances, gauge.</summary>
internal sealed class FoldTrial
{
    /// <summary>What it takes to lay out a stretch, in distances to a jaw's edge.</summary>
    private const int BuiltAs = 16;

    private readonly BrakeTools tools;
    private readonly ProgramBrake brake;
    private readonly PartSide back;
    private readonly PartSide front;
    private readonly Effort effort;
    private readonly Swing swing;
    private readonly CheckId? failure;
    private readonly Clearance contact;
    private Clearance? upper;
    private Clearance? lower;
    private Clearance? self;
    private Gauging? gauge;
    private FreePart? before;
    private FreePart? after;
    private double? liftBefore;
    private double? liftAfter;

    public FoldTrial(BrakeTools tools, ProgramBrake brake, Effort effort, FoldSet made, int fold, PartEdge edgeInFront)
    {
        (this.tools, this.brake, this.effort, Made, Fold, EdgeInFront) = (tools, brake, effort, made, fold, edgeInFront);
        front = PartSide.Of(tools.Part, made, fold, edgeInFront);
        back = PartSide.Of(tools.Part, made, fold, EdgeBehind);
        effort.Spend(BuiltAs * (front.Points.Length + back.Points.Length));
        swing = new(tools, brake, effort, fold, back, front);
        (ShortestFrontMm, ShortestBackMm) = tools.ShortestRuns(fold);
        (failure, contact) = Failure();
    }

    public FoldSet Made { get; }

    public int Fold { get; }

    public PartEdge EdgeInFront { get; }

    public PartEdge EdgeBehind => EdgeInFront == PartEdge.End ? PartEdge.Start : PartEdge.End;

    public double FrontRunMm => front.RunMm;

    public double BackRunMm => back.RunMm;

    public double ShortestFrontMm { get; }

    public double ShortestBackMm { get; }

    /// <summary>Whether both runs are long enough.</summary>
    public bool Runs => FrontRunMm >= ShortestFrontMm && BackRunMm >= ShortestBackMm;

    /// <summary>The check that the fold fails, or null.</summary>
    public CheckId? FailedCheck => failure;

    /// <summary>Whether the fold can be made at all.</summary>
    public bool IsClear => failure is null;

    public Clearance Upper => upper ??= failure == CheckIds.ClearanceUpper ? contact : swing.FromUpper(Plenty);

    public Clearance Lower => lower ??= failure == CheckIds.ClearanceLower ? contact : swing.FromLower(Plenty);

    public Clearance Self => self ??= failure == CheckIds.ClearanceSelf ? contact : swing.FromItself(Plenty);

    /// <summary>The least of the three; a jaw that is struck is named before the part that strikes itself.</summary>
    public Clearance Least => !Runs ? default
        : failure is not null ? contact
        : Upper.Mm <= Math.Min(Lower.Mm, Self.Mm) ? Upper : Lower.Mm <= Self.Mm ? Lower : Self;

    /// <summary>Whether it clears by less than is asked for.</summary>
    public bool IsTight => Least.Mm < brake.ClearanceMm;

    public Gauging Gauge => gauge ??= Gauging.Of(tools, brake, back, Fold, () =>
    {
        // Measured to a tape's reading, not held against a jaw: finer chords.
        var (fineFront, fineBack) = (
            PartSide.Of(tools.Part, Made, Fold, EdgeInFront, PartSide.Fine), PartSide.Of(tools.Part, Made, Fold, EdgeBehind, PartSide.Fine));
        effort.Spend(BuiltAs * (fineFront.Points.Length + fineBack.Points.Length));
        var pose = new PartPose(fineBack, fineFront);
        pose.Set(tools, Fold, 0);
        return pose.Back;
    });

    /// <summary>The part before the fold.</summary>
    public FreePart Before => before ??= Free(0);

    /// <summary>The part after the fold.</summary>
    public FreePart After => after ??= Free(tools.Part.FoldAngles[Fold]);

    /// <summary>How far the upper jaw can rise from the part before the fold [mm].</summary>
    public double LiftBefore => liftBefore ??= Paths.Lift(tools, brake, effort, Placed(0), back, front);

    /// <summary>How far the upper jaw can rise from the part after the fold [mm].</summary>
    public double LiftAfter => liftAfter ??= Paths.Lift(tools, brake, effort, Placed(tools.Part.FoldAngles[Fold]), back, front);

    /// <summary>The moves that take the part out after the fold, or null where no simple way was found.</summary>
    public IReadOnlyList<RigidMove>? WayOut =>
        WayFrom(After, tools.Part.FoldAngles[Fold], LiftAfter);

    /// <summary>The moves that take the part out before the fold, which reversed put it in, or null where no simple way was found.</summary>
    public IReadOnlyList<RigidMove>? WayIn => WayFrom(Before, 0, LiftBefore);

    /// <summary>Where both sides lie at an angle of the fold.</summary>
    /// <param name="turn">The angle [rad].</param>
    public PartPose Placed(double turn)
    {
        var pose = new PartPose(back, front);
        pose.Set(tools, Fold, turn);
        return pose;
    }

    // Clearance asked for has to be one that is told apart from more.
    private double Plenty => Math.Max(brake.PlentyMm, brake.ClearanceMm);

    private (CheckId? Check, Clearance Contact) Failure()
    {
        if (FrontRunMm < ShortestFrontMm)
            return (CheckIds.FrontRun, default);
        if (BackRunMm < ShortestBackMm)
            return (tools.BothSwing ? CheckIds.BackRun : CheckIds.ClampLand, default);
        var met = swing.FromUpper(Swing.Any);
        if (met.Mm <= 0)
            return (CheckIds.ClearanceUpper, met);
        met = swing.FromLower(Swing.Any);
        if (met.Mm <= 0)
            return (CheckIds.ClearanceLower, met);
        met = swing.FromItself(Swing.Any);
        return met.Mm <= 0 ? (CheckIds.ClearanceSelf, met) : (null, default);
    }

    private IReadOnlyList<RigidMove>? WayFrom(FreePart part, double turn, double lift) =>
        Paths.WayOut(tools, effort, part, tools.Beneath(Fold, turn), tools.DepthMm(Fold, turn) ?? 0, lift);

    private FreePart Free(double turn) => FreePart.Of(Placed(turn), PartPose.FoldAt(tools, Fold, turn), back, front, EdgeInFront == PartEdge.Start);
}
