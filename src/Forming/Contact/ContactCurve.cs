using Forming.Curves;
using Forming.Springback;

namespace Forming.Contact;

/// <summary>The curve that the form has to offer: the panel's inside face under load, from which it springs back to the wanted curve.</summary>
/// <remarks>
/// Mid-surface length is kept, so the sweep under load is the integral of the formed curvature over it, and the contact radius is
/// <c>1/kappa_i - t/2</c>. Starts at (0, 0) heading +x; a flat before the first bend counts from there.
/// </remarks>
public sealed class ContactCurve
{
    private ContactCurve(IReadOnlyList<CurvedRun> runs, ContactFrame end, double thickness)
    {
        Runs = runs;
        End = end;
        ThicknessMm = thickness;
        Extremes = [.. runs.SelectMany(run => run.Extremes())];
    }

    /// <summary>The curved stretches in order; flats lie between, before and after them.</summary>
    public IReadOnlyList<CurvedRun> Runs { get; }

    /// <summary>Where the curve ends.</summary>
    public ContactFrame End { get; }

    /// <summary>The panel's thickness [mm].</summary>
    public double ThicknessMm { get; }

    /// <summary>Places among which the panel is bent the most and the least.</summary>
    public IReadOnlyList<ContactPoint> Extremes { get; }

    /// <summary>Sweep under load.</summary>
    public Angle Sweep => new(End.Turn);

    /// <summary>Mid-surface length [mm].</summary>
    public double MidMm => End.MidMm;

    /// <summary>Solves the contact curve point by point along the mid surface.</summary>
    /// <param name="finished">The finished curve on the mid surface.</param>
    /// <param name="rule">From finished to formed curvature.</param>
    /// <param name="thicknessMm">The panel's thickness [mm], &gt; 0.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static ContactCurve Solve(FinishedCurve finished, FormingRule rule, double thicknessMm, CancellationToken cancellation = default)
    {
        var runs = new List<CurvedRun>();
        var pieces = new List<ContactPiece>();
        var frame = default(ContactFrame);
        foreach (var span in finished.Spans)
        {
            if (span is BendSpan bend)
            {
                var midBefore = frame.MidMm + pieces.Sum(piece => piece.Mid);
                pieces.AddRange(Solve(bend, rule, thicknessMm, midBefore, cancellation));
                continue;
            }

            frame = CloseRun(frame).ThenFlat(span.LengthMm);
        }

        return new(runs, CloseRun(frame), thicknessMm);

        ContactFrame CloseRun(ContactFrame start)
        {
            if (pieces.Count == 0)
                return start;
            var run = new CurvedRun(pieces, start, thicknessMm);
            runs.Add(run);
            pieces.Clear();
            return run.End;
        }
    }

    private static IEnumerable<ContactPiece> Solve(
        BendSpan bend, FormingRule rule, double thickness, double midBefore, CancellationToken cancellation)
    {
        if (bend is not ArcSpan || !rule.KeepsArcs)
            return SeriesPiece.Solve(bend, rule, thickness, midBefore, cancellation);
        var curvature = 1 / bend.TightestRadiusMm;
        return [new CircularPiece(bend.LengthMm, curvature, rule.StateFor(curvature, midBefore), thickness)];
    }
}

/// <summary>A point of the contact curve, which touches the panel's inside face under load.</summary>
/// <param name="Turn">Tangent angle under load [rad].</param>
/// <param name="MidMm">Place along the panel's mid surface from the start of the curve [mm].</param>
/// <param name="Position">Place in section [mm].</param>
/// <param name="FinishedCurvature">Wanted mid-surface curvature here [1/mm].</param>
/// <param name="State">The panel's state under load.</param>
public readonly record struct ContactPoint(
    double Turn, double MidMm, Point Position, double FinishedCurvature, BentState State)
{
    /// <summary>Centre of a fold whose outside face touches the curve here.</summary>
    /// <param name="outerRadiusMm">Outside radius p of the fold [mm].</param>
    public Point FoldCentre(double outerRadiusMm) => Position + (outerRadiusMm * Point.Along(Turn).Left());

    /// <summary>Radius of the contact curve [mm]; infinite where the panel is flat under load.</summary>
    /// <param name="thicknessMm">The panel's thickness [mm].</param>
    public double RadiusMm(double thicknessMm) => (1 / State.Curvature) - (thicknessMm / 2);
}
