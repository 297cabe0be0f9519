using System.Runtime.InteropServices;

namespace Forming.Prediction;

/// <summary>One Newton step of the strip towards balance with hand and folds: how it is set up, and taken.</summary>
/// <remarks>
/// Newton on directions, fold forces and hand force. Bending and geometric stiffness are tridiagonal; everything else is a border:
/// fold forces, hand force, its turning with the sheet's end, and the sliding of the touched places, two columns each, from
/// <c>d²gap/dth² = [phi a' + a phi' - kappa a a' - d phi phi']/(1 - kappa d)</c> beside the tridiagonal part, with
/// a the touched place's motion along the strip and phi its own turning.
/// </remarks>
internal sealed class NewtonSystem(Strip strip, FoldCircles circles, double momentScale, PullWork work)
{
    private const double MostTurn = 0.5; // [rad]; a longer step leaves the tangents' reach

    /// <summary>What a row costs beside the products of its columns, as so many columns.</summary>
    private const int ColumnsBeside = 120;

    private readonly int _nodes = strip.Lengths.Length;
    private readonly BorderedSystem _borders = new(strip.Lengths.Length);
    private readonly Point[] _sweeps = new Point[strip.Lengths.Length]; // how the sheet's end moves with each direction
    private double[] _rows = [];

    /// <summary>The folds that press on the strip.</summary>
    public List<Touch> Touches { get; } = [];

    /// <summary>Hand force, square to the sheet's end [N/mm].</summary>
    public double Force { get; set; }

    /// <summary>Sets up the next step.</summary>
    /// <param name="landing">The touch to land on, where no direction is wanted.</param>
    /// <param name="heading">Direction that the sheet's end is to have [rad], or null.</param>
    /// <param name="clearance">How far short of the fold to land [mm].</param>
    /// <returns>The largest miss before the step, of the moment scale, in mm or rad; infinite where no work is left for it.</returns>
    public double Assemble(in Touch landing, double? heading, double clearance)
    {
        var active = CollectionsMarshal.AsSpan(Touches);
        Columns at = new(active.Length);
        if (!work.Take((long)_nodes * at.Count * (at.Count + ColumnsBeside)))
            return double.PositiveInfinity;
        _borders.Begin(at.Count);
        var size = at.Hand + 1;
        if (_rows.Length < size * _nodes)
            _rows = new double[size * _nodes];
        _rows.AsSpan(0, size * _nodes).Clear();

        var along = Point.Along(strip.Heading[_nodes]);
        AddStiffness(active, along.Left());
        AddHand(at, along);
        for (var j = 0; j < active.Length; j++)
            AddTouch(at, j, active[j]);
        var control = Row(at.Hand);
        if (heading is null)
            FillGap(landing, control);
        else
            control[_nodes - 1] = 1;

        var miss = Math.Abs(Wanted(landing, heading, clearance));
        for (var i = 0; i < _nodes; i++)
            miss = Math.Max(miss, Math.Abs(_borders.Columns[(i * _borders.Width) + at.Rest]) / momentScale);
        foreach (ref readonly var touch in active)
            miss = Math.Max(miss, Math.Abs(touch.Distance - circles.RadiusMm));
        return miss;
    }

    /// <summary>Takes the step that was set up.</summary>
    /// <param name="landing">The touch to land on, where no direction is wanted.</param>
    /// <param name="heading">Direction that the sheet's end is to have [rad], or null.</param>
    /// <param name="clearance">How far short of the fold to land [mm].</param>
    /// <param name="miss">The miss before it.</param>
    /// <returns>Whether there was one.</returns>
    public bool Step(in Touch landing, double? heading, double clearance, double miss) =>
        double.IsFinite(miss) && _borders.Solve() && Advance(
            CollectionsMarshal.AsSpan(Touches), new(Touches.Count), Wanted(landing, heading, clearance), heading is null ? landing : null);

    private double Wanted(in Touch landing, double? heading, double clearance) =>
        heading is { } end ? end - strip.Heading[_nodes] : circles.RadiusMm - landing.Distance + clearance;

    private Span<double> Row(int p) => _rows.AsSpan(p * _nodes, _nodes);

