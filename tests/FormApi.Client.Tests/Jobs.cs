using FormApi.Client.Models;
using Microsoft.Kiota.Abstractions.Serialization;

namespace FormApi.Client.Tests;

/// <summary>Requests as a caller would write them against the generated types: covers and corners for a small shop's machines.</summary>
public static class Jobs
{
    /// <summary>Every kind of curve that can stand for a panel, with its sweep [°].</summary>
    public static IReadOnlyDictionary<string, (CurveInput Curve, double Sweep)> Curves { get; } = new Dictionary<string, (CurveInput, double)>
    {
        ["arc"] = (Arc(90, 90), 90),
        ["progressive"] = (Progressive(70, 160, 60, ProgressiveLaw.Involute), 60),
        ["clothoid"] = (FromFlat(100, 50), 50),
        ["ellipse"] = (Ellipse(160, 110, 10, 80), 70),
        ["points"] = (Points(150, 80), 80),
        ["segments"] = (Segments(Arc(75, 40), Flat(90), Progressive(120, 80, 35, ProgressiveLaw.Logarithmic), Flat(30), Ellipse(90, 70, 0, 20)), 95),
        ["taper"] = (Taper(Arc(80, 75), Arc(120, 75), 480), 75),
    };

    public static ArcInput Arc(double radius, double sweep) => new() { Type = CurveShape_type.Arc, Radius = radius, Sweep = sweep };

    public static FlatInput Flat(double length) => new() { Type = CurveShape_type.Flat, Length = length };

    public static ProgressiveInput Progressive(double start, double end, double sweep, ProgressiveLaw law) =>
        new() { Type = CurveShape_type.Progressive, StartRadius = start, EndRadius = end, Sweep = sweep, Law = law };

    public static EllipseInput Ellipse(double x, double y, double from, double to) =>
        new() { Type = CurveShape_type.Ellipse, SemiAxisX = x, SemiAxisY = y, FromNormal = from, ToNormal = to };

    public static SegmentsInput Segments(params CurveInput[] pieces) => new() { Type = CurveShape_type.Segments, Segments = [.. pieces] };

    public static TaperInput Taper(CurveInput near, CurveInput far, double length) =>
        new() { Type = CurveShape_type.Taper, Near = near, Far = far, Length = length, Placement = TaperPlacement.Concentric };

    /// <summary>A clothoid from a flat: this generator leaves nulls out, so the one that means flat goes in beside the typed fields.</summary>
    public static ProgressiveInput FromFlat(double end, double sweep) => new()
    {
        Type = CurveShape_type.Progressive,
        EndRadius = end,
        Sweep = sweep,
        Law = ProgressiveLaw.Clothoid,
        AdditionalData = new Dictionary<string, object> { ["startRadius"] = null! },
    };

    /// <summary>Points on a quarter round, every tenth of the sweep; this generator has no type for lists of lists.</summary>
    public static PointsInput Points(double radius, double sweep) => new()
    {
        Type = CurveShape_type.Points,
        Points = new UntypedArray(Enumerable.Range(0, 11)
            .Select(i => sweep * i / 10 * Math.PI / 180)
            .Select(angle => Pair(radius * Math.Sin(angle), radius * (1 - Math.Cos(angle))))),
        Tolerance = 0.3,
    };

    public static UntypedArray Pair(double x, double y) => new([new UntypedDouble(x), new UntypedDouble(y)]);

    public static FormRequest With(CurveInput curve) => new()
    {
        Units = LengthUnit.Mm,
        Panel = new()
        {
            Material = new() { Id = "ss-304" },
            Thickness = 1.2,
            Width = curve is TaperInput ? null : 600,
            LeadIn = 80,
            LeadOut = 150,
            Finish = FinishName.Hidden,
            Curve = curve,
            // Solving a chain with a flat between its bends takes long to give up.
            Springback = curve is SegmentsInput ? new() { Model = SpringbackModel.PureBending } : null,
        },
        Form = new() { Material = new() { Id = "steel-cr-cs" }, Thickness = 2, FoldRadius = 2, LeadIn = 60, LeadOut = 60, Backing = FormBacking.Ribs },
        Brake = new() { Length = 1250 },
    };
}
