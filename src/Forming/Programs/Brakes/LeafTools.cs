namespace Forming.Programs.Brakes;

/// <summary>Beam, bed and leaf. The origin is the bend tangent line under the nose; the sight line lies at x = r.</summary>
internal sealed class LeafTools : BrakeTools
{
    private const double NoseTop = 50, BeamTop = 120, BeamBack = -110, ReliefHeight = 20, ReliefEnd = -70;
    private const double BedDepth = 120, BedHeight = 200, LeafReach = 90, LeafThickness = 40;
    private const double NoseAngle = Math.PI / 4;

    private readonly LeafBrake _brake;
    private readonly Jaw _bed;

    private LeafTools(LeafBrake brake, ProgramPart part)
        : base(part)
    {
        _brake = brake;
        var (r, t) = (part.Shape.RadiusMm, part.Shape.ThicknessMm);
        Upper = [new(JawKind.Beam, brake.Beam is { } own ? [.. own.Select(corner => corner + new Point(r, 0))] : DefaultBeam(r))];
        _bed = Block(JawKind.Bed, -BedDepth, 0, -t - BedHeight, -t);
    }

    public override IReadOnlyList<Jaw> Upper { get; }

    public override bool BothSwing => false;

    public override double GaugeReferenceMm => Part.Shape.RadiusMm;

    public override double LowerRateMm => LeafReach + LeafThickness + Part.Shape.ThicknessMm;

    public override double? TradeRunMm => null;

    public static LeafTools Of(LeafBrake brake, ProgramPart part) => new(brake, part);

    public override IEnumerable<Jaw> Lower(int fold, double turn)
    {
        yield return _bed;
        var (r, t) = (Part.Shape.RadiusMm, Part.Shape.ThicknessMm);
        var along = Point.Along(turn);
        Point[] corners = [new(r, -t), new(LeafReach, -t), new(LeafReach, -t - LeafThickness), new(r, -t - LeafThickness)];
        yield return new(JawKind.Leaf, [.. corners.Select(corner => corner.TurnedTo(along))]);
    }

    // The leaf hangs at rest: it is let down before the part is moved.
    public override IReadOnlyList<Jaw> Beneath(int fold, double turn) => [.. Lower(fold, 0)];

    public override (double Front, double Back) ShortestRuns(int fold) => (_brake.MinRunMm, _brake.MinLandMm);

    public override double? DepthMm(int fold, double turn) => null;

    // The underside to the tangent line, the nose round r, its face leaning back, the beam's top and its relieved back.
    private static Point[] DefaultBeam(double r)
    {
        Point[] nose = [.. Arc(new(0, r), r, -Math.PI / 2, (Math.PI / 2) - NoseAngle)];
        var rise = NoseTop - nose[^1].Y;
        var face = nose[^1] + new Point(-rise / Math.Tan(NoseAngle), rise);
        return rise > 0
            ? [new(ReliefEnd, 0), .. nose, face, new(face.X, BeamTop), new(BeamBack, BeamTop), new(BeamBack, ReliefHeight)]
            : [
                new(ReliefEnd, 0),
                .. nose,
                new(nose[^1].X, Math.Max(BeamTop, nose[^1].Y + NoseTop)),
                new(BeamBack, Math.Max(BeamTop, nose[^1].Y + NoseTop)),
                new(BeamBack, ReliefHeight)];
    }
}
