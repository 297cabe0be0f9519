using Forming.Folds;
using Forming.Layout;
using Forming.Results;

namespace Forming.Inspection;

/// <summary>The polygon of a folded form from what was measured on it; leads, which nobody measures, are the planned ones.</summary>
public static class AsBuilt
{
    /// <summary>Flatter than this two lines have no crossing to speak of.</summary>
    public static readonly Angle LeastCrossing = Angle.FromDegrees(0.01);

    /// <summary>A fold of a form turns no further.</summary>
    public static readonly Angle MostFold = Angle.FromDegrees(150);

    /// <summary>Works it out.</summary>
    /// <param name="measured">What was measured.</param>
    /// <param name="planned">The form as it should be.</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <param name="path">Where the measurements are in the request.</param>
    /// <exception cref="NoSolutionException"><c>inspection.…</c>: no form could give these measurements.</exception>
    public static FoldedPolygon Of(Measurement measured, FoldedPolygon planned, FoldShape fold, string path = "measured")
    {
        if (measured.Points is { } points)
            return FromPoints(points, planned, path + ".points");
        double[] angles = [.. measured.Angles!.Select(angle => angle.Radians)];
        if (angles.Length != planned.Folds)
            throw WrongCount(angles, planned);
        var facets = planned.FlatsMm.Skip(1).Take(planned.Folds - 1).ToArray();
        if (measured.FacetsMm is { } given)
            facets = Checked(given, path + ".facets", angles, fold, (facet, _, _) => facet);
        else if (measured.SpacingsMm is { } spacings)
            facets = Checked(
                spacings,
                path + ".spacings",
                angles,
                fold,
                (spacing, before, after) =>
                    spacing - (fold.BendAllowance(before) + fold.BendAllowance(after)) / 2 + fold.Setback(before) + fold.Setback(after));
        return new([planned.FlatsMm[0], .. facets, planned.FlatsMm[^1]], angles);
    }

    private static double[] Checked(
        IReadOnlyList<double> lengths, string field, double[] angles, FoldShape fold, Func<double, double, double, double> toFacet)
    {
        CountOf(lengths, angles.Length, field);
        var facets = new double[lengths.Count];
        for (var j = 0; j < facets.Length; j++)
        {
            facets[j] = toFacet(lengths[j], angles[j], angles[j + 1]);
            var setbacks = fold.Setback(angles[j]) + fold.Setback(angles[j + 1]);
            if (facets[j] > setbacks)
                continue;
            throw new NoSolutionException(
                "inspection.facet-too-short",
                FormattableString.Invariant($"{field}[{j}]"),
                $"between folds {j + 1} and {j + 2} no straight part is left: the folds' arcs take {Figure.Length(lengths[j] - facets[j] + setbacks)} of it",
                $"more than {Figure.Length(lengths[j] - facets[j] + setbacks)}");
        }

        return facets;
    }

    /// <summary>Refuses a list of another length than there are facets.</summary>
    /// <param name="lengths">What was measured between folds.</param>
    /// <param name="folds">Number of folds.</param>
    /// <param name="field">Where it is in the request.</param>
    internal static void CountOf(IReadOnlyList<double> lengths, int folds, string field)
    {
        if (lengths.Count == folds - 1)
            return;
        throw new NoSolutionException(
            "inspection.wrong-count",
            field,
            $"{lengths.Count} were measured between {folds} folds",
            $"{folds - 1}, one between each fold and the next");
    }

    // Which fold seems to be missing, or one too many, by the alignment that agrees best.
    private static NoSolutionException WrongCount(double[] angles, FoldedPolygon planned)
    {
        var expected = planned.FoldAngles;
        FormattableString hint = (angles.Length - expected.Count) switch
        {
            -1 => $"; fold {Odd(expected, angles) + 1} seems to be missing",
            1 => $"; number {Odd(angles, expected) + 1} of the list seems to be one too many",
            _ => $"",
        };
        return new NoSolutionException(
            "inspection.wrong-count",
            "measured.angles",
            $"{angles.Length} angles were measured on a form of {expected.Count} folds{hint}",
            $"{expected.Count} angles, from the lead-in on; 0 for a fold that was not made");
    }

