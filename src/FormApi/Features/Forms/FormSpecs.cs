using FormApi.Http.Units;
using Forming;
using Forming.Blanks;
using Forming.Curves;
using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Layout;
using Forming.Materials;
using Forming.Prediction;
using Forming.Springback;
using GaugeTable = Forming.Materials.Gauges;

namespace FormApi.Features.Forms;

/// <summary>What the library is asked, in its own units.</summary>
/// <param name="Job">The job.</param>
internal sealed record FormSpecs(FormJob Job)
{
    /// <summary>The panel.</summary>
    public PanelSpec Panel => Job.Panel;

    /// <summary>The form.</summary>
    public FormSpec Form => Job.Form;

    /// <summary>The brake.</summary>
    public BrakeSpec Brake => Job.Brake;

    /// <summary>The marks.</summary>
    public MarkSpec Marks => Job.Marks;

    /// <summary>From a request with its defaults filled in.</summary>
    /// <param name="request">The request.</param>
    public static FormSpecs From(FormRequest request)
    {
        var units = UnitSystem.Of(request.Units);
        return new(new FormJob(
            PanelFrom(request.Panel, units),
            FormFrom(request.Form!, units),
            BrakeFrom(request.Brake!, units),
            MarksFrom(request.Marks!))
        {
            Units = UnitsOf(request.Units),
            PanelGaugeSystem = request.Panel.GaugeSystem,
            FormGaugeSystem = request.Form!.GaugeSystem,
            Assumed = Assumptions.Of(request),
        });
    }

    /// <summary>A panel in the library's units.</summary>
    /// <param name="panel">The panel with its defaults filled in.</param>
    /// <param name="units">The caller's units.</param>
    internal static PanelSpec PanelFrom(PanelInput panel, UnitSystem units) => new()
    {
        Sheet = SheetFrom(panel, units),
        Curve = CurveFrom(panel.Curve, units),
        Surface = panel.Surface!.Value,
        WidthMm = units.ToMm(panel.Width ?? ((TaperInput)panel.Curve).Length),
        LeadInMm = units.ToMm(panel.LeadIn!.Value),
        LeadOutMm = units.ToMm(panel.LeadOut!.Value),
        TrimMm = units.ToMm(panel.Trim!.Value),
        Mirrored = panel.Mirrored!.Value,
        Finish = FinishFrom(panel, units),
        Grain = panel.Grain!.Value,
        LeverMm = ToMm(panel.Lever, units),
        Clamp = new(ToMm(panel.Clamp!.Gap, units), units.ToMm(panel.Clamp.Height!.Value), units.ToMm(panel.Clamp.Depth!.Value)),
        PullBy = panel.Pull?.By is { Rated: { } rated }
            ? new(PullBy.OnePerson.People, units.ToN(rated))
            : new(panel.Pull?.By?.People ?? PullBy.OnePerson.People),
        Springback = SpringbackFrom(panel.Springback!, units),
        Scatter = panel.Scatter?.ToScatter(units),
        Tolerance = new(
            Angle.FromDegrees(panel.Tolerance!.Angle!.Value), panel.Tolerance.Radius!.Value, ToMm(panel.Tolerance.Profile, units)),
        StockSheets =
        [
            .. panel.StockSheets!.Select(sheet => new StockSheet(sheet.Name!, units.ToMm(sheet.Length), units.ToMm(sheet.Width))),
        ],
    };

    /// <summary>A form in the library's units.</summary>
    /// <param name="form">The form with its defaults filled in.</param>
    /// <param name="units">The caller's units.</param>
    internal static FormSpec FormFrom(FormInput form, UnitSystem units) => new()
    {
        Sheet = SheetFrom(form, units),
        FoldRadiusMm = units.ToMm(form.FoldRadius!.Value),
        LeadInMm = units.ToMm(form.LeadIn!.Value),
        LeadOutMm = units.ToMm(form.LeadOut!.Value),
        WidthMm = units.ToMm(form.Width!.Value),
        Stepping = new()
        {
            Rule = form.Stepping!.Rule!.Value,
            Ends = form.Stepping.Ends!.Value,
            Folds = form.Stepping.Folds,
            FoldAngle = ToAngle(form.Stepping.Angle),
            SpacingMm = ToMm(form.Stepping.Spacing, units),
            MaxFacetMm = ToMm(form.Stepping.MaxFacet, units),
            Confidence = form.Stepping.Confidence ?? Stepping.LeastConfidence,
        },
        Grain = form.Grain!.Value,
        Backing = form.Backing ?? FormBacking.None,
        NeutralFactor = form.NeutralFactor,
        Stop = form.Stop is { Offset: { } offset, Slope: { } slope } ? new(Angle.FromDegrees(offset), slope) : null,
        StopRounding = form.Stop?.Rounding ?? StopRounding.Each,
    };