    // Bending stiffness, the geometric stiffness of every force, and the part of sliding that stays within an element.
    private void AddStiffness(ReadOnlySpan<Touch> active, Point endNormal)
    {
        const double Low = Strip.LowShare, High = 1 - Low;
        Array.Clear(_sweeps);
        var push = Force * endNormal;
        for (var e = _nodes - 1; e >= 0; e--)
        {
            var half = strip.Lengths[e] / 2;
            var k = strip.Growth[e] / strip.Lengths[e];
            Point low = new(strip.Cosine[2 * e], strip.Sine[2 * e]), high = new(strip.Cosine[(2 * e) + 1], strip.Sine[(2 * e) + 1]);
            double first = k, cross = -k, second = k;
            Add(half * push.Dot(low), Low);
            Add(half * push.Dot(high), High);
            foreach (ref readonly var touch in active)
            {
                if (touch.Element != e)
                    continue;
                var share = touch.Inside / strip.Lengths[e];
                var kappa = strip.Curvature(e);
                var pull = -touch.Force * touch.Inside / 2 * touch.Tangent.Left();
                Add(pull.Dot(Point.Along(strip.Heading[e] + (kappa * Low * touch.Inside))), Low * share);
                Add(pull.Dot(Point.Along(strip.Heading[e] + (kappa * High * touch.Inside))), High * share);
                Add(touch.Force * touch.Distance / Math.Max(1 - (kappa * touch.Distance), Touch.LeastSlack), share);
                push -= touch.Force * touch.Tangent.Left();
            }

            _borders.Diagonal[e] += second;
            _sweeps[e] += half * ((Low * low) + (High * high)).Left();
            if (e > 0)
            {
                _borders.Diagonal[e - 1] += first;
                _borders.Beside[e - 1] += cross;
                _sweeps[e - 1] += half * ((High * low) + (Low * high)).Left();
            }

            void Add(double weight, double share)
            {
                first += weight * (1 - share) * (1 - share);
                cross += weight * share * (1 - share);
                second += weight * share * share;
            }
        }
    }

    // The hand force, its turning with the end, and what the moments are out of balance by.
    private void AddHand(in Columns at, Point along)
    {
        var x = _borders.Columns;
        for (var i = 0; i < _nodes; i++)
        {
            var lift = along.Cross(_sweeps[i]);
            var row = x.Slice(i * _borders.Width, at.Count);
            row[at.Turning] = along.Dot(_sweeps[i]);
            row[at.Hand] = lift;
            row[at.Rest] = (i + 1 < _nodes ? strip.Moment[i + 1] : 0) - strip.Moment[i] + (Force * lift);
        }

        Row(at.Turning)[_nodes - 1] = Force;
    }

    private void AddTouch(in Columns at, int j, in Touch touch)
    {
        var x = _borders.Columns;
        var kappa = strip.Curvature(touch.Element);
        var alpha = -touch.Force / Math.Max(1 - (kappa * touch.Distance), Touch.LeastSlack);
        var share = touch.Inside / strip.Lengths[touch.Element];
        var (own, after) = SweepsAt(touch);
        Span<double> alongRow = Row(Columns.Slide(j)), turnRow = Row(Columns.Slide(j) + 1), gap = Row(at.Fold(j));
        for (var i = 0; i <= touch.Element; i++)
        {
            // Direction i + 1 belongs to the node at the end of element i.
            var sweep = i + 1 < touch.Element ? _sweeps[i] : i + 1 == touch.Element ? own : after;
            var phi = i + 1 < touch.Element ? 0 : i + 1 == touch.Element ? 1 - share : share;
            double a = touch.Tangent.Dot(sweep), n = touch.Tangent.Cross(sweep);
            var row = x.Slice(i * _borders.Width, at.Count);
            row[Columns.Slide(j)] = a;
            row[Columns.Slide(j) + 1] = phi;
            row[at.Fold(j)] = n;
            row[at.Rest] -= touch.Force * n;
            alongRow[i] = alpha * (phi - (kappa * a));
            turnRow[i] = alpha * a;
            gap[i] = -n;
        }
    }

    private void FillGap(in Touch touch, Span<double> row)
    {
        var (own, after) = SweepsAt(touch);
        for (var i = 0; i <= touch.Element; i++)
            row[i] = -touch.Tangent.Cross(i + 1 < touch.Element ? _sweeps[i] : i + 1 == touch.Element ? own : after);
    }

