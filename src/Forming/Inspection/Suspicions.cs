using Forming.Layout;
using Forming.Results;

namespace Forming.Inspection;

/// <summary>A measurement that can be calculated with but is hard to believe.</summary>
/// <param name="Subject">Which, as a path of contract field names.</param>
/// <param name="Code">Stable code.</param>
/// <param name="Text">Why; its arguments are values.</param>
public sealed record Suspicion(string Subject, string Code, FormattableString Text);

/// <summary>Finds measurements that are hard to believe. All bounds are assumptions, and each reason states its own.</summary>
public static class Suspicions
{
    /// <summary>Error of the sum of all folds, for the root of their count: six standard deviations of a fold made to ±1°.</summary>
    private static readonly double PerRootFold = Angle.FromDegrees(3).Radians;

    /// <summary>Error of one fold: ten standard deviations of a fold made to ±1°.</summary>
    private static readonly double FarOff = Angle.FromDegrees(5).Radians;

    /// <summary>Apart by this, folds differ; by half of it, they agree: four and two standard deviations of a fold made to ±1°.</summary>
    private static readonly double Differs = Angle.FromDegrees(2).Radians;

    /// <summary>Below this share of its angle a fold was not made: no setting of the stop is so far out.</summary>
    private const double LeastOfMissing = 0.25;

    /// <summary>Above this share of its angle a fold may be two made at one line, which would be 2 if both were exact.</summary>
    private const double LeastOfDouble = 1.6;

    /// <summary>Error of a facet as a share of it: a misread digit or a fold on the wrong mark is more.</summary>
    private const double FarFacetShare = 0.25;

    /// <summary>Error of a narrow facet [mm]: five standard deviations of the distance of two marks made to ±0.8 mm.</summary>
    private const double FarFacetMm = 3;

    /// <summary>Distance of a point from the line of its flat [mm]: what a rule or a template is read to.</summary>
    private const double RoughLineMm = 0.5;

    /// <summary>Looks at what was measured.</summary>
    /// <param name="measured">What was measured.</param>
    /// <param name="built">The polygon it gives.</param>
    /// <param name="planned">The form as it should be.</param>
    public static IReadOnlyList<Suspicion> Of(Measurement measured, FoldedPolygon built, FoldedPolygon planned)
    {
        var found = new List<Suspicion>();
        Angles(found, measured.Points is null ? "measured.angles" : "measured.points", built, planned);
        Facets(found, "measured.", measured, built, planned);
        Lines(found, "measured.", measured);
        return found;
    }

    /// <summary>Looks at what was measured where folds are not parallel.</summary>
    /// <param name="measured">What was measured.</param>
    /// <param name="built">The form it gives.</param>
    /// <param name="planned">The form as it should be.</param>
    public static IReadOnlyList<Suspicion> Of(Measurement measured, BuiltTaper built, TaperedForm planned)
    {
        var found = new List<Suspicion>();
        var whole = measured switch { { Angles: not null } => "measured.angles", { Points: not null } => "measured.points", _ => "measured.far.points" };
        Angles(found, whole, built.Near, planned.Near.Listed);
        if (built.LargestGap.Radians > Differs)
            found.Add(new("measured.far.points", "ends-differ", $"at one fold the templates at both ends differ by {Figure.Angle(built.LargestGap.Radians)}: a misread point, a template not along the edge, or a flat that is not flat"));
        Facets(found, "measured.", measured, built.Near, planned.Near.Listed);
        Lines(found, "measured.", measured);
        if (measured.Far is { } far)
        {
            Facets(found, "measured.far.", far, built.Far, planned.Far.Listed);
            Lines(found, "measured.far.", far);
        }

        return found;
    }

    private static void Angles(List<Suspicion> found, string whole, FoldedPolygon built, FoldedPolygon planned)
    {
        Sum(found, whole, built, planned);
        if (!Reversed(found, whole, built.FoldAngles, planned.FoldAngles))
            Single(found, whole, built.FoldAngles, planned.FoldAngles);
    }

    private static void Sum(List<Suspicion> found, string whole, FoldedPolygon built, FoldedPolygon planned)
    {
        var off = built.Sweep - planned.Sweep;
        var bound = PerRootFold * Math.Sqrt(planned.Folds);
        if (Math.Abs(off) > bound)
            found.Add(new(whole, "sum-far-off", $"the folds add up to {Figure.Angle(built.Sweep)} in place of {Figure.Angle(planned.Sweep)}: {Figure.Angle(off)} off, where {Figure.Angle(bound)} would be six standard deviations of folds made to ±1°"));
    }

