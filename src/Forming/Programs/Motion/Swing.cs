using Forming.Programs.Brakes;

namespace Forming.Programs.Motion;

/// <summary>Least clearance over a swing.</summary>
/// <param name="Mm">The clearance, at most what is plenty; 0 or less is a collision [mm].</param>
/// <param name="Nearest">What is nearest to the part, or null where nothing is near.</param>
/// <param name="AtAngle">Angle of the fold there.</param>
public readonly record struct Clearance(double Mm, JawKind? Nearest, Angle AtAngle);

/// <summary>
/// Work counted in stretches of the part held against edges of jaws: the same part takes the same work on any day and any machine.
/// </summary>
/// <param name="cancellation">Cancels the calculation.</param>
internal sealed class Effort(CancellationToken cancellation)
{
    /// <summary>Work so far.</summary>
    public long Spent { get; private set; }

    /// <summary>Counts some more.</summary>
    /// <param name="work">How much.</param>
    public void Spend(long work)
    {
        Spent += work;
        cancellation.ThrowIfCancellationRequested();
    }
}

/// <summary>The part followed through a fold: its least clearance over the whole swing, proved to 0.02 mm.</summary>
/// <remarks>
/// No point moves faster than a bound λ per radian, so between two angles the clearance is at least <c>(d1 + d2 - λ Δ)/2</c>; the interval
/// with the smallest bound is split until no bound lies under the best by more than 0.02 mm, or all are plenty.
/// </remarks>
internal sealed class Swing
{
    private const double Proof = 0.02;
    private const double KeptInside = 0.05;
    private const int Group = 8; // edges in one box, which rules out most that are too far away; no result depends on it

    private readonly BrakeTools _tools;
    private readonly Effort _effort;
    private readonly int _fold;
    private readonly PartSide _back;
    private readonly PartSide _front;
    private readonly PartPose _pose;
    private readonly double _end;
    private readonly double _rate;

    public Swing(BrakeTools tools, ProgramBrake brake, Effort effort, int fold, PartSide back, PartSide front)
    {
        (_tools, _effort, _fold, _back, _front) = (tools, effort, fold, back, front);
        _pose = new(back, front);
        _end = tools.Part.StopAngles[fold] + brake.OverTravel.Radians;
        var t = tools.Part.Shape.ThicknessMm;
        var reach = Math.Max(front.ReachMm, tools.BothSwing ? back.ReachMm : 0) + (t / 2) + tools.Part.Allowance(fold);
        _rate = (tools.BothSwing ? reach / 2 : reach) + (Math.Abs(0.5 - tools.Part.Shape.NeutralFactor) * t);
    }

    private int Points => _pose.Back.Length + _pose.Front.Length;

    private int LowerEdges => BrakeTools.EdgesOf(_tools.Lower(_fold, 0));

    /// <summary>
    /// Clearance asked for by who only wants to know whether there is any: found to be above 0 for certain, or a contact.
    /// </summary>
    public static double Any => Proof;

    /// <summary>Clearance from the jaws above.</summary>
    /// <param name="enough">Clearance past which more is no matter [mm].</param>
    public Clearance FromUpper(double enough) => Least(Upper, _rate, enough, (long)Points * _tools.UpperEdges);

    /// <summary>Clearance from the tools below.</summary>
    /// <param name="enough">Clearance past which more is no matter [mm].</param>
    public Clearance FromLower(double enough)
    {
        // The sheet curls up, so that nothing hangs below the run before it has turned through half a circle.
        var (behind, ahead) = _tools.Swings(_end);
        return _back.Turn + Math.Max(behind, ahead) > Math.PI || _front.Turn + ahead > Math.PI
            ? Least(Lower, _rate + _tools.LowerRateMm, enough, (long)Points * LowerEdges)
            : new(enough, null, default);
    }