    // How a touched place moves with the directions at both nodes of its element.
    private (Point Own, Point After) SweepsAt(in Touch touch)
    {
        const double Low = Strip.LowShare, High = 1 - Low;
        var e = touch.Element;
        var share = touch.Inside / strip.Lengths[e];
        var turn = strip.Curvature(e) * touch.Inside;
        var low = touch.Inside / 2 * Point.Along(strip.Heading[e] + (Low * turn)).Left();
        var high = touch.Inside / 2 * Point.Along(strip.Heading[e] + (High * turn)).Left();
        var own = ((1 - (Low * share)) * low) + ((1 - (High * share)) * high);
        if (e > 0)
        {
            own += strip.Lengths[e - 1] / 2 * new Point(
                -(Low * strip.Sine[(2 * e) - 2]) - (High * strip.Sine[(2 * e) - 1]),
                (Low * strip.Cosine[(2 * e) - 2]) + (High * strip.Cosine[(2 * e) - 1]));
        }

        return (own, (Low * share * low) + (High * share * high));
    }

    // Slides: y + w·Zc y + w·Zn dN - w·Zb dF = w·z. Gaps and control: the same product equals what is wanted.
    private bool Advance(Span<Touch> active, in Columns at, double wanted, Touch? landing)
    {
        var x = _borders.Columns;
        int size = at.Hand + 1, wide = size + 1;
        var dense = _borders.Dense(size);
        for (var p = 0; p < size; p++)
        {
            var sums = dense.Slice(p * wide, wide);
            _borders.Multiply(Row(p), sums);
            sums[at.Hand] = -sums[at.Hand];
            if (p < at.Fold(0))
            {
                sums[p] += 1;
                continue;
            }

            for (var q = 0; q < size; q++)
                sums[q] = -sums[q];
            sums[size] = (p < at.Hand ? circles.RadiusMm - active[p - at.Fold(0)].Distance : wanted) - sums[size];
        }

        if (circles.Flexure is { } flexure)
            AddFlexure(flexure, active, at, landing, dense, wide);
        if (!BorderedSystem.SolveDense(dense, size))
            return false;
        double most = 0;
        for (var i = 0; i < _nodes; i++)
        {
            var row = x.Slice(i * _borders.Width, at.Count);
            var change = row[at.Rest] + (row[at.Hand] * dense[(at.Hand * wide) + size]);
            for (var q = 0; q < at.Hand; q++)
                change -= row[q] * dense[(q * wide) + size];
            row[0] = change;
            most = Math.Max(most, Math.Abs(change));
        }

        if (!double.IsFinite(most))
            return false;
        var scale = most > MostTurn ? MostTurn / most : 1;
        for (var i = 0; i < _nodes; i++)
            strip.Heading[i + 1] += scale * x[i * _borders.Width];
        for (var j = 0; j < active.Length; j++)
            active[j].Force += scale * dense[(at.Fold(j) * wide) + size];
        Force += scale * dense[(at.Hand * wide) + size];
        return true;
    }

    // A pressed fold gives way, and takes the others along.
    private static void AddFlexure(
        FormFlexure flexure, ReadOnlySpan<Touch> active, in Columns at, Touch? landing, Span<double> dense, int wide)
    {
        for (var k = 0; k < active.Length; k++)
        {
            for (var j = 0; j < active.Length; j++)
                dense[(at.Fold(j) * wide) + at.Fold(k)] += flexure.MoveAlong(active[j].Circle, active[j].Tangent.Left(), active[k]);
            if (landing is { } there)
                dense[(at.Hand * wide) + at.Fold(k)] += flexure.MoveAlong(there.Circle, there.Tangent.Left(), active[k]);
        }
    }

    /// <summary>What is in which column of the border: slides, the hand's turning, fold forces, hand force, the rest.</summary>
    private readonly record struct Columns(int Touches)
    {
        public int Turning => 2 * Touches;

        public int Hand => Turning + 1 + Touches;

        public int Rest => Hand + 1;

        public int Count => Rest + 1;

        public static int Slide(int j) => 2 * j;

        public int Fold(int j) => Turning + 1 + j;
    }
}
