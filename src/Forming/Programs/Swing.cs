namespace Forming.Programs;

/// <summary>The part followed through a fold: its least clearance over the whole swing, proved to 0.02 mm.</summary>
/// <remarks>
/// No point moves faster than a bound λ per radian, so between two angles the clearance is at least <c>(d1 + d2 - λ Δ)/2</c>; the interval
/// with the smallest bound is split until no bound lies under the best by more than 0.02 mm, or all are plenty.
/// </remarks>
internal sealed class Swing
{
    private const double Proof = 0.02;
    private const double KeptInside = 0.05;
    private const int MostSplits = 4000;

    private readonly BrakeTools tools;
    private readonly int fold;
    private readonly PartSide back;
    private readonly PartSide front;
    private readonly PartPose pose;
    private readonly double end;
    private readonly double plenty;

    public Swing(BrakeTools tools, ProgramBrake brake, int fold, PartSide back, PartSide front)
    {
        (this.tools, this.fold, this.back, this.front) = (tools, fold, back, front);
        pose = new(back, front);
        end = tools.Part.StopAngles[fold] + brake.OverTravel.Radians;
        plenty = brake.PlentyMm;
    }

    /// <summary>Clearance of upper jaws, of lower tools, and of the part from itself.</summary>
    public (Clearance Upper, Clearance Lower, Clearance Self) Clearances()
    {
        var (behind, ahead) = tools.Swings(end);
        var t = tools.Part.Shape.ThicknessMm;
        var offset = Math.Abs(0.5 - tools.Part.Shape.NeutralFactor) * t;
        var reach = Math.Max(front.ReachMm, tools.BothSwing ? back.ReachMm : 0) + tools.Part.Allowance(fold);
        var rate = (tools.BothSwing ? reach / 2 : reach) + offset;
        var comesDown = Below(back, behind) || Below(front, ahead) || (!tools.BothSwing && Below(front, 0));
        var meetsItself = back.Turn + front.Turn + end > 1.5 * Math.PI;
        return (
            Least(Upper, rate),
            comesDown ? Least(Lower, rate + tools.LowerRateMm) : None,
            meetsItself ? Least(Self, 2 * rate) : None);

        static bool Below(PartSide side, double swing) => side.Turn + swing > Math.PI;
    }

    private Clearance None => new(plenty, null, default);

    private Clearance Least(Func<double, double, (double Mm, string? Name)> at, double rate)
    {
        var best = new Clearance(plenty, null, default);
        var queue = new PriorityQueue<(double From, double To, double D1, double D2), double>();
        Push(0, end, Measure(0), Measure(end));
        for (var i = 0; i < MostSplits && best.Mm > 0 && queue.TryDequeue(out var gap, out var bound); i++)
        {
            if (bound >= best.Mm - Proof || bound >= plenty)
                break;
            var (from, to, d1, d2) = gap;
            var width = to - from;
            var split = Math.Clamp(((from + to) / 2) + ((d1 - d2) / (2 * rate)), from + (KeptInside * width), to - (KeptInside * width));
            var d = Measure(split);
            Push(from, split, d1, d);
            Push(split, to, d, d2);
        }

        return best;

        double Measure(double turn)
        {
            // A far distance ends a wide interval at once, so it is asked for in full.
            pose.Set(tools, fold, turn);
            var (mm, name) = at(turn, plenty + (rate * end / 2));
            if (mm < best.Mm)
                best = new(mm, name, new(turn));
            return mm;
        }

        void Push(double from, double to, double d1, double d2) =>
            queue.Enqueue((from, to, d1, d2), (d1 + d2 - (rate * (to - from))) / 2);
    }

    private (double Mm, string? Name) Upper(double turn, double enough)
    {
        var least = new Nearest(enough, tools.Part.Shape.ThicknessMm / 2);
        foreach (var jaw in tools.Upper)
        {
            Beyond(pose.Front, front, jaw, ref least);
            Beyond(pose.Back, back, jaw, ref least);
            Run(pose.Front, front, jaw, ref least);
            if (tools.BothSwing)
                Run(pose.Back, back, jaw, ref least);
        }

        return least.Result;
    }

    private static void Beyond(Point[] placed, PartSide side, Jaw jaw, ref Nearest least)
    {
        for (var i = side.RunEnd; i + 1 < placed.Length; i++)
            least.Meet(Distance.To(placed[i], placed[i + 1], jaw, least.Enough), jaw.Name);
    }

    // Beside the fold the sheet lies on the nose; further out it may only not run into the jaw.
    private void Run(Point[] placed, PartSide side, Jaw jaw, ref Nearest least)
    {
        var shape = tools.Part.Shape;
        var near = 2 * (shape.RadiusMm + shape.ThicknessMm);
        if (side.RunMm <= near)
            return;
        var half = shape.ThicknessMm / 2;
        var (from, to) = (placed[0] + (near / side.RunMm * (placed[1] - placed[0])), placed[1]);
        if (Distance.To(from, to, jaw, half) < half)
            least.Meet(0, jaw.Name);
    }

    private (double Mm, string? Name) Lower(double turn, double enough)
    {
        var least = new Nearest(enough, tools.Part.Shape.ThicknessMm / 2);
        var (behind, ahead) = tools.Swings(end);
        foreach (var jaw in tools.Lower(fold, turn))
        {
            // The leaf turns with the front, so what counts is the turn from it.
            var turnsAlong = jaw.Name == "leaf";
            Turned(pose.Front, front, turnsAlong ? 0 : ahead, jaw, ref least);
            Turned(pose.Back, back, behind, jaw, ref least);
        }

        return least.Result;
    }

    private static void Turned(Point[] placed, PartSide side, double swing, Jaw jaw, ref Nearest least)
    {
        for (var i = side.RunEnd; i + 1 < placed.Length; i++)
        {
            if (side.Headings[i] + swing > Math.PI)
                least.Meet(Distance.To(placed[i], placed[i + 1], jaw, least.Enough), jaw.Name);
        }
    }

    private (double Mm, string? Name) Self(double turn, double enough)
    {
        var least = new Nearest(enough, tools.Part.Shape.ThicknessMm);
        for (var i = 0; i + 1 < pose.Front.Length; i++)
        {
            for (var j = 0; j + 1 < pose.Back.Length; j++)
            {
                if (i >= front.RunEnd || j >= back.RunEnd)
                    least.Meet(Distance.Between(pose.Front[i], pose.Front[i + 1], pose.Back[j], pose.Back[j + 1]), "itself");
            }
        }

        return least.Result;
    }

    /// <summary>The least distance so far, less what the sheet's thickness takes.</summary>
    private struct Nearest(double enough, double taken)
    {
        private double mm = enough;
        private string? name;

        public readonly double Enough => mm + taken;

        public readonly (double Mm, string? Name) Result => (mm, name);

        public void Meet(double distance, string what)
        {
            if (distance - taken < mm)
                (mm, name) = (distance - taken, what);
        }
    }
}
