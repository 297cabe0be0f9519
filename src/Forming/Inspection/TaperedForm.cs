using Forming.Layout;
using Forming.Plans;
using Forming.Results;

namespace Forming.Inspection;

/// <summary>A planned form whose folds are not parallel, and what a shop measures along its two edges.</summary>
/// <param name="Form">The form, facets hinged at its mold lines.</param>
/// <param name="Near">The near edge.</param>
/// <param name="Far">The far edge.</param>
public sealed record TaperedForm(HingedForm Form, TaperedEdge Near, TaperedEdge Far)
{
    /// <summary>Of a plan.</summary>
    /// <param name="plan">The plan of a tapered form.</param>
    /// <param name="leadInMm">Its lead-in [mm].</param>
    /// <param name="leadOutMm">Its lead-out [mm].</param>
    public static TaperedForm Of(FormPlan plan, double leadInMm, double leadOutMm)
    {
        var stations = plan.Form.Stations;
        var form = plan.Taper!.Solid.Hinged(stations);
        return new(
            form,
            EdgeOf(line => line.FacetNearMm, line => line.Near),
            EdgeOf(line => line.FacetFarMm, line => line.Far));

        TaperedEdge EdgeOf(Func<FoldLine, double> facet, Func<FoldLine, Point> end)
        {
            FoldLine[] lines = [.. stations.Select(station => station.Line!)];
            return new(
                new([leadInMm, .. lines.SkipLast(1).Select(facet), leadOutMm], form.FoldAngles),
                [.. lines.Zip(lines.Skip(1), (one, next) => (end(next) - end(one)).Length)]);
        }
    }

    /// <summary>The form as measured.</summary>
    /// <param name="measured">What was measured at the near end, with what was measured at the far one.</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <exception cref="NoSolutionException"><c>inspection.…</c>: no form could give these measurements.</exception>
    public BuiltTaper Built(Measurement measured, Folds.FoldShape fold)
    {
        var far = (measured.Far ?? new()) with { Angles = measured.Angles };
        FoldedPolygon? atNear = null, atFar = null;
        if (measured.Angles is not null || measured.Points is not null)
            atNear = Edge(Near, measured, "measured");
        if (measured.Angles is not null || far.Points is not null)
            atFar = Edge(Far, far, "measured.far");
        var near = measured.Points is null ? null : new TemplateEdge(Form, isFar: false);
        var wide = far.Points is null ? null : new TemplateEdge(Form, isFar: true);
        if (near is not null)
            atNear = near.Dihedral(atNear!, Near.Listed, "measured.points");
        if (wide is not null)
            atFar = wide.Dihedral(atFar!, Far.Listed, "measured.far.points");
        IReadOnlyList<double> angles = measured.Angles is not null || wide is null
            ? atNear!.FoldAngles
            : near is null ? atFar!.FoldAngles : Joined(atNear!, atFar!);
        // Where nothing was measured along an edge, its facets are as planned.
        FoldedPolygon nearEdge = new((atNear ?? Near.Listed).FlatsMm, angles), farEdge = new((atFar ?? Far.Listed).FlatsMm, angles);
        var built = Form.WithFacets(Facets(nearEdge, Near, isFar: false), Facets(farEdge, Far, isFar: true)) with { FoldAngles = angles };
        return new(built, nearEdge, farEdge)
        {
            LargestGap = near is null || wide is null
                ? Angle.Zero
                : new(atNear!.FoldAngles.Zip(atFar!.FoldAngles, (a, b) => Math.Abs(a - b)).Max()),
        };

        FoldedPolygon Edge(TaperedEdge edge, Measurement along, string path)
        {
            var spacings = along.SpacingsMm is { } given ? edge.AsParallel(given, fold, path) : null;
            return AsBuilt.Of(along with { SpacingsMm = spacings }, edge.Listed, fold, path);
        }

        double[] Facets(FoldedPolygon edge, TaperedEdge planned, bool isFar)
        {
            var flats = Form.FlatsMm(isFar);
            return [.. Enumerable.Range(1, Form.Folds - 1).Select(j => flats[j] + edge.FlatsMm[j] - planned.Listed.FlatsMm[j])];
        }
    }

    // A reading tells an angle the better the wider its flats are: both ends by their weights.
    private double[] Joined(FoldedPolygon near, FoldedPolygon far)
    {
        double[] one = Form.FlatsMm(isFar: false), other = Form.FlatsMm(isFar: true);
        return [.. Enumerable.Range(0, Form.Folds).Select(i =>
        {
            double a = Weight(one, i), b = Weight(other, i);
            return ((a * near.FoldAngles[i]) + (b * far.FoldAngles[i])) / (a + b);
        })];

        static double Weight(double[] flats, int i) => 1 / ((1 / (flats[i] * flats[i])) + (1 / (flats[i + 1] * flats[i + 1])));
    }
}

/// <summary>One edge of a tapered form as its plan lists it.</summary>
/// <param name="Listed">Lead-in, facets and lead-out, straight part and setbacks, with the fold angles.</param>
/// <param name="SpacingsMm">[n - 1] between neighbouring fold centre lines on the flat blank [mm].</param>
public sealed record TaperedEdge(FoldedPolygon Listed, IReadOnlyList<double> SpacingsMm)
{
    /// <summary>Spacings as they would be where folds are parallel: what is off stays off.</summary>
    internal double[] AsParallel(IReadOnlyList<double> spacings, Folds.FoldShape fold, string path)
    {
        AsBuilt.CountOf(spacings, Listed.Folds, path + ".spacings");
        return [.. spacings.Select((spacing, j) =>
        {
            double before = Listed.FoldAngles[j], after = Listed.FoldAngles[j + 1];
            return spacing - SpacingsMm[j] + Listed.FlatsMm[j + 1] + ((fold.BendAllowance(before) + fold.BendAllowance(after)) / 2)
                - fold.Setback(before) - fold.Setback(after);
        })];
    }
}

/// <summary>A tapered form as it was measured.</summary>
/// <param name="Form">The form.</param>
/// <param name="Near">Lead-in, facets and lead-out along its near edge, as a plan lists them.</param>
/// <param name="Far">The same along its far edge.</param>
public sealed record BuiltTaper(HingedForm Form, FoldedPolygon Near, FoldedPolygon Far)
{
    /// <summary>Largest difference of one fold between templates at both ends; 0 where only one end was read.</summary>
    public Angle LargestGap { get; init; }
}