    /// <summary>Clearance of the part from itself.</summary>
    /// <param name="enough">Clearance past which more is no matter [mm].</param>
    /// <remarks>A curve that turns one way only, by half a circle at most, does not meet itself; past that two long flats may.</remarks>
    public Clearance FromItself(double enough) => _back.Turn + _front.Turn + _end > Math.PI
        ? Least(Self, 2 * _rate, enough, (long)_pose.Back.Length * _pose.Front.Length / 2)
        : new(enough, null, default);

    private Clearance Least(Func<double, double, (double Mm, JawKind? Kind)> at, double fastest, double enough, long work)
    {
        var best = new Clearance(enough, null, default);
        var queue = new PriorityQueue<(double From, double To, double D1, double D2), double>();
        Push(0, _end, Measure(0), Measure(_end));

        // It ends: an interval too short for the part to move by twice the proof is never split.
        while (best.Mm > 0 && queue.TryDequeue(out var gap, out var bound) && bound < best.Mm - Proof)
        {
            var (from, to, d1, d2) = gap;
            var width = to - from;
            var split = Math.Clamp(((from + to) / 2) + ((d1 - d2) / (2 * fastest)), from + (KeptInside * width), to - (KeptInside * width));
            var d = Measure(split);
            Push(from, split, d1, d);
            Push(split, to, d, d2);
        }

        return best;

        double Measure(double turn)
        {
            // A far distance ends a wide interval at once, so it is asked for in full.
            _effort.Spend(Points + work);
            _pose.Set(_tools, _fold, turn);
            var (mm, kind) = at(turn, enough + (fastest * _end / 2));
            if (mm < best.Mm)
                best = new(mm, kind, new(turn));
            return mm;
        }

        void Push(double from, double to, double d1, double d2)
        {
            var bound = (d1 + d2 - (fastest * (to - from))) / 2;
            if (bound < enough)
                queue.Enqueue((from, to, d1, d2), bound);
        }
    }

    private (double Mm, JawKind? Kind) Upper(double turn, double enough)
    {
        var least = new Nearest(enough, _tools.Part.Shape.ThicknessMm / 2);
        foreach (var jaw in _tools.Upper)
        {
            Beyond(_pose.Front, _front, jaw, ref least);
            Beyond(_pose.Back, _back, jaw, ref least);
            Run(_pose.Front, _front, jaw, ref least);
            if (_tools.BothSwing)
                Run(_pose.Back, _back, jaw, ref least);
        }

        return least.Result;
    }

    private static void Beyond(Point[] placed, PartSide side, Jaw jaw, ref Nearest least)
    {
        for (var i = side.RunEnd; i + 1 < placed.Length; i++)
            Meet(placed, i, jaw, ref least);
    }

    // Flats and chords are rounded at their ends, which lie in each other; the cut edge of the part is square.
    private static void Meet(Point[] placed, int at, Jaw jaw, ref Nearest least)
    {
        var (from, to) = (placed[at], placed[at + 1]);
        var distance = Distance.To(from, to, jaw, least.Enough);
        if (distance >= least.Enough)
            return;
        if (at + 2 < placed.Length || distance <= 0)
            least.Meet(distance, jaw.Kind);
        else
            least.MeetSolid(Distance.ToSquareEnd(from, to, least.Taken, jaw, least.Mm), jaw.Kind);
    }

    // Beside the fold the sheet lies on the nose; further out it may only not run into the jaw.
    private void Run(Point[] placed, PartSide side, Jaw jaw, ref Nearest least)
    {
        var shape = _tools.Part.Shape;
        var near = 2 * (shape.RadiusMm + shape.ThicknessMm);
        if (side.RunMm <= near)
            return;
        var half = shape.ThicknessMm / 2;
        var (from, to) = (placed[0] + (near / side.RunMm * (placed[1] - placed[0])), placed[1]);
        if (Distance.To(from, to, jaw, half) < half && (side.IsFolded || Distance.ToSquareEnd(from, to, half, jaw, half) <= 0))
            least.Meet(0, jaw.Kind);
    }

