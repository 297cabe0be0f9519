using Forming.Results;

namespace Forming.Curves;

/// <summary>A finished curve taken to the panel's mid surface: flats and bends in order, all turning left.</summary>
/// <param name="Spans">[n] pieces, at least one of them a bend.</param>
/// <param name="LargestMissMm">Largest miss of a curve fitted to measured points [mm], or null for any other curve.</param>
public sealed record FinishedCurve(IReadOnlyList<CurveSpan> Spans, double? LargestMissMm)
{
    /// <summary>A whole curved stretch lower than this over its chord counts as flat [mm].</summary>
    public const double FlatSagittaMm = 0.1;

    /// <summary>Turn of the curved stretches so low over their chords that they count as flat.</summary>
    public Angle TakenAsFlat { get; init; }

    /// <summary>How other strips of a tapered panel compare with this, which is its middle one; null where all are alike.</summary>
    public RuledStrips? Strips { get; init; }

    /// <summary>Mid-surface length [mm].</summary>
    public double LengthMm { get; } = Spans.Sum(span => span.LengthMm);

    /// <summary>The bends, in order.</summary>
    public IReadOnlyList<BendSpan> Bends { get; } = [.. Spans.OfType<BendSpan>()];

    /// <summary>Flat before the first bend [mm].</summary>
    public double LeadingFlatMm { get; } = Spans.TakeWhile(span => span is FlatSpan).Sum(span => span.LengthMm);

    /// <summary>Flat after the last bend [mm].</summary>
    public double TrailingFlatMm { get; } = Spans.Reverse().TakeWhile(span => span is FlatSpan).Sum(span => span.LengthMm);

    /// <summary>Total turned angle.</summary>
    public Angle Sweep { get; } = new(Spans.OfType<BendSpan>().Sum(bend => bend.Sweep.Radians));

    /// <summary>Smallest mid-surface radius [mm].</summary>
    public double TightestRadiusMm => Bends.Min(bend => bend.TightestRadiusMm);

    /// <summary>Largest mid-surface radius of its bends [mm]; infinite at a flat end.</summary>
    public double GentlestRadiusMm => Bends.Max(bend => bend.GentlestRadiusMm);

    /// <summary>
    /// Takes a curve from the face it was measured on to the mid surface; of a taper the strip half-way along its rulings, square to them.
    /// </summary>
    /// <param name="curve">The curve.</param>
    /// <param name="surface">The face it was measured on.</param>
    /// <param name="thicknessMm">The panel's thickness [mm], &gt; 0.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="NoSolutionException">
    /// <c>curve.reverses</c>, <c>curve.flat</c>, <c>curve.too-tight</c>, a fit of measured points that does not come off, or what
    /// <see cref="RuledPanel.Of"/> throws.
    /// </exception>
    public static FinishedCurve On(PanelCurve curve, Surface surface, double thicknessMm, CancellationToken cancellation = default)
    {
        if (curve is TaperCurve taper)
            return RuledStrips.MiddleOf(RuledPanel.Of(taper, surface, thicknessMm));
        var (spans, takenAsFlat, miss) = CurveSpans.Of(curve, surface.InsideOfMidMm(thicknessMm), thicknessMm, cancellation);
        if (!spans.OfType<BendSpan>().Any())
        {
            throw new NoSolutionException(
                "curve.flat", "panel.curve", $"nowhere does the curve rise {Figure.Length(FlatSagittaMm)} above its chord: it counts as flat");
        }

        return new(spans, miss) { TakenAsFlat = takenAsFlat };
    }
}

/// <summary>On which face of the panel a curve was measured.</summary>
public enum Surface
{
    /// <summary>The concave face, which lies on the form.</summary>
    Inside,

    /// <summary>Half-way through the thickness.</summary>
    Mid,

    /// <summary>The convex face.</summary>
    Outside,
}

/// <summary>Where the faces of a sheet lie.</summary>
public static class SurfacePlace
{
    /// <summary>How far a face lies from the mid surface, towards the centre of the bend.</summary>
    /// <param name="surface">The face.</param>
    /// <param name="thicknessMm">Thickness of the sheet [mm].</param>
    /// <returns>The distance [mm]; negative on the outside.</returns>
    public static double InsideOfMidMm(this Surface surface, double thicknessMm) => surface switch
    {
        Surface.Inside => thicknessMm / 2,
        Surface.Outside => -thicknessMm / 2,
        _ => 0,
    };
}
