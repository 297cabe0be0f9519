namespace Forming.Curves.Fitting;

/// <summary>
/// Gauss–Newton on the points' normal distances from a curve of given knots: unknowns are the curve's offset from the first
/// point, its direction there and its curvatures. Lengths are relative to the pattern's, and the first point is the origin.
/// </summary>
internal sealed class NormalFit
{
    private const int MostSteps = 25;
    private const int MostHalvings = 6;

    /// <summary>A step that leaves this share of the squared misses is the last.</summary>
    private const double Stalled = 1 - 1e-4;

    /// <summary>No bend turns more often than this [rad]; beyond it a trial has run away.</summary>
    private const double MostTurn = 100;

    /// <summary>A foot may move this far in one projection, relative to the pattern.</summary>
    private const double MostSlide = 0.1;

    private const int MostSlides = 4;

    /// <summary>A slide this short is right to rounding without another trace, see <see cref="FootTrace.Shift"/>.</summary>
    private const double SettledSlide = 1e-5;

    /// <summary>
    /// Where the last foot takes along a knot that is held flat, the curve changes: it must settle this much more closely.
    /// </summary>
    private const double EndShare = 1e5;

    /// <summary>Least that the last span of the profile may shrink to.</summary>
    private const double ShortestSpan = 1e-6;

    /// <summary>Between two groups' stations an arc will do: a station this near to the middle of its group's feet is right.</summary>
    private const double SettledStation = 2e-3;

    private readonly Samples _samples;
    private readonly Point[] _points;
    private readonly double[]? _weights;
    private readonly FootTrace _trace;

    private NormalFit(Samples samples, double[]? weights, CurvatureProfile profile, double offset, double angle, double[] feet)
    {
        samples.Cancellation.ThrowIfCancellationRequested();
        (_samples, _points, _weights) = (samples, samples.Points, weights);
        (Profile, Offset, Angle, Feet) = (profile, offset, angle, feet);
        (_trace, Misses) = (new FootTrace(samples.GroupCount), new double[_points.Length]);
        Stations = samples.AreSingle ? feet : new double[samples.GroupCount];
        Measure();
    }

    /// <summary>Curvature over arc length.</summary>
    public CurvatureProfile Profile { get; }

    /// <summary>How far the first point lies to the left of the curve's start.</summary>
    public double Offset { get; private set; }

    /// <summary>Direction of the curve at its start [rad].</summary>
    public double Angle { get; private set; }

    /// <summary>[points] arc length of each point's foot.</summary>
    public double[] Feet { get; }

    /// <summary>[groups] arc lengths at which the curve was traced: the feet, or the middles of each group's feet.</summary>
    public double[] Stations { get; }

    /// <summary>[points] distance of each point from the curve, to the left positive.</summary>
    public double[] Misses { get; }

    /// <summary>Sum of the squared misses, weighted where points have weights; infinite when the curve has run away.</summary>
    public double Sum { get; private set; }

    /// <summary>Sum of the squared misses, each counted once.</summary>
    public double Unweighted => Misses.Sum(miss => miss * miss);

    /// <summary>
    /// Correlation of each point's miss with the next one's: about 0 for scatter, near 1 where the curve leaves out a bend.
    /// </summary>
    public double SerialCorrelation
    {
        get
        {
            var sum = 0.0;
            for (var j = 1; j < Misses.Length; j++) sum += Misses[j] * Misses[j - 1];
            return sum / Unweighted;
        }
    }

    /// <summary>Index of the point that lies farthest off.</summary>
    public int Worst
    {
        get
        {
            var worst = 0;
            for (var j = 1; j < Misses.Length; j++)
                if (Math.Abs(Misses[j]) > Math.Abs(Misses[worst])) worst = j;
            return worst;
        }
    }

    /// <summary>The largest distance of a point from the curve; infinite when the curve has run away.</summary>
    public double LargestMiss => double.IsFinite(Sum) ? Math.Abs(Misses[Worst]) : double.PositiveInfinity;

    /// <summary>The best curve near a first guess.</summary>
    /// <param name="samples">The points.</param>
    /// <param name="guess">Knots and curvatures to start from.</param>
    /// <param name="offset">Offset of the first point to start from.</param>
    /// <param name="angle">Direction to start from [rad].</param>
    /// <param name="feet">[n] feet to start from.</param>
    /// <param name="precision">Steps smaller than this end the search.</param>
    public static NormalFit Solve(Samples samples, CurvatureProfile guess, double offset, double angle, double[] feet, double precision)
    {
        var fit = new NormalFit(samples, null, guess.Copy(), offset, angle, [.. feet]);
        for (var step = 0; step < MostSteps && double.IsFinite(fit.Sum); step++)
        {
            var better = fit.Improved();
            if (better is null) break;
            var isSettled = better.Sum > Stalled * fit.Sum || fit.LargestMoveTo(better) <= precision;
            fit = better;
            if (isSettled) break;
        }

        return fit;
    }

