using FluentValidation;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming.Curves;

namespace FormApi.Features.Forms;

/// <summary>Where a curve is.</summary>
internal enum CurvePlace
{
    /// <summary>It is the whole curve.</summary>
    Whole,

    /// <summary>It is a piece of a chain.</summary>
    InChain,

    /// <summary>It is an end of a taper.</summary>
    TaperEnd,
}

/// <summary>What a curve must satisfy, by its type and where it is.</summary>
internal sealed class CurveInputRules : AbstractValidator<CurveInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    /// <param name="place">Where the curve is.</param>
    public CurveInputRules(UnitSystem units, CurvePlace place)
    {
        var inChain = place == CurvePlace.InChain;
        RuleFor(curve => curve).SetInheritanceValidator(kinds =>
        {
            kinds.Add(new ArcInputRules(units, inChain));
            kinds.Add(new ProgressiveInputRules(units, inChain));
            kinds.Add(new EllipseInputRules(units, inChain));
            if (inChain)
                kinds.Add(new FlatInputRules(units));
            if (place != CurvePlace.Whole)
                return;
            kinds.Add(new PointsInputRules(units));
            kinds.Add(new SegmentsInputRules(units));
            kinds.Add(new TaperInputRules(units));
        });
        RuleFor(curve => curve).Custom((curve, context) =>
        {
            switch (place, curve)
            {
                case (CurvePlace.Whole, FlatInput):
                    context.FaultAt("type", "not-applicable", "A flat alone is not a curve.", "only inside segments");
                    break;
                case (CurvePlace.InChain, PointsInput or SegmentsInput or TaperInput):
                    context.FaultAt("type", "not-applicable", "A chain cannot hold a chain, a taper or measured points.", "arc, progressive, ellipse or flat");
                    break;
                case (CurvePlace.TaperEnd, not (ArcInput or ProgressiveInput or EllipseInput)):
                    context.FaultAt("type", "not-applicable", "An end of a taper is a single bend.", "arc, progressive or ellipse");
                    break;
            }
        });
    }

    /// <summary>A bend in a chain may state any turn but none; reversals are refused by the library with their place.</summary>
    /// <typeparam name="T">The record being checked.</typeparam>
    /// <typeparam name="TNumber">Type of the number, nullable or not.</typeparam>
    /// <param name="rule">The rule of the field that states the turn.</param>
    /// <param name="turn">The turn [°].</param>
    internal static void MustTurn<T, TNumber>(IRuleBuilder<T, TNumber> rule, Func<T, double?> turn) => rule
        .Must((bend, _) => turn(bend) != 0)
        .Else("out-of-range", "A bend that does not turn is a flat.", "any angle but 0°");
}

/// <summary>What an arc must satisfy.</summary>
internal sealed class ArcInputRules : AbstractValidator<ArcInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    /// <param name="inChain">Whether the arc is a piece of a chain.</param>
    public ArcInputRules(UnitSystem units, bool inChain)
    {
        RuleFor(arc => arc.Radius).Within(Ranges.CurveRadius, units);
        RuleFor(arc => arc.Sweep).Within(inChain ? Ranges.SegmentSweep : Ranges.Sweep, units);
        RuleFor(arc => arc.Diameter).Within(Ranges.CurveDiameter, units);
        RuleFor(arc => arc.Chord).Within(Ranges.FlatSegment, units);
        RuleFor(arc => arc.Rise).Within(Ranges.FlatSegment, units);
        RuleFor(arc => arc.ArcLength).Within(Ranges.FlatSegment, units);
        if (inChain)
            CurveInputRules.MustTurn(RuleFor(arc => arc.Sweep), arc => arc.Sweep);
        When(arc => arc.Through is not null, () =>
        {
            RuleFor(arc => arc.Through).Must(points => points!.Count == 3)
                .Else("out-of-range", "An arc goes through three points.", "three points");
            RuleFor(arc => arc.Through).Must(points => points!.All(point => InRange(point.First) && InRange(point.Second)))
                .Else("out-of-range", "A coordinate is outside its range.", Ranges.Coordinate.Text(units));
        });
        RuleFor(arc => arc).Custom((arc, context) => MeasuredCurves.Check(arc, context, units))
            .When(arc => new[] { arc.Radius, arc.Diameter, arc.Chord, arc.Rise, arc.ArcLength }
                .All(measure => measure is null or (> 0 and < double.PositiveInfinity)));

        bool InRange(double coordinate) => Math.Abs(coordinate) <= Ranges.Coordinate.MaxIn(units);
    }
}

/// <summary>What a progressive bend must satisfy.</summary>
internal sealed class ProgressiveInputRules : AbstractValidator<ProgressiveInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    /// <param name="inChain">Whether the bend is a piece of a chain.</param>
    public ProgressiveInputRules(UnitSystem units, bool inChain)
    {
        RuleFor(bend => bend.StartRadius).Within(Ranges.CurveRadius, units);
        RuleFor(bend => bend.EndRadius).Within(Ranges.CurveRadius, units);
        RuleFor(bend => bend.Sweep).Within(inChain ? Ranges.SegmentSweep : Ranges.Sweep, units);
        RuleFor(bend => bend.EndRadius).NotNull().Else("choose-one", "A bend that is flat at both ends does not turn.", "a radius at one end at least")
            .When(bend => bend.StartRadius is null);
        RuleFor(bend => bend.StartRadius).NotNull().Else("not-applicable", "Only a clothoid can start or end flat.", "a radius, or law clothoid")
            .When(bend => bend.Law != ProgressiveLaw.Clothoid && bend.EndRadius is not null);
        RuleFor(bend => bend.EndRadius).NotNull().Else("not-applicable", "Only a clothoid can start or end flat.", "a radius, or law clothoid")
            .When(bend => bend.Law != ProgressiveLaw.Clothoid && bend.StartRadius is not null);
        if (inChain)
            CurveInputRules.MustTurn(RuleFor(bend => bend.Sweep), bend => bend.Sweep);
        RuleFor(bend => bend.ArcLength).Within(Ranges.FlatSegment, units);
        RuleFor(bend => bend).Custom((bend, context) => MeasuredCurves.Check(bend, context, units))
            .When(bend => bend is { ArcLength: > 0 and < double.PositiveInfinity });
    }
}

