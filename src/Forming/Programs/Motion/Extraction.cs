using Forming.Programs.Brakes;

namespace Forming.Programs.Motion;

/// <summary>A rigid move of the part, its shift and its turn about the part's centre growing together.</summary>
/// <param name="ShiftFrom">Shift at its beginning [mm].</param>
/// <param name="ShiftTo">Shift at its end [mm].</param>
/// <param name="TurnFrom">Turn at its beginning [rad].</param>
/// <param name="TurnTo">Turn at its end [rad].</param>
internal readonly record struct RigidMove(Point ShiftFrom, Point ShiftTo, double TurnFrom, double TurnTo)
{
    /// <summary>The axis in space of the turn; null where it is along the fold.</summary>
    public Point3? Axis { get; init; }
}

/// <summary>Whether the part can be moved in the opened brake: straight out, rolled out, or from fold to fold.</summary>
/// <remarks>
/// Entry and removal are held against all tools, the push against the upper ones only, because the part slides on the bed. Allowed on every
/// path:
/// to start on the nose, where the fold was made, and to slide along the bed, the leaf at rest or the die and off it; what touches a tool
/// below may
/// not go into it. A turning move is followed in steps no longer than the clearance allows, so that nothing is jumped over; of a straight
/// move past the
/// tools below the strip that the part sweeps is held against them. The paths tried are sufficient, not necessary: a person may find
/// another way.
/// Nothing of this was checked on a brake.
/// </remarks>
internal static class Extraction
{
    // Lengths and directions in this group are assumptions of how a person handles sheet in a brake; nobody measured them.
    private const double Contact = 0.25; // [mm]
    private const double LiftRoom = 0.5; // [mm]
    private const double MostRaise = 20; // [mm]
    private const double Far = 40; // [mm] past every jaw
    private const double Sliding = 0.01; // [mm] by which rounding may let a sheet that slides on a tool go into it
    private const int MostSteps = 2000;
    private static readonly double[] Pulls = [0, 15, 30, 45, 60];

    /// <summary>How far the upper jaw can rise from the part.</summary>
    /// <param name="tools">The tools.</param>
    /// <param name="brake">The brake.</param>
    /// <param name="effort">Work counted.</param>
    /// <param name="pose">Where the part lies.</param>
    /// <param name="back">Behind the fold.</param>
    /// <param name="front">In front of it.</param>
    /// <returns>The lift [mm].</returns>
    public static double Lift(BrakeTools tools, ProgramBrake brake, Effort effort, PartPose pose, PartSide back, PartSide front)
    {
        var half = tools.Part.Shape.ThicknessMm / 2;
        double lift = 0;
        for (var i = 0; i < MostSteps && lift < brake.OpeningMm; i++)
        {
            var room = Math.Min(Room(pose.Front, front, lift), Room(pose.Back, back, lift));
            if (room <= LiftRoom + 1e-3)
                break;
            lift += room - LiftRoom;
        }

        return Math.Min(lift, brake.OpeningMm);

        // The runs lie on the nose and are left behind as it rises.
        double Room(Point[] placed, PartSide side, double by)
        {
            effort.Spend((long)placed.Length * tools.UpperEdges);
            var least = double.PositiveInfinity;
            var down = new Point(0, -by);
            foreach (var jaw in tools.Upper)
            {
                foreach (var (from, to, _, _, _) in side.Beyond)
                    least = Math.Min(least, Distance.To(placed[from] + down, placed[to] + down, jaw, least + half) - half);
            }

            return least;
        }
    }

    /// <summary>The moves by which the part comes out towards the operator; reversed, those by which it goes in.</summary>
    /// <param name="tools">The tools.</param>
    /// <param name="effort">Work counted.</param>
    /// <param name="part">The part as it lies.</param>
    /// <param name="beneath">The tools below, at rest.</param>
    /// <param name="nest">How deep the fold lies in the die's groove [mm]; 0 where there is none.</param>
    /// <param name="lift">How far the upper jaw is up [mm].</param>
    /// <returns>The moves in order, or null where no simple way was found.</returns>
    public static IReadOnlyList<RigidMove>? WayOut(
        BrakeTools tools, Effort effort, FreePart part, IReadOnlyList<Jaw> beneath, double nest, double lift)
    {
        var way = new Way(tools, effort, part, beneath, lift);
        if (way.PullOut(Point.Origin, 0) is { } pull)
            return [pull];

        // A fold in the die's groove is held back by its shoulder: lifted out of the groove first, it may come straight.
        if (nest > 0)
        {
            var free = new Point(0, nest + LiftRoom);
            var lifted = new RigidMove(Point.Origin, free, 0, 0);
            if (way.IsClear(lifted) && way.PullOut(free, 0) is { } straight)
                return [lifted, straight];
        }

        var raise = new Point(0, Math.Min(lift / 3, MostRaise));
        var up = new RigidMove(Point.Origin, raise, 0, 0);
        if (!way.IsClear(up))
            return null;
        foreach (var sign in new[] { 1, -1 })
        {
            List<RigidMove> moves = [up];
            for (var stage = 1; stage <= 18; stage++)
            {
                // Ten degrees at a time; each stage goes on from the one before.
                var roll = new RigidMove(raise, raise, sign * (stage - 1) * Math.PI / 18, sign * stage * Math.PI / 18);
                if (!way.IsClear(roll))
                    break;
                moves.Add(roll);
                if (stage % 2 == 0 && way.PullOut(raise, roll.TurnTo) is { } away)
                    return [.. moves, away];
            }
        }

        return null;
    }

