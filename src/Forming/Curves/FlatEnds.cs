using System.Globalization;
using Forming.Results;

namespace Forming.Curves;

/// <summary>Ends of a taper that start or end flat: what is nearly flat there goes to the lead.</summary>
/// <remarks>
/// Along a clothoid the square of the curvature grows evenly with the turned angle φ, so what is cut off a flat end by a turn of φ leaves
/// a radius of <c>R √(Φ/φ)</c>. Rulings join equal tangent angles, so both ends of the taper are cut by the same turn.
/// </remarks>
internal static class FlatEnds
{
    /// <summary>
    /// Radius where the bend then starts, in radii of its other end: so far a series along the sweep stays short, and the turn that is cut
    /// off, 1/225 of the sweep, is below half a degree for a right angle.
    /// </summary>
    private const double MostRadii = 15;

    /// <summary>Refuses a taper with a flat end and says how to cut it off.</summary>
    /// <param name="taper">The taper.</param>
    /// <exception cref="NoSolutionException"><c>taper.end-curve</c>, with changes that give each end a radius.</exception>
    public static void Refuse(TaperCurve taper)
    {
        PanelCurve[] ends = [taper.Near, taper.Far];
        var atStart = ends.Any(StartsFlat);
        if (!atStart && !ends.Any(EndsFlat))
            return;
        var isFar = !(StartsFlat(taper.Near) || EndsFlat(taper.Near));
        FormattableString why = $"the {(isFar ? "far" : "near")} curve {(atStart ? "starts" : "ends")} flat, and springback is balanced along each fold by the radii at both its ends";
        // What is refused for another reason first is not worth a change.
        if (CurveSpans.BendOf(taper.Near, "panel.curve.near") is not { } near
            || CurveSpans.BendOf(taper.Far, "panel.curve.far") is not { } far
            || Math.Abs((near.Sweep - far.Sweep).Radians) > 1e-9)
        {
            throw new NoSolutionException("taper.end-curve", Subject(isFar), why, $"a radius at that end, and the same sweep at both");
        }

        var cut = near.Sweep.Radians / (MostRadii * MostRadii);
        var (from, to) = (atStart ? cut : 0, near.Sweep.Radians - (ends.Any(EndsFlat) ? cut : 0));
        var flatMm = new[] { (Bend: near, Curve: taper.Near), (Bend: far, Curve: taper.Far) }
            .Where(end => StartsFlat(end.Curve) || EndsFlat(end.Curve))
            .Max(end => end.Bend.LengthMm / MostRadii);
        throw new NoSolutionException(
            "taper.end-curve",
            Subject(isFar),
            why,
            $"a radius at that end",
            new(
                $"start the bend where it has a radius: the {Figure.Length(flatMm)} next to the flat, which turn {Figure.Angle(cut)}, count as lead",
                [.. Cut(taper.Near, near, "near", from, to), .. Cut(taper.Far, far, "far", from, to)]));
    }

    private static string Subject(bool isFar) => isFar ? "panel.curve.far" : "panel.curve.near";

    private static bool StartsFlat(PanelCurve curve) => curve is ProgressiveCurve { StartRadiusMm: null, EndRadiusMm: not null };

    private static bool EndsFlat(PanelCurve curve) => curve is ProgressiveCurve { StartRadiusMm: not null, EndRadiusMm: null };

    private static IEnumerable<InputChange> Cut(PanelCurve curve, BendSpan bend, string end, double from, double to)
    {
        if (curve is EllipseCurve ellipse)
        {
            yield return Change("fromNormal", ellipse.FromNormal.Radians + from, Quantity.Angle);
            yield return Change("toNormal", ellipse.FromNormal.Radians + to, Quantity.Angle);
            yield break;
        }

        if (curve is ProgressiveCurve)
        {
            if (from > 0)
                yield return Change("startRadius", bend.RadiusAtTurn(from), Quantity.Length);
            if (to < bend.Sweep.Radians)
                yield return Change("endRadius", bend.RadiusAtTurn(to), Quantity.Length);
        }

        yield return Change("sweep", to - from, Quantity.Angle);

        InputChange Change(string field, double value, Quantity quantity) =>
            new(string.Create(CultureInfo.InvariantCulture, $"panel.curve.{end}.{field}"), value, quantity);
    }
}
