using Forming.Programs.Brakes;
using Forming.Programs.Motion;

namespace Forming.Programs;

/// <summary>How the part is placed for a fold.</summary>
/// <param name="By">What it is placed by.</param>
/// <param name="DistanceMm">From the sight line or the punch tip to the stop [mm]; where the gauge does not reach, and on a taper, to the
/// edge behind.</param>
/// <param name="IsInRange">Whether the gauge reaches there.</param>
/// <param name="FaceSlope">Slope of the face that meets the stop; below 45° the sheet can ride over or under it.</param>
public sealed record Gauging(GaugedBy By, double DistanceMm, bool IsInRange, Angle FaceSlope)
{
    /// <summary>The two marks that set the line of a taper under the nose or the punch; null where the folds are parallel.</summary>
    public LineMarks? Marks { get; init; }

    /// <summary>Whether it is less sure than a flat edge against the stop, or a line that is set with nothing folded behind.</summary>
    internal bool IsDoubtful => Marks is null ? By != GaugedBy.Flat : IsOverFoldedPart;

    /// <summary>Whether folded part lies behind a line that is set by its marks.</summary>
    internal bool IsOverFoldedPart { get; init; }

    internal static Gauging Of(BrakeTools tools, ProgramBrake brake, PartSide back, int fold, Func<Point[]> placedFine)
    {
        if (!back.IsFolded)
        {
            var flat = back.RunMm + (tools.BothSwing ? tools.Part.Allowance(fold) / 2 : tools.GaugeReferenceMm);
            return Ranged(GaugedBy.Flat, flat, new(Math.PI / 2));
        }

        // Both faces of the part and its cut edge, within the height of the stop's face.
        var placed = placedFine();
        var t = tools.Part.Shape.ThicknessMm;
        double farthest = double.NegativeInfinity, slope = 0;
        for (var i = 0; i + 1 < placed.Length; i++)
        {
            Point along = placed[i + 1] - placed[i], from = Across(i), to = Across(i + 1);
            Meet(placed[i] + from, placed[i + 1] + to, along);
            Meet(placed[i] - from, placed[i + 1] - to, along);
            if (i + 2 == placed.Length)
                Meet(placed[i + 1] + to, placed[i + 1] - to, to);
        }

        return Ranged(GaugedBy.FoldedPart, tools.GaugeReferenceMm + farthest, new(slope));

        // From the mid surface to a face, square to the chords on both sides.
        Point Across(int i)
        {
            var before = placed[i] - placed[Math.Max(0, i - 1)];
            var after = placed[Math.Min(placed.Length - 1, i + 1)] - placed[i];
            var one = (before.Length > 0 ? 1 / before.Length * before : 1 / after.Length * after).Left();
            var other = (after.Length > 0 ? 1 / after.Length * after : 1 / before.Length * before).Left();
            return t / 2 / (0.5 + (0.5 * one.Dot(other))) * (0.5 * (one + other));
        }

        void Meet(Point a, Point b, Point along)
        {
            const double Slack = 1e-9;
            if (Clipped(a, b, -t - Slack, brake.StopHeightMm + Slack) is not { } far || !(far > farthest - Slack))
                return;

            // At a corner the steeper of its two faces bears.
            var own = Math.Atan2(Math.Abs(along.Y), Math.Abs(along.X));
            slope = far > farthest + Slack ? own : Math.Max(own, slope);
            farthest = Math.Max(far, farthest);
        }

        Gauging Ranged(GaugedBy by, double distance, Angle face)
        {
            var reaches = distance >= brake.GaugeMinMm && distance <= brake.GaugeMaxMm;
            return new(reaches ? by : GaugedBy.Mark, distance, reaches, face);
        }
    }

    // How far back a face reaches within a band of heights.
    private static double? Clipped(Point a, Point b, double low, double high)
    {
        var rise = b.Y - a.Y;
        if (Math.Abs(rise) < 1e-12)
            return a.Y >= low && a.Y <= high ? Math.Max(-a.X, -b.X) : null;
        var (first, second) = ((low - a.Y) / rise, (high - a.Y) / rise);
        var from = Math.Max(0, Math.Min(first, second));
        var to = Math.Min(1, Math.Max(first, second));
        return from > to ? null : Math.Max(-a.X - (from * (b.X - a.X)), -a.X - (to * (b.X - a.X)));
    }
}
