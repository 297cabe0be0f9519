namespace Forming.Prediction;

/// <summary>The panel after it was let go: each element keeps what its largest curvature left.</summary>
internal sealed class ReleasedShape
{
    private const int FitPieces = 120;

    private readonly PullOver _pull;
    private readonly Strip _strip;
    private readonly double[] _left; // curvature of each element
    private readonly ReleasedPoint[] _curve;

    private ReleasedShape(PullOver pull, double[]? addedTurns)
    {
        _pull = pull;
        _strip = pull.Strip;
        _left = [.. Enumerable.Range(0, _strip.Lengths.Length).Select(_strip.Released)];
        if (addedTurns is not null)
            Bend(addedTurns);
        _curve = new ReleasedPoint[_strip.Along.Length];
        _curve[0] = new(0, Point.Origin, Angle.Zero, _left[0]);
        for (var e = 0; e < _strip.Lengths.Length; e++)
            _curve[e + 1] = PlaceIn(e, _strip.Lengths[e]);
    }

    /// <summary>What a pull left.</summary>
    /// <param name="pull">The pull, done.</param>
    /// <param name="end">How it ended.</param>
    /// <param name="assumedHardeningMpa">Hardening put in place of none [MPa], or null.</param>
    /// <param name="addedTurns">
    /// [m + 1] elastic turn that the rest of the panel adds before the first fold, over each facet and past the last one [rad]; null for
    /// none.
    /// </param>
    public static WrappedPanel Of(PullOver pull, WrapEnd end, double? assumedHardeningMpa, double[]? addedTurns = null)
    {
        var shape = end == WrapEnd.Complete ? new ReleasedShape(pull, addedTurns) : null;
        return new()
        {
            End = end,
            Pull = pull.Steps,
            Untouched = pull.Untouched,
            Curve = shape is null ? [] : [.. shape._curve.Select(TellPoint)],
            Facets = shape?.Facets() ?? [],
            MeanCurvature = Rounded.Of(shape?.MeanCurvature() ?? 0),
            Sweep = new(Rounded.Of(shape?._curve[^1].Heading.Radians ?? 0)),
            Form = new(
                new(Rounded.Of(pull.Given.Turn.Radians)),
                new(Rounded.Of(pull.Given.ClampTurn.Radians)),
                Rounded.Of(pull.Given.MomentPerWidth)),
            FoldPushPerWidth = Rounded.Of(pull.LargestPush),
            AssumedHardeningMpa = assumedHardeningMpa,
        };
    }

    /// <summary>What a pulled strip turns if it is let go by itself.</summary>
    /// <param name="pull">The pull, done.</param>
    /// <returns>[m + 1] before the first fold, over each facet and past the last one [rad].</returns>
    public static double[] FreeTurns(PullOver pull)
    {
        var bounds = BoundsOf(pull);
        var turns = new double[bounds.Length - 1];
        for (var k = 0; k < turns.Length; k++)
        {
            for (var e = 0; e < pull.Strip.Lengths.Length; e++)
                turns[k] += pull.Strip.Released(e) * Overlap(pull.Strip, e, bounds[k], bounds[k + 1]);
        }

        return turns;
    }

    private void Bend(double[] addedTurns)
    {
        var bounds = BoundsOf(_pull);
        for (var k = 0; k < addedTurns.Length; k++)
        {
            var length = bounds[k + 1] - bounds[k];
            for (var e = 0; e < _left.Length && length > 0; e++)
                _left[e] += addedTurns[k] / length * Overlap(_strip, e, bounds[k], bounds[k + 1]) / _strip.Lengths[e];
        }
    }

    private static double[] BoundsOf(PullOver pull)
    {
        var folds = pull.Circles.Form.Folds;
        var bounds = new double[folds + 2];
        for (var j = 0; j < folds; j++)
            bounds[j + 1] = Math.Max(bounds[j], pull.TouchedAt(j));
        bounds[^1] = pull.Strip.Along[^1];
        return bounds;
    }

    private static double Overlap(Strip strip, int e, double from, double to) =>
        Math.Max(0, Math.Min(strip.Along[e + 1], to) - Math.Max(strip.Along[e], from));

    private static ReleasedPoint TellPoint(ReleasedPoint point) => new(
        Rounded.Of(point.AlongMm), Rounded.Of(point.Position), new(Rounded.Of(point.Heading.Radians)), Rounded.Of(point.Curvature));