    /// <summary>A form given by its stations as a beam, or null where ribs keep it from bending.</summary>
    /// <param name="form">The form with its defaults filled in.</param>
    /// <param name="panel">The panel that is pulled over it.</param>
    /// <param name="units">The caller's units.</param>
    internal static FormBeam? BeamFrom(FormInput form, PanelSpec panel, UnitSystem units) =>
        FormBeam.Of(form.Backing!.Value, SheetFrom(form, units), units.ToMm(form.Width!.Value), panel.WidthMm);

    /// <summary>A brake in the library's units.</summary>
    /// <param name="brake">The brake with its defaults filled in.</param>
    /// <param name="units">The caller's units.</param>
    internal static BrakeSpec BrakeFrom(BrakeInput brake, UnitSystem units) => new()
    {
        Kind = brake.Kind!.Value,
        LengthMm = units.ToMm(brake.Length!.Value),
        MinFacetMm = units.ToMm(brake.MinFacet!.Value),
        StopResolution = Angle.FromDegrees(brake.StopResolution!.Value),
        ReachMm = ToMm(brake.Reach, units),
        DieOpeningMm = ToMm(brake.DieOpening, units),
        Capacity = brake.Capacity is { } rated ? new(units.ToMm(rated.Thickness), units.ToMpa(rated.Ultimate)) : null,
    };

    /// <summary>The caller's units as the library knows them.</summary>
    /// <param name="unit">The unit of length.</param>
    internal static CallerUnits UnitsOf(LengthUnit unit) => unit == LengthUnit.In ? CallerUnits.Inch : CallerUnits.Mm;

    private static MarkSpec MarksFrom(MarksInput marks) => new(
        marks.Datum!.Value,
        new Tape(marks.Tape!.Value, marks.Resolution!.Value));

    /// <summary>A sheet in the library's units.</summary>
    /// <param name="sheet">A sheet that passed its rules, its gauge system filled in.</param>
    /// <param name="units">The caller's units.</param>
    public static Sheet SheetFrom(ISheetInput sheet, UnitSystem units)
    {
        if (sheet.Thickness is { } thickness)
            return new(MaterialInputs.ToMaterial(sheet.Material, units), units.ToMm(thickness));
        GaugeTable.TryThickness(sheet.GaugeSystem!, sheet.Gauge!.Value, out var mm);
        return new(MaterialInputs.ToMaterial(sheet.Material, units), mm);
    }

    private static PanelCurve CurveFrom(CurveInput curve, UnitSystem units) => curve switch
    {
        ArcInput arc => new ArcCurve(units.ToMm(arc.Radius!.Value), Angle.FromDegrees(arc.Sweep!.Value)),
        ProgressiveInput bend => new ProgressiveCurve(
            ToMm(bend.StartRadius, units), ToMm(bend.EndRadius, units), Angle.FromDegrees(bend.Sweep!.Value), bend.Law),
        EllipseInput ellipse => new EllipseCurve(
            units.ToMm(ellipse.SemiAxisX),
            units.ToMm(ellipse.SemiAxisY),
            Angle.FromDegrees(ellipse.FromNormal),
            Angle.FromDegrees(ellipse.ToNormal)),
        PointsInput measured => new PointsCurve(
            [.. measured.Points.Select(point => new Point(units.ToMm(point.First), units.ToMm(point.Second)))],
            units.ToMm(measured.Tolerance)),
        SegmentsInput chain => new SegmentsCurve([.. chain.Segments.Select(piece => CurveFrom(piece, units))]),
        FlatInput flat => new FlatCurve(units.ToMm(flat.Length)),
        TaperInput taper => new TaperCurve(
            CurveFrom(taper.Near, units),
            CurveFrom(taper.Far, units),
            units.ToMm(taper.Length),
            taper.Placement!.Value,
            new(units.ToMm(taper.OffsetX ?? 0), units.ToMm(taper.OffsetY ?? 0))),
        _ => throw new InvalidOperationException("A kind of curve has no mapping."),
    };

    private static Finish FinishFrom(PanelInput panel, UnitSystem units)
    {
        var named = panel.Finish switch
        {
            FinishName.Gloss => Finish.Gloss,
            FinishName.Hidden => Finish.Hidden,
            _ => Finish.Satin,
        };
        return panel is { AllowedRipple: null, AllowedSlope: null }
            ? named
            : Finish.Own(
                ToMm(panel.AllowedRipple, units) ?? named.RippleMm, ToAngle(panel.AllowedSlope) ?? named.Slope);
    }

    private static SpringbackChoice SpringbackFrom(SpringbackInput springback, UnitSystem units) => springback switch
    {
        { Factor: { } factor } => new MeasuredFactor(factor),
        { Model: SpringbackModel.PureBending } => new PureBending(ToMpa(springback.EffectiveYield, units)),
        _ => new SolvedOnWrap(ToMpa(springback.EffectiveYield, units)),
    };

    private static double? ToMm(double? length, UnitSystem units) => length is { } given ? units.ToMm(given) : null;

    private static double? ToMpa(double? stress, UnitSystem units) => stress is { } given ? units.ToMpa(given) : null;

    private static Angle? ToAngle(double? degrees) => degrees is { } given ? Angle.FromDegrees(given) : null;
}
