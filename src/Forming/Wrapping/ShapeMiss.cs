using Forming.Numerics;
using Forming.Prediction;

namespace Forming.Wrapping;

/// <summary>
/// How the panel let go lies to the wanted one, laid over it as well as it goes: the curve and a piece of the flats beside it.
/// </summary>
/// <remarks>
/// The flats count so that the curve meets them: left to themselves, they end up several millimetres off a curve that fits by a tenth.
/// </remarks>
internal sealed class ShapeMiss
{
    private const int Intervals = 32;

    /// <summary>A flat counts to at most this share of the curve's length.</summary>
    private const double FlatShare = 0.2;

    private readonly double[] _along;
    private readonly Point[] _aims;

    /// <summary>Looks at the wanted panel.</summary>
    /// <param name="wanted">The wanted curve.</param>
    /// <param name="leadInMm">The panel's flat before the curve [mm].</param>
    /// <param name="leverMm">How far the panel goes on past the curve to the hand [mm].</param>
    public ShapeMiss(WantedCurve wanted, double leadInMm, double leverMm)
    {
        double before = Math.Min(leadInMm, FlatShare * wanted.LengthMm), after = Math.Min(leverMm, FlatShare * wanted.LengthMm);
        var whole = before + wanted.LengthMm + after;
        _along = [.. Enumerable.Range(0, Intervals + 1).Select(i => (whole * i / Intervals) - before)];
        _aims = [.. _along.Select(along => along < 0 ? new(along, 0) : wanted.At(along).Position)];
    }

    /// <summary>How far the panel lies off, place by place.</summary>
    /// <param name="curve">The panel let go; the first tangent point is its origin.</param>
    /// <returns>[n] from the wanted place to the panel's [mm].</returns>
    public Point[] Of(IReadOnlyList<ReleasedPoint> curve) => RigidFit.Of(_aims, PlacesOn(curve)).Misses;

    private Point[] PlacesOn(IReadOnlyList<ReleasedPoint> curve)
    {
        var places = new Point[_along.Length];
        var before = 0;
        for (var i = 0; i < places.Length; i++)
        {
            if (_along[i] < curve[0].AlongMm)
            {
                places[i] = new(_along[i], 0);
                continue;
            }

            while (before + 2 < curve.Count && curve[before + 1].AlongMm < _along[i])
                before++;
            var from = curve[before];
            var inside = _along[i] - from.AlongMm;
            places[i] = from.Position + (inside * Point.Along(from.Heading.Radians + (curve[before + 1].Curvature * inside / 2)));
        }

        return places;
    }
}
