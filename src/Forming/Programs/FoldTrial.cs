namespace Forming.Programs;

/// <summary>One fold tried with some others made already: runs, clearances, gauge.</summary>
internal sealed class FoldTrial
{
    private readonly BrakeTools tools;
    private readonly ProgramBrake brake;
    private readonly PartSide back;
    private readonly PartSide front;
    private FreePart? before;
    private FreePart? after;
    private double? liftBefore;
    private double? liftAfter;

    public FoldTrial(BrakeTools tools, ProgramBrake brake, FoldSet made, int fold, PartEdge edgeInFront)
    {
        (this.tools, this.brake, Made, Fold, EdgeInFront) = (tools, brake, made, fold, edgeInFront);
        var behind = edgeInFront == PartEdge.End ? PartEdge.Start : PartEdge.End;
        front = PartSide.Of(tools.Part, made, fold, edgeInFront);
        back = PartSide.Of(tools.Part, made, fold, behind);
        (ShortestFrontMm, ShortestBackMm) = tools.ShortestRuns(fold);
        Runs = FrontRunMm >= ShortestFrontMm && BackRunMm >= ShortestBackMm;
        if (!Runs)
            return;
        (Upper, Lower, Self) = new Swing(tools, brake, fold, back, front).Clearances();
        // A jaw that is struck is named before the part that strikes itself.
        Least = Upper.Mm <= Math.Max(0, Math.Min(Lower.Mm, Self.Mm)) ? Upper : Lower.Mm <= Math.Max(0, Self.Mm) ? Lower : Self;
        IsClear = Least.Mm > 0;
    }

    public FoldSet Made { get; }

    public int Fold { get; }

    public PartEdge EdgeInFront { get; }

    public double FrontRunMm => front.RunMm;

    public double BackRunMm => back.RunMm;

    public double ShortestFrontMm { get; }

    public double ShortestBackMm { get; }

    /// <summary>Whether both runs are long enough.</summary>
    public bool Runs { get; }

    public Clearance Upper { get; }

    public Clearance Lower { get; }

    public Clearance Self { get; }

    /// <summary>The least of the three.</summary>
    public Clearance Least { get; }

    /// <summary>Whether the fold can be made at all.</summary>
    public bool IsClear { get; }

    /// <summary>Whether it clears by less than is asked for.</summary>
    public bool IsTight => Least.Mm < brake.ClearanceMm;

    public Gauging Gauge => Gauging.Of(tools, brake, back, Placed(0).Back, Fold);

    /// <summary>The part before the fold.</summary>
    public FreePart Before => before ??= Free(0);

    /// <summary>The part after the fold.</summary>
    public FreePart After => after ??= Free(tools.Part.FoldAngles[Fold]);

    /// <summary>How far the upper jaw can rise from the part before the fold [mm].</summary>
    public double LiftBefore => liftBefore ??= Paths.Lift(tools, brake, Placed(0), back, front);

    /// <summary>How far the upper jaw can rise from the part after the fold [mm].</summary>
    public double LiftAfter => liftAfter ??= Paths.Lift(tools, brake, Placed(tools.Part.FoldAngles[Fold]), back, front);

    /// <summary>Where both sides lie at an angle of the fold.</summary>
    /// <param name="turn">The angle [rad].</param>
    public PartPose Placed(double turn)
    {
        var pose = new PartPose(back, front);
        pose.Set(tools, Fold, turn);
        return pose;
    }

    private FreePart Free(double turn) => FreePart.Of(Placed(turn), back, front, EdgeInFront == PartEdge.Start);
}
