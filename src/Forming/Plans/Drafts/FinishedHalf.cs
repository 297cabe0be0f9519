using Forming.Contact;
using Forming.Curves;
using Forming.Jobs;
using Forming.Springback;

namespace Forming.Plans.Drafts;

/// <summary>
/// The finished half of a mirrored panel as a rigid piece: from the flat between the curves to its own edge, turning left.
/// </summary>
/// <param name="Inside">[n] points of its inside face, in the frame of its first tangent line [mm].</param>
/// <param name="Outside">[n] points of its outside face [mm].</param>
/// <param name="Turns">[n] direction there [rad].</param>
/// <param name="LengthMm">Its length along the mid surface [mm].</param>
/// <param name="Centre">Its centre of mass, taken along the mid surface [mm].</param>
internal sealed record FinishedHalf(
    IReadOnlyList<Point> Inside, IReadOnlyList<Point> Outside, IReadOnlyList<double> Turns, double LengthMm, Point Centre)
{
    /// <summary>What rounding may take from a distance [mm].</summary>
    private const double Rounding = 1e-6;

    public static FinishedHalf Of(FinishedCurve finished, PanelSpec panel)
    {
        var thickness = panel.Sheet.ThicknessMm;
        // A panel that does not spring back would be formed on its own finished curve.
        var curve = ContactCurve.Solve(finished, new(BendingLaw.Of(panel.Sheet), MeasuredFactor: 1), thickness);
        var end = curve.End;
        List<(Point Inside, double Turn)> along = [(Seen(end.Position), 0)];
        foreach (var run in curve.Runs.Reverse())
            along.AddRange(SecondHalf.Stages(run).Reverse().Select(place => (Seen(place.Position), end.Turn - place.Turn)));
        along.Add((Seen(Point.Origin), end.Turn));
        along.Add((Seen(new(-panel.LeadInMm - panel.TrimMm, 0)), end.Turn));

        Point[] outside = [.. along.Select(place => place.Inside - (thickness * Point.Along(place.Turn).Left()))];
        var length = 0.0;
        var moment = Point.Origin;
        for (var i = 1; i < along.Count; i++)
        {
            Point from = Mid(i - 1), to = Mid(i);
            var piece = (to - from).Length;
            length += piece;
            moment += piece / 2 * (from + to);
        }

        return new([.. along.Select(place => place.Inside)], outside, [.. along.Select(place => place.Turn)], length, 1 / length * moment);

        // Looked at from the other end the curve turns left too.
        Point Seen(Point point)
        {
            var heading = Point.Along(end.Turn);
            return new((end.Position - point).Dot(heading), (point - end.Position).Dot(heading.Left()));
        }

        Point Mid(int i) => 0.5 * (along[i].Inside + outside[i]);
    }

    /// <summary>Where a point of it is.</summary>
    /// <param name="point">The point.</param>
    /// <param name="start">Where its first tangent line is.</param>
    /// <param name="heading">Unit vector of its direction there.</param>
    public static Point PlacedAt(Point point, Point start, Point heading) => start + point.TurnedTo(heading);

    /// <summary>Its least distance from what is there.</summary>
    /// <param name="start">Where its first tangent line is.</param>
    /// <param name="turn">Its direction there [rad].</param>
    /// <param name="obstacles">What its inside face must not meet.</param>
    /// <param name="benchMm">Height of the bench [mm], which only the part that heads down reaches.</param>
    /// <param name="leastMm">Least distance elsewhere [mm], below which this one is of interest.</param>
    /// <returns>The smaller of both distances [mm], 0 where they meet.</returns>
    public double Clearance(Point start, double turn, IReadOnlyList<Obstacle> obstacles, double benchMm, double leastMm)
    {
        var heading = Point.Along(turn);
        var from = PlacedAt(Inside[0], start, heading);
        for (var i = 1; i < Inside.Count && leastMm > 0; i++)
        {
            var to = PlacedAt(Inside[i], start, heading);
            var (centre, reach) = (0.5 * (from + to), (to - from).Length / 2);
            foreach (var line in obstacles)
            {
                // Circles round both rule out most of those that are too far away to matter.
                var apart = line.Centre - centre;
                var near = leastMm + reach + line.ReachMm + Rounding;
                if (apart.Dot(apart) < near * near)
                    leastMm = Math.Min(leastMm, Distance(from, to, line.From, line.To));
            }

            if (Math.Sin(turn + Turns[i]) < 0)
                leastMm = Math.Min(leastMm, Math.Max(0, Math.Min(to.Y, PlacedAt(Outside[i], start, heading).Y) - benchMm));
            from = to;
        }

        return leastMm;
    }

    private static double Distance(Point a, Point b, Point c, Point d)
    {
        Point ab = b - a, cd = d - c;
        if (ab.Cross(c - a) * ab.Cross(d - a) < 0 && cd.Cross(a - c) * cd.Cross(b - c) < 0)
            return 0;
        return Math.Min(Math.Min(FromSegment(a, b, c), FromSegment(a, b, d)), Math.Min(FromSegment(c, d, a), FromSegment(c, d, b)));
    }

    private static double FromSegment(Point from, Point to, Point point)
    {
        var along = to - from;
        var square = along.Dot(along);
        var share = square > 0 ? Math.Clamp((point - from).Dot(along) / square, 0, 1) : 0;
        return (point - from - (share * along)).Length;
    }

    /// <summary>A straight line that is in the way.</summary>
    /// <param name="From">One end.</param>
    /// <param name="To">The other.</param>
    internal readonly record struct Obstacle(Point From, Point To)
    {
        public Point Centre { get; } = 0.5 * (From + To);

        public double ReachMm { get; } = (To - From).Length / 2;

        /// <summary>The pieces of a broken line.</summary>
        /// <param name="points">Its corners.</param>
        public static IEnumerable<Obstacle> Along(IReadOnlyList<Point> points) =>
            Enumerable.Range(1, Math.Max(0, points.Count - 1)).Select(i => new Obstacle(points[i - 1], points[i]));
    }
}
