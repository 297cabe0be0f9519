namespace Forming.Programs;

/// <summary>Whether the part can be moved in the opened brake: straight out, rolled out, or from fold to fold.</summary>
/// <remarks>
/// Each path is followed in steps no longer than the clearance allows, so that nothing is jumped over. The paths tried are sufficient,
/// not necessary: a person may find another way. Nothing of this was checked on a brake.
/// </remarks>
internal static class Paths
{
    private const double Contact = 0.25; // [mm]
    private const double LiftRoom = 0.5; // [mm]
    private const double MostRaise = 20; // [mm]
    private const double Far = 40; // [mm] past every jaw
    private const int MostSteps = 2000;
    private static readonly double[] Pulls = [0, 15, 30, 45, 60];

    /// <summary>How far the upper jaw can rise from the part.</summary>
    /// <param name="tools">The tools.</param>
    /// <param name="brake">The brake.</param>
    /// <param name="pose">Where the part lies.</param>
    /// <param name="back">Behind the fold.</param>
    /// <param name="front">In front of it.</param>
    /// <returns>The lift [mm].</returns>
    public static double Lift(BrakeTools tools, ProgramBrake brake, PartPose pose, PartSide back, PartSide front)
    {
        var half = tools.Part.Shape.ThicknessMm / 2;
        double lift = 0;
        for (var i = 0; i < MostSteps && lift < brake.OpeningMm; i++)
        {
            var room = Math.Min(Room(pose.Front, front.RunEnd, lift), Room(pose.Back, back.RunEnd, lift));
            if (room <= LiftRoom + 1e-3)
                break;
            lift += room - LiftRoom;
        }

        return Math.Min(lift, brake.OpeningMm);

        // The runs lie on the nose and are left behind as it rises.
        double Room(Point[] placed, int from, double by)
        {
            var least = double.PositiveInfinity;
            var down = new Point(0, -by);
            foreach (var jaw in tools.Upper)
            {
                for (var k = from; k + 1 < placed.Length; k++)
                    least = Math.Min(least, Distance.To(placed[k] + down, placed[k + 1] + down, jaw, least + half) - half);
            }

            return least;
        }
    }

    /// <summary>Whether the part comes out towards the operator, or goes in the same way.</summary>
    /// <param name="tools">The tools.</param>
    /// <param name="part">The part as it lies.</param>
    /// <param name="lift">How far the upper jaw is up [mm].</param>
    public static bool ComesOut(BrakeTools tools, FreePart part, double lift)
    {
        var jaws = Raised(tools, lift);
        if (Pulls.Any(degrees => PullsClear(tools, jaws, part.Points, degrees)))
            return true;
        var raise = new Point(0, Math.Min(lift / 3, MostRaise));
        Point[] raised = [.. part.Points.Select(point => point + raise)];
        if (!Clears(tools, jaws, part.Points, s => Shift(part.Points, s * raise), raise.Length))
            return false;
        foreach (var sign in new[] { 1, -1 })
        {
            for (var stage = 1; stage <= 18; stage++)
            {
                // Ten degrees at a time; each stage goes on from the one before.
                var (from, to) = (sign * (stage - 1) * Math.PI / 18, sign * stage * Math.PI / 18);
                if (!Clears(tools, jaws, raised, s => Rolled(raised, part.Centre + raise, from + (s * (to - from))), part.ReachMm * Math.Abs(to - from)))
                    break;
                var rolled = Rolled(raised, part.Centre + raise, to);
                if (stage % 2 == 0 && Pulls.Any(degrees => PullsClear(tools, jaws, rolled, degrees)))
                    return true;
            }
        }

        return false;
    }

    /// <summary>Whether the part can be pushed from where it lies to the next fold's place, turning about its folds' centre.</summary>
    /// <param name="tools">The tools.</param>
    /// <param name="from">Where it lies.</param>
    /// <param name="to">Where it shall lie.</param>
    /// <param name="lift">How far the upper jaw is up [mm].</param>
    public static bool Pushes(BrakeTools tools, FreePart from, FreePart to, double lift)
    {
        var turn = Math.IEEERemainder(to.StartHeading - from.StartHeading, 2 * Math.PI);
        var way = to.Start + Turned(from.Centre - from.Start, turn) - from.Centre;
        return Clears(
            tools,
            Raised(tools, lift),
            from.Points,
            s => [.. from.Points.Select(point => from.Centre + (s * way) + Turned(point - from.Centre, s * turn))],
            way.Length + (from.ReachMm * Math.Abs(turn)));
    }

    private static Jaw[] Raised(BrakeTools tools, double lift) => [.. tools.Upper.Select(jaw => jaw.Moved(new(0, lift)))];

    private static bool PullsClear(BrakeTools tools, Jaw[] jaws, Point[] points, double degrees)
    {
        var along = Point.Along(degrees * Math.PI / 180);
        var way = jaws.Max(jaw => jaw.Bounds.Right) - points.Min(point => point.X) + Far;
        if (way <= 0)
            return true;
        var length = way / along.X;
        return Clears(tools, jaws, points, s => Shift(points, s * length * along), length);
    }

    // Conservative advancement: nothing moves further than the length while the share goes from 0 to 1.
    private static bool Clears(BrakeTools tools, Jaw[] jaws, Point[] start, Func<double, Point[]> at, double length)
    {
        var half = tools.Part.Shape.ThicknessMm / 2;
        double share = 0;
        for (var i = 0; i < MostSteps; i++)
        {
            var placed = share == 0 ? start : at(share);
            var room = double.PositiveInfinity;
            foreach (var jaw in jaws)
            {
                for (var k = 0; k + 1 < placed.Length; k++)
                    room = Math.Min(room, Distance.To(placed[k], placed[k + 1], jaw, room + half) - half);
            }

            // It may begin on the nose, where the fold was made; from there it must come free.
            if (room <= Contact && share > 0)
                return false;
            room = Math.Max(room, 2 * Contact);
            if (share >= 1 || length <= 0)
                return true;
            share = Math.Min(1, share + (room / length));
        }

        return false;
    }

    private static Point[] Shift(Point[] points, Point by) => [.. points.Select(point => point + by)];

    private static Point[] Rolled(Point[] points, Point centre, double turn) =>
        [.. points.Select(point => centre + Turned(point - centre, turn))];

    private static Point Turned(Point vector, double turn)
    {
        var along = Point.Along(turn);
        return (vector.X * along) + (vector.Y * along.Left());
    }
}
