namespace Forming.Programs.Brakes;

/// <summary>
/// Punch, holder and ram, die and bed. The origin is the punch tip, which moves with the ram: the lower tools rise to it.
/// </summary>
internal sealed class PressTools : BrakeTools
{
    private const double PunchHalfAngle = Math.PI / 6, PunchHalfWidth = 8, PunchHeight = 110;

    /// <summary>The die's shoulder must still bear on flat sheet by so much [mm]: assumption.</summary>
    private const double Bearing = 0.5;

    private const double TradeRunOfOpening = 0.7;

    private readonly PressBrake _brake;
    private readonly double _opening;

    private PressTools(PressBrake brake, ProgramPart part)
        : base(part)
    {
        _brake = brake;
        _opening = brake.DieOpeningFor(part.Shape.ThicknessMm);
        Point[] punch = brake.Punch is { } own ? [.. own] : DefaultPunch(part.Shape.RadiusMm);
        var top = punch.Max(corner => corner.Y);
        var above = top + brake.Holder.HeightMm;
        Upper =
        [
            new(JawKind.Punch, punch),
            Block(JawKind.Holder, -brake.Holder.WidthMm / 2, brake.Holder.WidthMm / 2, top, above),
            Block(JawKind.Ram, -brake.Ram.WidthMm / 2, brake.Ram.WidthMm / 2, above, above + brake.Ram.HeightMm),
        ];
    }

    public override IReadOnlyList<Jaw> Upper { get; }

    public override bool BothSwing => true;

    public override double GaugeReferenceMm => 0;

    public override double LowerRateMm => _opening;

    public override double? TradeRunMm => Math.Max(TradeRunOfOpening * _opening, (2 * Part.Shape.ThicknessMm) + Part.Shape.RadiusMm);

    public static PressTools Of(PressBrake brake, ProgramPart part) => new(brake, part);

    public override IEnumerable<Jaw> Lower(int fold, double turn)
    {
        var top = DepthMm(fold, turn)!.Value - Part.Shape.ThicknessMm;
        var width = Math.Max(_brake.Die.WidthMm, _opening);
        yield return Block(JawKind.Die, -width / 2, width / 2, top - _brake.Die.HeightMm, top);
        var below = top - _brake.Die.HeightMm;
        yield return Block(JawKind.Bed, -_brake.Bed.WidthMm / 2, _brake.Bed.WidthMm / 2, below - _brake.Bed.HeightMm, below);
    }

    // The fold lies in the groove, whose flanks are steeper than the sheet: only the two shoulders can hold it back.
    public override IReadOnlyList<Jaw> Beneath(int fold, double turn)
    {
        var half = _opening / 2;
        return
        [
            .. Lower(fold, turn).SelectMany(jaw => jaw.Kind == JawKind.Die
                ? (Jaw[])[
                    Block(JawKind.Die, jaw.Bounds.Left, -half, jaw.Bounds.Low, jaw.Bounds.High),
                    Block(JawKind.Die, half, jaw.Bounds.Right, jaw.Bounds.Low, jaw.Bounds.High)]
                : [jaw]),
        ];
    }

    // The shoulder must bear on the flat beside the fold, on both sides.
    public override (double Front, double Back) ShortestRuns(int fold)
    {
        var stop = Part.StopAngles[fold];
        var half = stop / 2;
        var outside = MidRadius(fold, stop) + (Part.Shape.ThicknessMm / 2);
        var least = (((_opening / 2) - (outside * Math.Sin(half))) / Math.Cos(half)) + Bearing;
        return (least, least);
    }

    // Sharp shoulders at half the opening to either side, the outside of the sheet on them.
    public override double? DepthMm(int fold, double turn)
    {
        if (turn < 1e-9)
            return 0;
        var half = turn / 2;
        var t = Part.Shape.ThicknessMm;
        var mid = MidRadius(fold, turn);
        var tip = ((mid + (t / 2) - (_opening / 2 * Math.Sin(half))) / Math.Cos(half)) - t - (mid - (t / 2));
        return -tip;
    }

    private static Point[] DefaultPunch(double r)
    {
        Point[] tip = [.. Arc(new(0, r), r, -Math.PI + PunchHalfAngle, -PunchHalfAngle)];
        var half = Math.Max(PunchHalfWidth, tip[^1].X);
        var shoulder = tip[^1].Y + ((half - tip[^1].X) / Math.Tan(PunchHalfAngle));
        var height = Math.Max(PunchHeight, shoulder);
        return [.. tip, new(half, shoulder), new(half, height), new(-half, height), new(-half, shoulder)];
    }
}