    /// <summary>
    /// Whether the part can be pushed from where it lies to the next fold's place, turning about its folds' centre; a taper is swung level
    /// at the same time.
    /// </summary>
    /// <param name="tools">The tools.</param>
    /// <param name="effort">Work counted.</param>
    /// <param name="from">Where it lies.</param>
    /// <param name="to">Where it shall lie.</param>
    /// <param name="lift">How far the upper jaw is up [mm].</param>
    public static bool Pushes(BrakeTools tools, Effort effort, FreePart from, FreePart to, double lift) =>
        new Way(tools, effort, from, [], lift).IsClear(from.MoveTo(to));

    /// <summary>The part between jaws that are up and the tools below.</summary>
    private sealed class Way(BrakeTools tools, Effort effort, FreePart part, IReadOnlyList<Jaw> beneath, double lift)
    {
        private readonly Jaw[] _above = [.. tools.Upper.Select(jaw => jaw.Moved(new(0, lift)))];
        private readonly int _lowerEdges = BrakeTools.EdgesOf(beneath);
        private readonly Point[] _placed = new Point[part.Points.Length];
        private readonly double _half = tools.Part.Shape.ThicknessMm / 2;
        private readonly long _work = part.Stretches.Length + 1;

        /// <summary>The straight pull by which the part comes out from where a shift and a turn have brought it, or null.</summary>
        public RigidMove? PullOut(Point shift, double turn)
        {
            Place(shift, turn, null);
            var away = _above.Concat(beneath).Max(jaw => jaw.Bounds.Right) - _placed.Min(point => point.X) + Far;
            if (away <= 0)
                return new(shift, shift, turn, turn);
            foreach (var degrees in Pulls)
            {
                var along = Point.Along(degrees * Math.PI / 180);
                var pull = new RigidMove(shift, shift + (away / along.X * along), turn, turn);
                if (IsClear(pull))
                    return pull;
            }

            return null;
        }

        /// <summary>Whether a move touches no jaw above and goes into none below.</summary>
        public bool IsClear(RigidMove move)
        {
            var isStraight = move.TurnFrom == move.TurnTo;
            return isStraight
                ? SlidesClear(move) && Advances(move, _above, tools.UpperEdges)
                : Advances(move, [.. _above, .. beneath], tools.UpperEdges + _lowerEdges);
        }

        /// <summary>Conservative advancement: no point goes farther than the way while the share goes from 0 to 1.</summary>
        private bool Advances(RigidMove move, Jaw[] jaws, int edges)
        {
            var by = move.ShiftTo - move.ShiftFrom;
            var reach = move.Axis is null ? part.ReachMm : part.ReachInSpaceMm;
            var length = by.Length + (reach * Math.Abs(move.TurnTo - move.TurnFrom));
            double share = 0;
            for (var i = 0; i < MostSteps; i++)
            {
                Place(move.ShiftFrom + (share * by), move.TurnFrom + (share * (move.TurnTo - move.TurnFrom)), move.Axis);

                // It may begin on the nose, where the fold was made; from there it must come free.
                var least = share > 0 ? Contact : double.NegativeInfinity;
                effort.Spend(_work * edges);
                var room = Room(jaws, least);
                if (room <= least)
                    return false;
                if (share >= 1 || length <= 0)
                    return true;
                share = Math.Min(1, share + (Math.Max(room, 2 * Contact) / length));
            }

            return false;
        }

        /// <summary>
        /// Whether the strip that the part sweeps on a straight move goes into no tool below; it may lie and slide on them.
        /// </summary>
        private bool SlidesClear(RigidMove move)
        {
            if (beneath.Count == 0)
                return true;
            Place(move.ShiftFrom, move.TurnFrom, null);
            var by = move.ShiftTo - move.ShiftFrom;
            var least = _half - Sliding;
            effort.Spend(3 * _work * _lowerEdges);
            foreach (var jaw in beneath)
            {
                foreach (var (from, to) in part.Stretches)
                {
                    if (Distance.ToSwept(_placed[from], _placed[to], by, jaw, least) < least)
                        return false;
                }
            }

            return true;
        }

        private double Room(Jaw[] jaws, double least)
        {
            var room = double.PositiveInfinity;
            foreach (var jaw in jaws)
            {
                foreach (var (from, to) in part.Stretches)
                {
                    room = Math.Min(room, Distance.To(_placed[from], _placed[to], jaw, room + _half) - _half);
                    if (room <= least)
                        return room;
                }
            }

            return room;
        }

        private void Place(Point shift, double turn, Point3? axis)
        {
            if (axis is { } about && part.Along is { } places)
            {
                Place(shift, turn, about, places);
                return;
            }

            var along = Point.Along(turn);
            var centre = part.Centre;
            var (x, y) = (centre.X + shift.X, centre.Y + shift.Y);
            for (var i = 0; i < _placed.Length; i++)
            {
                var (px, py) = (part.Points[i].X - centre.X, part.Points[i].Y - centre.Y);
                _placed[i] = new(x + (px * along.X) - (py * along.Y), y + (px * along.Y) + (py * along.X));
            }
        }

        // Turned in space about an axis through the centre, and seen along the fold again.
        private void Place(Point shift, double turn, Point3 axis, double[] places)
        {
            var (sin, cos) = Math.SinCos(turn);
            for (var i = 0; i < _placed.Length; i++)
            {
                var from = part.Points[i] - part.Centre;
                var p = new Point3(from.X, from.Y, places[i]);
                var turned = (cos * p) + (sin * axis.Cross(p)) + ((1 - cos) * axis.Dot(p) * axis);
                _placed[i] = part.Centre + shift + new Point(turned.X, turned.Y);
            }
        }
    }
}