/// <summary>What part of an ellipse must satisfy.</summary>
internal sealed class EllipseInputRules : AbstractValidator<EllipseInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    /// <param name="inChain">Whether the part is a piece of a chain.</param>
    public EllipseInputRules(UnitSystem units, bool inChain)
    {
        RuleFor(ellipse => ellipse.SemiAxisX).Within(Ranges.CurveRadius, units);
        RuleFor(ellipse => ellipse.SemiAxisY).Within(Ranges.CurveRadius, units);
        RuleFor(ellipse => ellipse.FromNormal).Within(Ranges.Normal, units);
        RuleFor(ellipse => ellipse.ToNormal).Within(Ranges.Normal, units);
        if (inChain)
            CurveInputRules.MustTurn(RuleFor(ellipse => ellipse.ToNormal), ellipse => Turn(ellipse));
        RuleFor(ellipse => ellipse.ToNormal)
            .Must((ellipse, _) => !(Math.Abs(Turn(ellipse)) > Ranges.Sweep.Max || (!inChain && Turn(ellipse) <= 0)))
            .Else("out-of-range", "The turn from the first normal to the last is outside its range.", "above fromNormal, at most 360° past it");

        static double Turn(EllipseInput ellipse) => ellipse.ToNormal - ellipse.FromNormal;
    }
}

/// <summary>What a flat in a chain must satisfy.</summary>
internal sealed class FlatInputRules : AbstractValidator<FlatInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public FlatInputRules(UnitSystem units) => RuleFor(flat => flat.Length).Within(Ranges.FlatSegment, units);
}

/// <summary>What measured points must satisfy.</summary>
internal sealed class PointsInputRules : AbstractValidator<PointsInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public PointsInputRules(UnitSystem units)
    {
        RuleFor(curve => curve.Tolerance).Within(Ranges.FitTolerance, units);
        RuleFor(curve => curve.Points.Count).Within(Ranges.PointCount, units).About(curve => curve.Points);
        var (range, limit) = (Ranges.Coordinate.Text(units), Ranges.Coordinate.MaxIn(units));
        RuleFor(curve => curve).Custom((curve, context) =>
        {
            for (var i = 0; i < Math.Min(curve.Points.Count, (int)Ranges.PointCount.Max); i++)
            {
                Check(curve.Points[i].First, $"[{i}][0]");
                Check(curve.Points[i].Second, $"[{i}][1]");
            }

            void Check(double coordinate, string within)
            {
                if (!double.IsFinite(coordinate))
                    context.FaultAt(points => points.Points, "not-finite", FiniteRule.Message, range, within);
                else if (Math.Abs(coordinate) > limit)
                    context.FaultAt(points => points.Points, "out-of-range", "The value is outside its range.", range, within);
            }
        });
    }
}

/// <summary>What a chain must satisfy.</summary>
internal sealed class SegmentsInputRules : AbstractValidator<SegmentsInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public SegmentsInputRules(UnitSystem units)
    {
        RuleFor(chain => chain.Segments.Count).Within(Ranges.SegmentCount, units).About(chain => chain.Segments);
        RuleForEach(chain => chain.Segments.Take((int)Ranges.SegmentCount.Max))
            .SetValidator(new CurveInputRules(units, CurvePlace.InChain)).About(chain => chain.Segments);
        RuleFor(chain => chain.Segments).Must(pieces => pieces.Count == 0 || pieces.Any(piece => piece is not FlatInput))
            .Else("choose-one", "A chain of flats does not turn.", "at least one arc, progressive or ellipse");
    }
}

/// <summary>What a taper must satisfy.</summary>
internal sealed class TaperInputRules : AbstractValidator<TaperInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public TaperInputRules(UnitSystem units)
    {
        RuleFor(taper => taper.Near).SetValidator(new CurveInputRules(units, CurvePlace.TaperEnd));
        RuleFor(taper => taper.Far).SetValidator(new CurveInputRules(units, CurvePlace.TaperEnd));
        RuleFor(taper => taper.Length).Within(Ranges.TaperLength, units);
        RuleFor(taper => taper.OffsetX).Within(Ranges.TaperOffset, units);
        RuleFor(taper => taper.OffsetY).Within(Ranges.TaperOffset, units);
        When(taper => taper.Placement != TaperPlacement.Offset, () =>
        {
            RuleFor(taper => taper.OffsetX).Null().Else("not-applicable", "The placement says where the far curve starts.", "only with placement offset");
            RuleFor(taper => taper.OffsetY).Null().Else("not-applicable", "The placement says where the far curve starts.", "only with placement offset");
        });
    }
}