    private ReleasedPoint PlaceIn(int e, double inside)
    {
        var (from, k) = (_curve[e], _left[e]);
        var turn = k * inside;
        var chord = Math.Abs(turn) > 1e-8 ? inside * Math.Sin(turn / 2) / (turn / 2) : inside;
        return new(
            from.AlongMm + inside,
            from.Position + (chord * Point.Along(from.Heading.Radians + (turn / 2))),
            new(from.Heading.Radians + turn),
            k);
    }

    private ReleasedPoint PlaceAt(double along)
    {
        var found = Array.BinarySearch(_strip.Along, along);
        var e = Math.Clamp(found >= 0 ? found : ~found - 1, 0, _strip.Lengths.Length - 1);
        return PlaceIn(e, along - _strip.Along[e]);
    }

    private double MeanCurvature()
    {
        var middle = _pull.Circles.Form.MiddleFolds;
        var (from, to) = (_pull.TouchedAt(middle.From), _pull.TouchedAt(middle.To));
        if (!(to > from))
            return 0;
        return CircleFit.Curvature(from, to, along => PlaceAt(along).Position, FitPieces);
    }

    private ReleasedFacet[] Facets()
    {
        var facets = new ReleasedFacet[_pull.Circles.Form.FacetsMm.Count];
        for (var j = 0; j < facets.Length; j++)
            facets[j] = Facet(j + 1, PlaceAt(_pull.TouchedAt(j)), PlaceAt(_pull.TouchedAt(j + 1)));
        return facets;
    }

    // Off its own smooth arc the facet turns by a piecewise linear angle; the height is that angle's integral, its ends brought to 0.
    private ReleasedFacet Facet(int number, ReleasedPoint from, ReleasedPoint to)
    {
        var length = to.AlongMm - from.AlongMm;
        var mean = (to.Heading.Radians - from.Heading.Radians) / length;
        double area = 0;
        Walk((h, start, end) => area += h * (start + end) / 2);
        var tilt = area / length;
        double height = 0, lowest = 0, highest = 0, slope = 0;
        Walk((h, start, end) =>
        {
            double first = start - tilt, last = end - tilt;
            if (first * last < 0)
                Meet(height + (h * first * first / (first - last) / 2));
            height += h * (first + last) / 2;
            Meet(height);
            slope = Math.Max(slope, Math.Max(Math.Abs(first), Math.Abs(last)));
        });
        return new(number, Rounded.Of(highest - lowest), new(Rounded.Of(slope)), Rounded.Of(mean));

        void Meet(double y) => (lowest, highest) = (Math.Min(lowest, y), Math.Max(highest, y));

        void Walk(Action<double, double, double> piece)
        {
            var first = Array.BinarySearch(_strip.Along, from.AlongMm);
            var e = first >= 0 ? first : ~first - 1;
            double at = from.AlongMm, turned = 0;
            for (; e < _strip.Lengths.Length && at < to.AlongMm; e++)
            {
                var h = Math.Min(_strip.Along[e + 1], to.AlongMm) - at;
                var next = turned + ((_left[e] - mean) * h);
                piece(h, turned, next);
                (at, turned) = (at + h, next);
            }
        }
    }
}

/// <summary>What a facet left in the panel.</summary>
/// <param name="Number">Number of the fold before it, from 1.</param>
/// <param name="RippleMm">Peak to valley from the facet's own smooth arc [mm].</param>
/// <param name="Slope">Largest angle between the panel and that arc.</param>
/// <param name="MeanCurvature">Mean curvature left in the mid surface [1/mm].</param>
public readonly record struct ReleasedFacet(int Number, double RippleMm, Angle Slope, double MeanCurvature);

/// <summary>A place on the mid surface of the panel after it was let go; the clamp is at the origin, heading +x.</summary>
/// <param name="AlongMm">Distance from the clamp along the panel [mm].</param>
/// <param name="Position">Where it lies [mm].</param>
/// <param name="Heading">Direction of the panel there.</param>
/// <param name="Curvature">Curvature of the mid surface [1/mm].</param>
public readonly record struct ReleasedPoint(double AlongMm, Point Position, Angle Heading, double Curvature)
{
    /// <summary>Where the panel lies at a distance from the clamp.</summary>
    /// <param name="curve">[n] the panel, n at least 2.</param>
    /// <param name="alongMm">The distance [mm]; past the panel's end it goes on as it ends.</param>
    public static Point At(IReadOnlyList<ReleasedPoint> curve, double alongMm)
    {
        var i = curve.Count - 2;
        while (i > 0 && curve[i].AlongMm > alongMm)
            i--;
        var inside = alongMm - curve[i].AlongMm;
        return curve[i].Position + (inside * Point.Along(curve[i].Heading.Radians + (curve[i + 1].Curvature * inside / 2)));
    }
}