    /// <summary>The best curve near this one, on another profile.</summary>
    /// <param name="guess">Knots and curvatures to start from, of about this curve's length.</param>
    /// <param name="precision">Steps smaller than this end the search.</param>
    public NormalFit Refit(CurvatureProfile guess, double precision) => Solve(_samples, guess, Offset, Angle, Feet, precision);

    /// <summary>The curve one step on where each point counts as often as its weight says.</summary>
    /// <param name="weights">[points] weights, &gt; 0.</param>
    public NormalFit Weighted(double[] weights)
    {
        var same = new NormalFit(_samples, weights, Profile.Copy(), Offset, Angle, [.. Feet]);
        return same.Improved() ?? same;
    }

    /// <summary>The same curve measured at each point's own foot.</summary>
    public NormalFit OneByOne() =>
        _samples.AreSingle ? this : new(_samples.OneByOne(), null, Profile.Copy(), Offset, Angle, [.. Feet]);

    /// <summary>Where the curve is.</summary>
    /// <param name="s">Arc length, from 0 to the curve's.</param>
    public Point PlaceAt(double s)
    {
        var trace = new FootTrace(1);
        trace.Run(Profile, Start, Angle, [s]);
        return trace.Places[0];
    }

    private Point Start => -Offset * Point.Along(Angle).Left();

    /// <summary>The linearised least-squares step: offset, direction, then the curvatures.</summary>
    private double[] Change()
    {
        var (rows, unknowns) = (_samples.GroupCount, Profile.UnknownCount);
        var (columns, right) = (new double[rows * (unknowns + 2)], new double[rows]);
        var startNormal = Point.Along(Angle).Left();
        for (var g = 0; g < rows; g++)
        {
            var (tangent, root) = (_trace.Tangents[g], Gather(g, out right[g]));
            columns[g] = -root * startNormal.Dot(tangent.Left());
            columns[rows + g] = root * _trace.Places[g].Dot(tangent);
            for (var c = 0; c < unknowns; c++)
                columns[((c + 2) * rows) + g] = root * _trace.Levers[(g * unknowns) + c].Dot(tangent);
        }

        var change = new double[unknowns + 2];
        LeastSquares.Solve(columns, right, change);
        return change;
    }

    /// <summary>One equation for the points of a group: the root of their weight, and that times their mean miss.</summary>
    private double Gather(int group, out double right)
    {
        var (weight, sum) = (0.0, 0.0);
        for (var j = _samples.Bounds[group]; j < _samples.Bounds[group + 1]; j++)
            (weight, sum) = (weight + WeightOf(j), sum + (WeightOf(j) * Misses[j]));
        var root = Math.Sqrt(weight);
        right = sum / root;
        return root;
    }

    private double WeightOf(int j) => _weights is null ? 1 : _weights[j];

    private double LargestMoveTo(NormalFit other)
    {
        var largest = 0.0;
        for (var j = 0; j < Misses.Length; j++) largest = Math.Max(largest, Math.Abs(other.Misses[j] - Misses[j]));
        return largest;
    }

    /// <summary>
    /// This curve changed by the least-squares step, or by as many halvings of it as make it better; null when none does.
    /// </summary>
    private NormalFit? Improved()
    {
        if (!double.IsFinite(Sum)) return null;
        var (change, share) = (Change(), 1.0);
        for (var halving = 0; halving <= MostHalvings; halving++, share /= 2)
        {
            var profile = Profile.Changed(share, change, 2);
            var trial = new NormalFit(_samples, _weights, profile, Offset + (share * change[0]), Angle + (share * change[1]), [.. Feet]);
            if (trial.Sum < Sum) return trial;
        }

        return null;
    }

    /// <summary>Brings the feet under their points, ends the curve at the last one, and measures.</summary>
    private void Measure()
    {
        Sum = double.PositiveInfinity;
        if (!(_samples.AreSingle ? FollowPoints() : FollowGroups()) || !IsTame()) return;
        var sum = 0.0;
        for (var j = 0; j < Misses.Length; j++) sum += WeightOf(j) * Misses[j] * Misses[j];
        if (double.IsFinite(sum)) Sum = sum;
    }