    private static int Odd(IReadOnlyList<double> longer, IReadOnlyList<double> shorter)
    {
        // Moving the gap on by one changes a single term.
        double miss = 0;
        for (var i = 0; i < shorter.Count; i++)
            miss += Math.Abs(longer[i + 1] - shorter[i]);
        var (best, least) = (0, miss);
        for (var i = 0; i < shorter.Count; i++)
        {
            miss += Math.Abs(longer[i] - shorter[i]) - Math.Abs(longer[i + 1] - shorter[i]);
            if (miss < least)
                (best, least) = (i + 1, miss);
        }

        return best;
    }

    private static FoldedPolygon FromPoints(IReadOnlyList<IReadOnlyList<Point>> points, FoldedPolygon planned, string path)
    {
        var n = planned.Folds;
        if (points.Count != n + 1)
        {
            throw new NoSolutionException(
                "inspection.wrong-count",
                path,
                $"points were taken on {points.Count} flats of a form of {n} folds, which has {n + 1}",
                $"{n + 1} lists: the lead-in, every facet, the lead-out");
        }

        var lines = points.Select((flat, j) => TemplateLine.Fit(flat) ?? throw new NoSolutionException(
            "inspection.no-line", PathOf(path, j), $"the points of flat {j + 1} fall together or show no direction", $"two points well apart, or more")).ToArray();
        var angles = new double[n];
        for (var i = 0; i < n; i++)
            angles[i] = Math.Atan2(lines[i].Along.Cross(lines[i + 1].Along), lines[i].Along.Dot(lines[i + 1].Along));
        RefuseFolds(angles, path);
        var vertices = new Point[n];
        for (var i = 0; i < n; i++)
        {
            var (before, after) = (lines[i], lines[i + 1]);
            var reach = (after.Through - before.Through).Cross(after.Along) / before.Along.Cross(after.Along);
            vertices[i] = before.Through + (reach * before.Along);
        }

        var flats = new double[n + 1];
        (flats[0], flats[n]) = (planned.FlatsMm[0], planned.FlatsMm[n]);
        for (var j = 1; j < n; j++)
        {
            flats[j] = lines[j].Along.Dot(vertices[j] - vertices[j - 1]);
            if (!(flats[j] > 0))
            {
                throw new NoSolutionException(
                    "inspection.order",
                    PathOf(path, j),
                    $"on flat {j + 1} the second mold line is {Figure.Length(-flats[j])} before the first",
                    $"the flats in their order from the lead-in, the points of each in the same direction");
            }
        }

        return new(flats, angles);
    }

    private static void RefuseFolds(double[] angles, string path)
    {
        if (angles.All(angle => angle < -LeastCrossing.Radians))
        {
            throw new NoSolutionException(
                "inspection.mirrored",
                path,
                $"every fold turns to the right: the template was read from the other end or the other face",
                $"points from the lead-in on, in a frame in which the form turns left");
        }

        for (var i = 0; i < angles.Length; i++)
        {
            if (Math.Abs(angles[i]) <= LeastCrossing.Radians)
            {
                throw new NoSolutionException(
                    "inspection.parallel-lines",
                    PathOf(path, i + 1),
                    $"flats {i + 1} and {i + 2} are parallel within {Figure.Angle(LeastCrossing.Radians)}: they have no crossing, so fold {i + 1} has no place",
                    $"a fold of more than {Figure.Angle(LeastCrossing.Radians)} between them, or angles with a 0 in place of points");
            }

            if (angles[i] < 0 || angles[i] > MostFold.Radians)
            {
                throw new NoSolutionException(
                    "inspection.impossible-fold",
                    PathOf(path, i + 1),
                    $"between flats {i + 1} and {i + 2} the template turns by {Figure.Angle(angles[i])}",
                    $"a left turn of at most {Figure.Angle(MostFold.Radians)}; look for points of a flat taken backwards, or flats swapped");
            }
        }
    }

    private static string PathOf(string path, int flat) => FormattableString.Invariant($"{path}[{flat}]");
}
