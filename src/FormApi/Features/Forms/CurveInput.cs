using System.Text.Json.Serialization;
using FormApi.Http.Json;
using Forming.Curves;

namespace FormApi.Features.Forms;

/// <summary>A finished curve; <c>type</c> says which.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "type")]
[JsonDerivedType(typeof(ArcInput), "arc")]
[JsonDerivedType(typeof(ProgressiveInput), "progressive")]
[JsonDerivedType(typeof(EllipseInput), "ellipse")]
[JsonDerivedType(typeof(PointsInput), "points")]
[JsonDerivedType(typeof(SegmentsInput), "segments")]
[JsonDerivedType(typeof(FlatInput), "flat")]
[JsonDerivedType(typeof(TaperInput), "taper")]
internal abstract record CurveInput;

/// <summary>
/// A bend of constant radius, by any two of its measures (radius and diameter are one), or by three points; the echo shows radius and
/// sweep.
/// </summary>
/// <param name="Radius">Radius on the measured face [mm or in].</param>
/// <param name="Sweep">Turned angle [°].</param>
/// <param name="Diameter">Diameter on the measured face [mm or in].</param>
/// <param name="Chord">From end to end, straight [mm or in]; with a radius the arc of at most half a turn.</param>
/// <param name="Rise">Height of the middle over the chord [mm or in]; with an arc length the flatter arc.</param>
/// <param name="ArcLength">Along the measured face from end to end [mm or in].</param>
/// <param name="Through">Three points [x, y] of the measured face: first end, any between, last end [mm or in].</param>
internal sealed record ArcInput(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Radius = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Sweep = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Diameter = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Chord = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Rise = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? ArcLength = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<Pair>? Through = null) : CurveInput;

/// <summary>A bend whose radius opens or closes steadily.</summary>
/// <param name="StartRadius">Radius at the start on the measured face [mm or in]; null is flat, with the clothoid only.</param>
/// <param name="EndRadius">Radius at the end on the measured face [mm or in]; null is flat, with the clothoid only.</param>
/// <param name="Law">How the radius goes from one to the other: linear in the turned angle, curvature linear in the length, or exponential
/// in the turned angle.</param>
/// <param name="Sweep">Turned angle [°]; this or <c>arcLength</c>, and the echo shows this.</param>
/// <param name="ArcLength">Along the measured face from end to end [mm or in].</param>
internal sealed record ProgressiveInput(
    double? StartRadius,
    double? EndRadius,
    ProgressiveLaw Law,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Sweep = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? ArcLength = null) : CurveInput;

/// <summary>Part of an ellipse, from one outward normal to another.</summary>
/// <param name="SemiAxisX">Semi-axis along x on the measured face [mm or in].</param>
/// <param name="SemiAxisY">Semi-axis along y on the measured face [mm or in].</param>
/// <param name="FromNormal">Angle of the outward normal from the x axis at the start [°].</param>
/// <param name="ToNormal">Angle of the outward normal from the x axis at the end [°]; larger than at the start.</param>
internal sealed record EllipseInput(double SemiAxisX, double SemiAxisY, double FromNormal, double ToNormal) : CurveInput;

/// <summary>Measured offsets along a pattern, through which a smooth curve is fitted.</summary>
/// <param name="Points">Points [x, y] in order along the curve [mm or in].</param>
/// <param name="Tolerance">How far the fitted curve may miss a point [mm or in].</param>
internal sealed record PointsInput(IReadOnlyList<Pair> Points, double Tolerance) : CurveInput;

/// <summary>A chain of flats and bends, each tangent to the one before.</summary>
/// <param name="Segments">The pieces in order: arc, progressive, ellipse, flat.</param>
internal sealed record SegmentsInput(IReadOnlyList<CurveInput> Segments) : CurveInput;

/// <summary>A flat between bends; only inside <c>segments</c>.</summary>
/// <param name="Length">Length [mm or in].</param>
internal sealed record FlatInput(double Length) : CurveInput;

/// <summary>A bend between two curves of one sweep, in parallel end planes; the panel is ruled between equal tangent angles.</summary>
/// <param name="Near">Curve in the near end plane: arc, progressive or ellipse.</param>
/// <param name="Far">Curve in the far end plane: arc, progressive or ellipse.</param>
/// <param name="Length">Distance between the end planes [mm or in].</param>
/// <param name="Placement">Where the far curve starts: from the same centre of curvature (two arcs make a right cone), at the same point,
/// or by <c>offsetX</c> and <c>offsetY</c>. Default: <c>concentric</c>.</param>
/// <param name="OffsetX">Start of the far curve along x [mm or in]; with placement <c>offset</c> only. Default: 0.</param>
/// <param name="OffsetY">Start of the far curve along y [mm or in]; with placement <c>offset</c> only. Default: 0.</param>
internal sealed record TaperInput(
    CurveInput Near,
    CurveInput Far,
    double Length,
    TaperPlacement? Placement = null,
    double? OffsetX = null,
    double? OffsetY = null) : CurveInput;