    private (double Mm, JawKind? Kind) Lower(double turn, double enough)
    {
        var least = new Nearest(enough, _tools.Part.Shape.ThicknessMm / 2);
        var (behind, ahead) = _tools.Swings(_end);
        foreach (var jaw in _tools.Lower(_fold, turn))
        {
            // What counts is the turn from the tool's own plane; the leaf's turns with the front and away from the back.
            var isLeaf = jaw.Kind == JawKind.Leaf;
            Turned(_pose.Front, _front, isLeaf ? 0 : ahead, jaw, ref least);
            Turned(_pose.Back, _back, isLeaf ? ahead : behind, jaw, ref least);
        }

        return least.Result;
    }

    private static void Turned(Point[] placed, PartSide side, double swing, Jaw jaw, ref Nearest least)
    {
        for (var i = side.RunEnd; i + 1 < placed.Length; i++)
        {
            if (side.Headings[i] + swing > Math.PI)
                Meet(placed, i, jaw, ref least);
        }
    }

    // Each side is stiff: only the two can meet. The edges are asked first, then whole groups of chords are passed over.
    private (double Mm, JawKind? Kind) Self(double turn, double enough)
    {
        var least = new Nearest(enough, _tools.Part.Shape.ThicknessMm);
        var (ahead, behind) = (_pose.Front, _pose.Back);
        if (_front.IsFolded || _back.IsFolded)
            MeetItself(ahead.Length - 2, behind.Length - 2, ref least);
        for (var group = 0; group + 1 < behind.Length; group += Group)
        {
            var last = Math.Min(group + Group, behind.Length - 1);
            var box = Box.Of(behind.AsSpan(group, last - group + 1));
            for (var i = 0; i + 1 < ahead.Length; i++)
            {
                if (box.DistanceTo(ahead[i], ahead[i + 1]) >= least.Enough)
                    continue;
                for (var j = group; j < last; j++)
                {
                    if (i >= _front.RunEnd || j >= _back.RunEnd)
                        MeetItself(i, j, ref least);
                }
            }
        }

        return least.Result;
    }

    private void MeetItself(int i, int j, ref Nearest least)
    {
        var (ahead, behind) = (_pose.Front, _pose.Back);
        var distance = Distance.Between(ahead[i], ahead[i + 1], behind[j], behind[j + 1]);
        if (distance >= least.Enough)
            return;
        if (distance <= 0 || (i + 2 < ahead.Length && j + 2 < behind.Length))
        {
            least.Meet(distance, JawKind.Part);
            return;
        }

        // Cut edges are square: the stretch they end is held as its outline, any other as its mid surface.
        var half = least.Taken / 2;
        var (one, oneHalf) = Stretch(ahead, i, half);
        var (other, otherHalf) = Stretch(behind, j, half);
        foreach (var (a, b) in one)
        {
            foreach (var (c, d) in other)
                least.MeetSolid(Distance.Between(a, b, c, d) - oneHalf - otherHalf, JawKind.Part);
        }
    }

    private static ((Point From, Point To)[] Lines, double Half) Stretch(Point[] placed, int at, double half) => at + 2 < placed.Length
        ? ([(placed[at], placed[at + 1])], half)
        : (Distance.SquareEnd(placed[at], placed[at + 1], half), 0);

    /// <summary>The least distance so far, less what the sheet's thickness takes.</summary>
    private struct Nearest(double enough, double taken)
    {
        private double _mm = enough;
        private JawKind? _kind;

        public readonly double Mm => _mm;

        public readonly double Taken => taken;

        public readonly double Enough => _mm + taken;

        public readonly (double Mm, JawKind? Kind) Result => (_mm, _kind);

        public void Meet(double distance, JawKind what)
        {
            if (distance - taken < _mm)
                (_mm, _kind) = (distance - taken, what);
        }

        public void MeetSolid(double distance, JawKind what)
        {
            if (distance < _mm)
                (_mm, _kind) = (distance, what);
        }
    }
}
