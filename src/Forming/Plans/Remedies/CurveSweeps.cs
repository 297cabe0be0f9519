using Forming.Curves;
using Forming.Jobs;

namespace Forming.Plans.Remedies;

/// <summary>Where a curve states how far its bends turn, as fields that may be changed.</summary>
internal static class CurveSweeps
{
    /// <summary>The fields that hold a sweep: one, each bend of a chain, both ends of a taper.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="part">Which part of a whole curve it is.</param>
    /// <returns>The field, what the sweep is counted from [°], and the sweep [°].</returns>
    public static IEnumerable<(JobField Field, double FromDegrees, double Degrees, CurvePart? Part)> Of(
        PanelCurve curve, CurvePart? part = null)
    {
        switch (curve)
        {
            case ArcCurve arc:
                yield return (JobField.CurveSweep, 0, arc.Sweep.Degrees, part);
                break;
            case ProgressiveCurve bend:
                yield return (JobField.CurveSweep, 0, bend.Sweep.Degrees, part);
                break;
            case EllipseCurve ellipse:
                yield return (
                    JobField.CurveToNormal, ellipse.FromNormal.Degrees, ellipse.ToNormal.Degrees - ellipse.FromNormal.Degrees, part);
                break;
            case SegmentsCurve chain:
                foreach (var sweep in chain.Segments.SelectMany((piece, i) => Of(piece, new(false, i))))
                    yield return sweep;
                break;
            case TaperCurve taper:
                foreach (var sweep in Of(taper.Near, new(true, 0)).Concat(Of(taper.Far, new(true, 1))))
                    yield return sweep;
                break;
        }
    }
}
