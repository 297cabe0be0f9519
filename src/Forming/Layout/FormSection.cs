using Forming.Contact;
using Forming.Facets;
using Forming.Folds;

namespace Forming.Layout;

/// <summary>The form in section, from its fold centres.</summary>
internal static class FormSection
{
    /// <summary>Draws the section.</summary>
    /// <param name="polygon">Folds and facets.</param>
    /// <param name="curve">The contact curve.</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <param name="leadInMm">Lead-in, to the first mold line [mm].</param>
    /// <param name="leadOutMm">Lead-out, from the last mold line [mm].</param>
    public static Section Of(FormPolygon polygon, ContactCurve curve, FoldShape fold, double leadInMm, double leadOutMm)
    {
        var count = polygon.Angles.Length;
        var vertices = new Point[count + 2];
        var inside = new Point[(2 * count) + 2];
        var turn = 0.0;
        var heading = new Point(1, 0);
        for (var j = 0; j < count; j++)
        {
            inside[(2 * j) + 1] = polygon.Centres[j] - (fold.RadiusMm * heading.Left());
            vertices[j + 1] = polygon.Centres[j] - (fold.OuterRadiusMm * heading.Left()) + (fold.Setback(polygon.Angles[j]) * heading);
            turn += polygon.Angles[j];
            heading = Point.Along(turn);
            inside[(2 * j) + 2] = polygon.Centres[j] - (fold.RadiusMm * heading.Left());
        }

        var endHeading = heading;
        vertices[0] = vertices[1] - new Point(leadInMm, 0);
        vertices[^1] = vertices[^2] + (leadOutMm * endHeading);
        inside[0] = new(vertices[0].X, inside[1].Y);
        inside[^1] = inside[^2] + ((leadOutMm - fold.Setback(polygon.Angles[^1])) * endHeading);
        return new(vertices, Sampled(polygon, curve), inside);
    }

    /// <summary>Whether the form, with its leads, runs into itself.</summary>
    /// <param name="vertices">Its contact-side outline [mm].</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static bool CrossesItself(IReadOnlyList<Point> vertices, CancellationToken cancellation)
    {
        for (var i = 1; i < vertices.Count; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            for (var j = i + 2; j < vertices.Count; j++)
            {
                if (Cross(vertices[i - 1], vertices[i], vertices[j - 1], vertices[j]))
                    return true;
            }
        }

        return false;
    }

    private static bool Cross(Point a, Point b, Point c, Point d)
    {
        var ab = b - a;
        var cd = d - c;
        return ab.Cross(c - a) * ab.Cross(d - a) < 0 && cd.Cross(a - c) * cd.Cross(b - c) < 0;
    }

    // The curve at every fold and half-way between neighbours of one stretch.
    private static Point[] Sampled(FormPolygon polygon, ContactCurve curve)
    {
        var points = new List<Point>((2 * polygon.Places.Length) + (2 * curve.Runs.Count));
        Add(curve.Runs[0].Start.Position);
        var run = 0;
        var last = curve.Runs[0].Start.MidMm;
        foreach (var place in polygon.Places)
        {
            if (place.MidMm >= curve.Runs[run].End.MidMm && run + 1 < curve.Runs.Count && place.MidMm >= curve.Runs[run + 1].Start.MidMm)
            {
                Add(curve.Runs[run].End.Position);
                last = curve.Runs[++run].Start.MidMm;
                Add(curve.Runs[run].Start.Position);
            }

            if (place.MidMm > last)
                Add(curve.Runs[run].At(CurveMeasure.MidLength, ((place.MidMm + last) / 2) - curve.Runs[run].Start.MidMm).Position);
            Add(place.Position);
            last = place.MidMm;
        }

        Add(curve.End.Position);
        return [.. points];

        void Add(Point point)
        {
            if (points.Count == 0 || points[^1] != point)
                points.Add(point);
        }
    }
}

/// <summary>The form in section: contact side down, lead-in flat along the x axis, tangent point of the curve at (0, 0).</summary>
/// <param name="Vertices">[folds + 2] contact-side outline: end of the lead-in, every mold line, end of the lead-out [mm].</param>
/// <param name="ContactCurve">[n] points of the smooth contact curve [mm].</param>
/// <param name="InsideProfile">[2 folds + 2] inside face, tangent line to tangent line, for ribs and bulkheads [mm].</param>
public sealed record Section(
    IReadOnlyList<Point> Vertices,
    IReadOnlyList<Point> ContactCurve,
    IReadOnlyList<Point> InsideProfile);
