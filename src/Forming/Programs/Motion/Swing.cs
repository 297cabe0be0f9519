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

    private readonly BrakeTools _tools;
    private readonly Effort _effort;
    private readonly int _fold;
    private readonly PartSide _back;
    private readonly PartSide _front;
    private readonly PartPose _pose;
    private readonly double _end;
    private readonly double _rate;
    private IReadOnlyList<SwungSection>? _sections;

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
        ? Least(Self, 2 * _rate, enough, Sections.Sum(section => section.Pairs) / 2)
        : new(enough, null, default);

    /// <summary>Where along the fold of a taper the part comes as near as that.</summary>
    /// <param name="clearance">The least clearance.</param>
    public FoldPlace PlaceOf(Clearance clearance)
    {
        var (turn, length) = (clearance.AtAngle.Radians, _tools.Part.LengthOf(_fold));
        if (clearance.Nearest == JawKind.Part)
            return NearestPlace.Of(Sections.MinBy(section => section.LeastAt(_tools, _fold, turn))!.AlongMm, length);
        _pose.Set(_tools, _fold, turn);
        Jaw[] jaws = [.. _tools.Upper.Concat(_tools.Lower(_fold, turn)).Where(jaw => jaw.Kind == clearance.Nearest)];
        var isAbove = _tools.Upper.Any(jaw => jaw.Kind == clearance.Nearest);
        var (behind, ahead) = SwingsFrom(clearance.Nearest);
        var front = NearestPlace.To(_front, _pose.Front, jaws, stretch => isAbove || stretch.Heading + ahead > Math.PI);
        var back = NearestPlace.To(_back, _pose.Back, jaws, stretch => isAbove || stretch.Heading + behind > Math.PI);
        return NearestPlace.Of(front.Mm <= back.Mm ? front.Along : back.Along, length);
    }

    private IReadOnlyList<SwungSection> Sections => _sections ??= SwungSection.Of(_back, _front, _pose, _tools.Part.LengthOf(_fold));

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
        foreach (var stretch in side.Beyond)
            Meet(placed, stretch, jaw, ref least);
    }

    // Flats and chords are rounded at their ends, which lie in each other; the cut edge of the part is square.
    private static void Meet(Point[] placed, Stretch stretch, Jaw jaw, ref Nearest least)
    {
        var (from, to) = (placed[stretch.From], placed[stretch.To]);
        var distance = Distance.To(from, to, jaw, least.Enough);
        if (distance >= least.Enough)
            return;
        if (!stretch.IsEnd || distance <= 0)
        {
            least.Meet(distance, jaw.Kind);
            return;
        }

        var end = stretch.Face is { } face
            ? Distance.EndAcross(from, to, placed[face] - to)
            : Distance.SquareEnd(from, to, least.Taken);
        least.MeetSolid(Distance.ToEnd(end, jaw, least.Mm), jaw.Kind);
    }

    // Beside the fold the sheet lies on the nose; further out it may only not run into the jaw.
    private void Run(Point[] placed, PartSide side, Jaw jaw, ref Nearest least)
    {
        var shape = _tools.Part.Shape;
        var near = 2 * (shape.RadiusMm + shape.ThicknessMm);
        if (side.LongestRunMm <= near)
            return;
        var half = shape.ThicknessMm / 2;
        var tip = placed[side.RunTip];
        var (from, to) = (placed[0] + (near / side.LongestRunMm * (tip - placed[0])), tip);
        if (Distance.To(from, to, jaw, half) < half && (side.IsFolded || Distance.ToSquareEnd(from, to, half, jaw, half) <= 0))
            least.Meet(0, jaw.Kind);
    }

    private (double Mm, JawKind? Kind) Lower(double turn, double enough)
    {
        var least = new Nearest(enough, _tools.Part.Shape.ThicknessMm / 2);
        foreach (var jaw in _tools.Lower(_fold, turn))
        {
            var (behind, ahead) = SwingsFrom(jaw.Kind);
            Turned(_pose.Front, _front, ahead, jaw, ref least);
            Turned(_pose.Back, _back, behind, jaw, ref least);
        }

        return least.Result;
    }

    // What counts is the turn from the tool's own plane; the leaf's turns with the front and away from the back.
    private (double Behind, double Ahead) SwingsFrom(JawKind? tool)
    {
        var (behind, ahead) = _tools.Swings(_end);
        return tool == JawKind.Leaf ? (ahead, 0) : (behind, ahead);
    }

    private static void Turned(Point[] placed, PartSide side, double swing, Jaw jaw, ref Nearest least)
    {
        foreach (var stretch in side.Beyond)
        {
            if (stretch.Heading + swing > Math.PI)
                Meet(placed, stretch, jaw, ref least);
        }
    }

    private (double Mm, JawKind? Kind) Self(double turn, double enough)
    {
        var least = new Nearest(enough, _tools.Part.Shape.ThicknessMm);
        foreach (var section in Sections)
        {
            section.Set(_tools, _fold, turn);
            section.MeetItself(ref least);
        }

        return least.Result;
    }
}