    private static bool Reversed(List<Suspicion> found, string whole, IReadOnlyList<double> angles, IReadOnlyList<double> wanted)
    {
        double straight = 0, backwards = 0;
        for (var i = 0; i < angles.Count; i++)
        {
            straight += Math.Abs(angles[i] - wanted[i]);
            backwards += Math.Abs(angles[^(i + 1)] - wanted[i]);
        }

        if (!(straight > Differs / 2 * angles.Count && backwards < straight / 2))
            return false;
        found.Add(new(whole, "order-reversed", $"read from the other end the folds agree within {Figure.Angle(backwards / angles.Count)} on the average, as given within {Figure.Angle(straight / angles.Count)}: the list may be reversed"));
        return true;
    }

    private static void Single(List<Suspicion> found, string whole, IReadOnlyList<double> angles, IReadOnlyList<double> wanted)
    {
        for (var i = 0; i < angles.Count; i++)
        {
            var off = angles[i] - wanted[i];
            if (i + 1 < angles.Count && IsSwapped(i))
            {
                found.Add(new(PathOf(i), "swapped", $"folds {i + 1} and {i + 2} agree with the plan the other way round: they may be swapped"));
                i++;
            }
            else if (angles[i] < LeastOfMissing * wanted[i])
            {
                var twin = IsDouble(i - 1) ? i - 1 : IsDouble(i + 1) ? i + 1 : -1;
                found.Add(twin < 0
                    ? new(PathOf(i), "missing-fold", $"fold {i + 1} turns {Figure.Angle(angles[i])} in place of {Figure.Angle(wanted[i])}: it was not made, or not measured")
                    : new(PathOf(i), "missing-fold", $"fold {i + 1} turns {Figure.Angle(angles[i])} in place of {Figure.Angle(wanted[i])}, and fold {twin + 1} beside it {Figure.Angle(angles[twin])} in place of {Figure.Angle(wanted[twin])}: both may have been made at one line"));
            }
            else if (Math.Abs(off) > FarOff && !(IsDouble(i) && (IsMissing(i - 1) || IsMissing(i + 1))))
            {
                found.Add(new(PathOf(i), "angle-far-off", $"fold {i + 1} turns {Figure.Angle(angles[i])} in place of {Figure.Angle(wanted[i])}: more than {Figure.Angle(FarOff)} off, measure it again"));
            }
        }

        bool IsMissing(int i) => i >= 0 && i < angles.Count && angles[i] < LeastOfMissing * wanted[i];

        bool IsDouble(int i) => i >= 0 && i < angles.Count && angles[i] > LeastOfDouble * wanted[i];

        bool IsSwapped(int i) =>
            Math.Abs(angles[i] - wanted[i]) > Differs && Math.Abs(angles[i + 1] - wanted[i + 1]) > Differs
            && Math.Abs(angles[i] - wanted[i + 1]) < Differs / 2 && Math.Abs(angles[i + 1] - wanted[i]) < Differs / 2;

        // Points are listed by flats, and a fold lies before its flat.
        string PathOf(int i) => FormattableString.Invariant($"{whole}[{(whole == "measured.angles" ? i : i + 1)}]");
    }

    private static void Facets(List<Suspicion> found, string path, Measurement measured, FoldedPolygon built, FoldedPolygon planned)
    {
        var (field, shift) = measured switch
        {
            { FacetsMm: not null } => ("facets", 1),
            { SpacingsMm: not null } => ("spacings", 1),
            { Points: not null } => ("points", 0),
            _ => ("", 0),
        };
        if (field.Length == 0)
            return;
        for (var j = 1; j < planned.Folds; j++)
        {
            var (length, wanted) = (built.FlatsMm[j], planned.FlatsMm[j]);
            var bound = Math.Max(FarFacetMm, FarFacetShare * wanted);
            if (Math.Abs(length - wanted) > bound)
                found.Add(new(FormattableString.Invariant($"{path}{field}[{j - shift}]"), "facet-far-off", $"the facet after fold {j} is {Figure.Length(length)} in place of {Figure.Length(wanted)}: more than {Figure.Length(bound)} off, measure it again"));
        }
    }

    private static void Lines(List<Suspicion> found, string path, Measurement measured)
    {
        for (var j = 0; j < measured.Points?.Count; j++)
        {
            if (TemplateLine.Fit(measured.Points[j]) is { LargestMissMm: > RoughLineMm } line)
                found.Add(new(FormattableString.Invariant($"{path}points[{j}]"), "not-straight", $"a point lies {Figure.Length(line.LargestMissMm)} off the straight line through flat {j + 1}: a misread point, a point of the next flat, or a flat that is not flat"));
        }
    }
}
