using Forming.Curves.Fitting;
using Forming.Results;

namespace Forming.Curves;

/// <summary>Every kind of curve as a chain of spans.</summary>
internal static class CurveSpans
{
    private const string Subject = "panel.curve";

    /// <summary>
    /// A stretch that turns further is a bend, however low over its chord: a short sharp bend is no noise. An assumption.
    /// </summary>
    private static readonly Angle MostFlatTurn = Angle.FromDegrees(5);

    /// <summary>The spans of a curve.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="offset">Distance from the face it was measured on to the mid surface [mm].</param>
    /// <returns>The spans, what was taken as flat, and the largest miss where the curve was fitted.</returns>
    /// <param name="thickness">The panel's thickness [mm].</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="NoSolutionException"><c>curve.too-tight</c>, <c>curve.reverses</c>, or what a fit of points says.</exception>
    public static (IReadOnlyList<CurveSpan> Spans, Angle TakenAsFlat, double? MissMm) Of(
        PanelCurve curve, double offset, double thickness, CancellationToken cancellation)
    {
        var (spans, miss) = curve switch
        {
            PointsCurve points => Fitted(points, offset, cancellation),
            SegmentsCurve chain => (Chain(chain, offset), null),
            _ => ([Single(curve, offset, Subject)], (double?)null),
        };
        foreach (var bend in spans.OfType<BendSpan>())
            CheckTightness(bend, thickness);
        // A fit of points has found its own flats, within the tolerance of the points.
        if (curve is PointsCurve)
            return (spans, Angle.Zero, miss);
        var (kept, takenAsFlat) = WithoutShallow(spans);
        return (kept, takenAsFlat, miss);
    }

    private static void CheckTightness(BendSpan bend, double thickness)
    {
        var inside = bend.TightestRadiusMm - (thickness / 2);
        if (inside >= WorkingLimits.LeastRadiusOverThickness * thickness)
            return;
        throw new NoSolutionException(
            "curve.too-tight",
            Subject,
            $"the inside radius goes down to {Figure.Length(inside)} in a sheet of {Figure.Length(thickness)}",
            $"an inside radius of at least {Figure.Length(WorkingLimits.LeastRadiusOverThickness * thickness)} everywhere");
    }

    /// <summary>One bend on the face it was measured on, for the end of a taper.</summary>
    /// <param name="curve">An arc, a progressive bend or part of an ellipse.</param>
    /// <param name="subject">Which input it is.</param>
    /// <exception cref="NoSolutionException"><c>taper.end-curve</c>: it is something else, or has a flat end.</exception>
    public static BendSpan TaperEnd(PanelCurve curve, string subject) =>
        BendOf(curve, subject) is { } bend && double.IsFinite(bend.GentlestRadiusMm) ? bend : throw new NoSolutionException(
            "taper.end-curve", subject, $"an end of a taper has to be a bend that turns left with a radius all along", $"an arc, a progressive bend with two radii, or part of an ellipse");

    /// <summary>One bend that turns left, on the face it was measured on; null where a curve is something else.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="subject">Which input it is.</param>
    public static BendSpan? BendOf(PanelCurve curve, string subject) =>
        curve is ArcCurve or ProgressiveCurve or EllipseCurve && Single(curve, 0, subject) is BendSpan bend && bend.Sweep > Angle.Zero
            ? bend
            : null;

    private static CurveSpan Single(PanelCurve curve, double offset, string subject) => curve switch
    {
        FlatCurve flat => new FlatSpan(flat.LengthMm),
        ArcCurve arc => new ArcSpan(arc.RadiusMm, arc.Sweep, offset),
        EllipseCurve ellipse => new EllipseSpan(
            ellipse.SemiAxisXMm, ellipse.SemiAxisYMm, ellipse.FromNormal, ellipse.ToNormal - ellipse.FromNormal, offset),
        ProgressiveCurve progressive => Progressive(progressive, offset, subject),
        _ => throw new ArgumentOutOfRangeException(nameof(curve)),
    };

