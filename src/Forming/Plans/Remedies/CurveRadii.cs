using Forming.Curves;
using Forming.Jobs;

namespace Forming.Plans.Remedies;

/// <summary>The radii that a curve states, as fields that may be changed.</summary>
internal static class CurveRadii
{
    /// <summary>Every radius; an ellipse has that of its tighter end.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="part">Which part of a whole curve it is.</param>
    public static IEnumerable<(JobField Field, double Mm, CurvePart? Part)> Of(PanelCurve curve, CurvePart? part = null)
    {
        switch (curve)
        {
            case ArcCurve arc:
                yield return (JobField.CurveRadius, arc.RadiusMm, part);
                break;
            case ProgressiveCurve bend:
                if (bend.StartRadiusMm is { } start)
                    yield return (JobField.CurveStartRadius, start, part);
                if (bend.EndRadiusMm is { } end)
                    yield return (JobField.CurveEndRadius, end, part);
                break;
            case EllipseCurve ellipse:
                yield return (JobField.CurveSemiAxisX, TightestOf(ellipse), part);
                break;
            case SegmentsCurve chain:
                foreach (var radius in chain.Segments.SelectMany((piece, i) => Of(piece, new(false, i))))
                    yield return radius;
                break;
            case TaperCurve taper:
                foreach (var radius in Of(taper.Near, new(true, 0)).Concat(Of(taper.Far, new(true, 1))))
                    yield return radius;
                break;
        }
    }

    /// <summary>Changes that open every tighter bend to a radius.</summary>
    /// <param name="job">What was asked.</param>
    /// <param name="curve">The curve.</param>
    /// <param name="radius">The radius in the caller's unit.</param>
    public static IReadOnlyList<JobChange> AtLeast(FormJob job, PanelCurve curve, double radius) =>
        [.. Of(curve).Where(given => given.Mm < job.Units.ToMm(radius)).SelectMany(given => Opened(job, curve, given, radius))];

    private static IEnumerable<JobChange> Opened(
        FormJob job, PanelCurve curve, (JobField Field, double Mm, CurvePart? Part) given, double radius)
    {
        if (given.Field != JobField.CurveSemiAxisX)
        {
            yield return new(given.Field, radius, Part: given.Part);
            yield break;
        }

        // Of one shape, larger.
        var ellipse = (EllipseCurve)PieceOf(curve, given.Part);
        var scale = job.Units.ToMm(radius) / given.Mm;
        yield return new(JobField.CurveSemiAxisX, Math.Round(job.Units.FromMm(ellipse.SemiAxisXMm * scale), 3), Part: given.Part);
        yield return new(JobField.CurveSemiAxisY, Math.Round(job.Units.FromMm(ellipse.SemiAxisYMm * scale), 3), Part: given.Part);
    }

    private static PanelCurve PieceOf(PanelCurve curve, CurvePart? part) => (curve, part?.Index) switch
    {
        (SegmentsCurve chain, { } i) => chain.Segments[i],
        (TaperCurve taper, 0) => taper.Near,
        (TaperCurve taper, _) => taper.Far,
        _ => curve,
    };

    private static double TightestOf(EllipseCurve ellipse)
    {
        var (a, b) = (ellipse.SemiAxisXMm, ellipse.SemiAxisYMm);
        return Math.Min(a * a / b, b * b / a);
    }
}