    /// <summary>Feet and misses with the curve traced at each foot; false when it runs away.</summary>
    private bool FollowPoints()
    {
        var longestSlide = double.PositiveInfinity;
        for (var slide = 0; slide < MostSlides && longestSlide > SettledSlide; slide++)
        {
            if (!IsTame()) return false;
            _trace.Run(Profile, Start, Angle, Feet);
            longestSlide = SlideFeet();
        }

        if (!IsTame()) return false;
        if (longestSlide > SettledSlide) _trace.Run(Profile, Start, Angle, Feet);
        for (var j = 0; j < _points.Length; j++)
            Misses[j] = (_points[j] - _trace.Places[j]).Dot(_trace.Tangents[j].Left());
        return true;
    }

    /// <summary>Feet and misses with the curve traced once a group, and taken as an arc about there; false when it runs away.</summary>
    private bool FollowGroups()
    {
        var farthest = double.PositiveInfinity;
        for (var slide = 0; slide < MostSlides && farthest > SettledStation; slide++)
        {
            if (!IsTame()) return false;
            for (var g = 0; g < Stations.Length; g++) Stations[g] = MiddleFoot(g);
            _trace.Run(Profile, Start, Angle, Stations);
            var end = Math.Max(Profile.Knots[^2], FootOf(_points.Length - 1, Stations.Length - 1));
            farthest = Profile.ExtendedTo(end) ? 0 : EndShare * Math.Abs(end - Feet[^1]) * SettledStation;
            for (var g = 0; g < Stations.Length; g++)
            {
                for (var j = Math.Max(1, _samples.Bounds[g]); j < _samples.Bounds[g + 1]; j++)
                    Feet[j] = Math.Clamp(FootOf(j, g), 0, Profile.Length);
                farthest = Math.Max(farthest, Math.Abs(MiddleFoot(g) - Stations[g]));
            }
        }

        for (var g = 0; g < Stations.Length; g++)
            for (var j = _samples.Bounds[g]; j < _samples.Bounds[g + 1]; j++) Misses[j] = MissOf(j, g);
        return true;
    }

    private double MiddleFoot(int group)
    {
        var (from, to, sum) = (_samples.Bounds[group], _samples.Bounds[group + 1], 0.0);
        for (var j = from; j < to; j++) sum += Feet[j];
        return Math.Clamp(sum / (to - from), 0, Profile.Length);
    }

    /// <summary>Foot of a point on the arc that touches the curve at a group's station.</summary>
    private double FootOf(int j, int group) => Stations[group] + Slide(j, group);

    /// <summary>Distance of a point from that arc, right to the third order of the way from the station to its foot.</summary>
    private double MissOf(int j, int group)
    {
        var (tangent, distance) = (_trace.Tangents[group], Feet[j] - Stations[group]);
        var turn = _trace.Curvatures[group] * distance;
        var place = _trace.Places[group] + (distance * (((1 - (turn * turn / 6)) * tangent) + (turn / 2 * tangent.Left())));
        return (_points[j] - place).Dot(((1 - (turn * turn / 2)) * tangent.Left()) - (turn * tangent));
    }

    private bool IsTame() =>
        double.IsFinite(Offset) && double.IsFinite(Angle) && Profile.IsInOrder(ShortestSpan)
        && Profile.Peak * Profile.Length < MostTurn;

    /// <summary>Slides every foot along the curve, the last one first since the curve ends there; returns the longest slide.</summary>
    private double SlideFeet()
    {
        var last = Slide(Feet.Length - 1, Feet.Length - 1);
        var longest = Profile.ExtendedTo(Feet[^1] + last) ? 0 : Math.Abs(last) * EndShare;
        for (var j = Feet.Length - 1; j > 0; j--)
        {
            var slid = Math.Clamp(Feet[j] + Slide(j, j), 0, Math.Max(0, Profile.Length));
            _trace.Shift(j, slid - Feet[j]);
            longest = Math.Max(longest, Math.Abs(slid - Feet[j]));
            Feet[j] = slid;
        }

        return longest;
    }

    /// <summary>One Newton step on (p - P(s))·t(s) = 0, whose slope is κ (p - P)·n - 1, from where the curve was traced.</summary>
    private double Slide(int j, int traced)
    {
        var gap = _points[j] - _trace.Places[traced];
        var slope = Math.Max(0.2, 1 - (_trace.Curvatures[traced] * gap.Dot(_trace.Tangents[traced].Left())));
        return Math.Clamp(gap.Dot(_trace.Tangents[traced]) / slope, -MostSlide, MostSlide);
    }
}