    private static BendSpan Progressive(ProgressiveCurve curve, double offset, string subject) => curve switch
    {
        { StartRadiusMm: { } start, EndRadiusMm: { } end } when start == end => new ArcSpan(start, curve.Sweep, offset),
        { StartRadiusMm: null, EndRadiusMm: null } => throw new NoSolutionException(
            "curve.flat", subject, $"a progressive bend with both ends flat has no curvature", $"one end flat at most"),
        { Law: ProgressiveLaw.Clothoid } => new ClothoidSpan(
            1 / (curve.StartRadiusMm ?? double.PositiveInfinity), 1 / (curve.EndRadiusMm ?? double.PositiveInfinity), curve.Sweep, offset),
        { StartRadiusMm: { } start, EndRadiusMm: { } end } => curve.Law == ProgressiveLaw.Involute
            ? new InvoluteSpan(start, end, curve.Sweep, offset)
            : new LogarithmicSpan(start, end, curve.Sweep, offset),
        _ => throw new NoSolutionException(
            "curve.flat-end", subject, $"only a clothoid may have a flat end", $"a radius at both ends, or the law clothoid"),
    };

    private static List<CurveSpan> Chain(SegmentsCurve chain, double offset)
    {
        var spans = new List<CurveSpan>(chain.Segments.Count);
        var along = 0.0;
        for (var i = 0; i < chain.Segments.Count; i++)
        {
            var subject = $"{Subject}.segments.{i}";
            var span = Single(chain.Segments[i], offset, subject);
            if (span is BendSpan bend && bend.Sweep <= Angle.Zero)
            {
                throw new NoSolutionException(
                    "curve.reverses",
                    subject,
                    $"the curve turns the other way from {Figure.Length(along)} along it; it needs one form for each side",
                    $"bends that all turn the same way");
            }

            spans.Add(span);
            along += span.LengthMm;
        }

        return spans;
    }

    private static (IReadOnlyList<CurveSpan> Spans, double? MissMm) Fitted(PointsCurve curve, double offset, CancellationToken cancellation)
    {
        var fit = PointsFit.Solve(curve.Points, curve.ToleranceMm, cancellation);
        return ([.. fit.Pieces.Select(piece => OfPiece(piece, offset))], fit.LargestMissMm);
    }

    private static CurveSpan OfPiece(CurvaturePiece piece, double offset)
    {
        var mean = (piece.StartCurvature + piece.EndCurvature) / 2;
        if (mean == 0)
            return new FlatSpan(piece.LengthMm);
        var sweep = new Angle(piece.LengthMm * mean);
        return piece.StartCurvature == piece.EndCurvature
            ? new ArcSpan(1 / mean, sweep, offset)
            : new ClothoidSpan(piece.StartCurvature, piece.EndCurvature, sweep, offset);
    }

    // The springback of a nearly flat stretch would ask for folds that noise invented. Only whole stretches between flats are
    // looked at: a piece inside a longer one is as much of a bend as its neighbours.
    private static (IReadOnlyList<CurveSpan> Spans, Angle TakenAsFlat) WithoutShallow(IReadOnlyList<CurveSpan> spans)
    {
        var kept = new List<CurveSpan>(spans.Count);
        var takenAsFlat = Angle.Zero;
        for (int first = 0, next; first < spans.Count; first = next)
        {
            next = first + 1;
            if (spans[first] is not BendSpan)
            {
                kept.Add(spans[first]);
                continue;
            }

            while (next < spans.Count && spans[next] is BendSpan)
                next++;
            double length = 0, turn = 0;
            for (var i = first; i < next; i++)
                (length, turn) = (length + spans[i].LengthMm, turn + ((BendSpan)spans[i]).Sweep.Radians);
            if (turn < MostFlatTurn.Radians && SagittaMm(length, turn) < FinishedCurve.FlatSagittaMm)
            {
                kept.Add(new FlatSpan(length));
                takenAsFlat += new Angle(turn);
                continue;
            }

            for (var i = first; i < next; i++)
                kept.Add(spans[i]);
        }

        return (kept, takenAsFlat);
    }

    // As of an arc of the same length and turn.
    private static double SagittaMm(double length, double turn) => length / 2 * Math.Tan(turn / 4);
}
