namespace Forming.Curves.Points;

/// <summary>
/// Gauss–Newton on the points' normal distances from a curve of given knots: unknowns are the curve's offset from the first
/// point, its direction there and its curvatures. Lengths are relative to the pattern's, and the first point is the origin.
/// </summary>
internal sealed class NormalFit
{
    private const int MostSteps = 25;
    private const int MostHalvings = 6;

    /// <summary>A step that leaves this share of the squared misses is the last.</summary>
    private const double Stalled = 0.999;

    /// <summary>No bend turns more often than this [rad]; beyond it a trial has run away.</summary>
    private const double MostTurn = 100;

    /// <summary>A foot may move this far in one projection, relative to the pattern.</summary>
    private const double MostSlide = 0.1;

    private const int MostSlides = 4;

    /// <summary>A slide this short is right to rounding without another trace, see <see cref="FootTrace.Shift"/>.</summary>
    private const double SettledSlide = 1e-5;

    /// <summary>Where the last foot takes along a knot that is held flat, the curve changes: it must settle this much more closely.</summary>
    private const double EndShare = 1e5;

    /// <summary>Least that the last span of the profile may shrink to.</summary>
    private const double ShortestSpan = 1e-6;

    private readonly Point[] _points;
    private readonly FootTrace _trace;

    private NormalFit(Point[] points, CurvatureProfile profile, double offset, double angle, double[] feet)
    {
        (_points, Profile, Offset, Angle, Feet) = (points, profile, offset, angle, feet);
        (_trace, Misses) = (new FootTrace(points.Length), new double[points.Length]);
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

    /// <summary>[points] distance of each point from the curve, to the left positive.</summary>
    public double[] Misses { get; }

    /// <summary>Sum of the squared misses; infinite when the curve has run away.</summary>
    public double Sum { get; private set; }

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
    /// <param name="points">[n] the points, the first at the origin.</param>
    /// <param name="guess">Knots and curvatures to start from.</param>
    /// <param name="offset">Offset of the first point to start from.</param>
    /// <param name="angle">Direction to start from [rad].</param>
    /// <param name="feet">[n] feet to start from.</param>
    /// <param name="precision">Steps smaller than this end the search.</param>
    public static NormalFit Solve(Point[] points, CurvatureProfile guess, double offset, double angle, double[] feet, double precision)
    {
        var fit = new NormalFit(points, guess.Copy(), offset, angle, [.. feet]);
        for (var step = 0; step < MostSteps && double.IsFinite(fit.Sum); step++)
        {
            var better = fit.Improved(fit.Change());
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
    public NormalFit Refit(CurvatureProfile guess, double precision) => Solve(_points, guess, Offset, Angle, Feet, precision);

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
        var (rows, unknowns) = (_points.Length, Profile.UnknownCount);
        var columns = new double[rows * (unknowns + 2)];
        var startNormal = Point.Along(Angle).Left();
        for (var j = 0; j < rows; j++)
        {
            var tangent = _trace.Tangents[j];
            columns[j] = -startNormal.Dot(tangent.Left());
            columns[rows + j] = _trace.Places[j].Dot(tangent);
            for (var c = 0; c < unknowns; c++)
                columns[((c + 2) * rows) + j] = _trace.Levers[(j * unknowns) + c].Dot(tangent);
        }

        var change = new double[unknowns + 2];
        LeastSquares.Solve(columns, (double[])Misses.Clone(), change);
        return change;
    }

    private double LargestMoveTo(NormalFit other)
    {
        var largest = 0.0;
        for (var j = 0; j < Misses.Length; j++) largest = Math.Max(largest, Math.Abs(other.Misses[j] - Misses[j]));
        return largest;
    }

    /// <summary>This curve changed by the step, or by as many halvings of it as make it better; null when none does.</summary>
    private NormalFit? Improved(double[] change)
    {
        var share = 1.0;
        for (var halving = 0; halving <= MostHalvings; halving++, share /= 2)
        {
            var trial = new NormalFit(_points, Changed(share, change), Offset + (share * change[0]), Angle + (share * change[1]), [.. Feet]);
            if (trial.Sum < Sum) return trial;
        }

        return null;
    }

    private CurvatureProfile Changed(double share, double[] change)
    {
        var changed = Profile.Copy();
        for (var k = 0; k < changed.Values.Length; k++)
            if (changed.Unknowns[k] >= 0) changed.Values[k] += share * change[changed.Unknowns[k] + 2];
        return changed;
    }

    /// <summary>Brings the feet under their points, ends the curve at the last one, and measures.</summary>
    private void Measure()
    {
        Sum = double.PositiveInfinity;
        var longestSlide = double.PositiveInfinity;
        for (var slide = 0; slide < MostSlides && longestSlide > SettledSlide; slide++)
        {
            if (!IsTame()) return;
            _trace.Run(Profile, Start, Angle, Feet);
            longestSlide = SlideFeet();
        }

        if (!IsTame()) return;
        if (longestSlide > SettledSlide) _trace.Run(Profile, Start, Angle, Feet);
        var sum = 0.0;
        for (var j = 0; j < _points.Length; j++)
        {
            Misses[j] = (_points[j] - _trace.Places[j]).Dot(_trace.Tangents[j].Left());
            sum += Misses[j] * Misses[j];
        }

        if (double.IsFinite(sum)) Sum = sum;
    }

    private bool IsTame() =>
        double.IsFinite(Offset) && double.IsFinite(Angle) && Profile.Length - Profile.Knots[^2] > ShortestSpan
        && Profile.Peak * Profile.Length < MostTurn;

    /// <summary>Slides every foot along the curve, the last one first since the curve ends there; returns the longest slide.</summary>
    private double SlideFeet()
    {
        var last = Slide(Feet.Length - 1);
        var longest = Profile.ExtendedTo(Feet[^1] + last) ? 0 : Math.Abs(last) * EndShare;
        for (var j = Feet.Length - 1; j > 0; j--)
        {
            var slid = Math.Clamp(Feet[j] + Slide(j), 0, Math.Max(0, Profile.Length));
            _trace.Shift(j, slid - Feet[j]);
            longest = Math.Max(longest, Math.Abs(slid - Feet[j]));
            Feet[j] = slid;
        }

        return longest;
    }

    /// <summary>One Newton step on (p - P(s))·t(s) = 0, whose slope is κ (p - P)·n - 1.</summary>
    private double Slide(int j)
    {
        var gap = _points[j] - _trace.Places[j];
        var slope = Math.Max(0.2, 1 - (_trace.Curvatures[j] * gap.Dot(_trace.Tangents[j].Left())));
        return Math.Clamp(gap.Dot(_trace.Tangents[j]) / slope, -MostSlide, MostSlide);
    }
}
