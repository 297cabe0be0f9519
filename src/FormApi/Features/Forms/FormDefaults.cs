using System.Globalization;
using FormApi.Http.Units;
using Forming;
using Forming.Blanks;
using Forming.Curves;
using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Layout;
using Forming.Pulling;

namespace FormApi.Features.Forms;

/// <summary>Fills in what a request left out; what stays null the plan chooses.</summary>
internal static class FormDefaults
{
    private const double MmResolution = 0.5;
    private const double InchResolution = 1.0 / 64;

    /// <summary>The request with every default shown, still in the caller's units.</summary>
    /// <param name="request">A request that passed its rules.</param>
    public static FormRequest Apply(FormRequest request)
    {
        var units = UnitSystem.Of(request.Units);
        return FormChoices.Filled(
            request with
            {
                Panel = Apply(request.Panel, units),
                Form = Apply(request.Form ?? new(), request.Panel, units),
                Brake = Apply(request.Brake ?? new(), units),
                Marks = Apply(request.Marks, request.Units),
            },
            units);
    }

    /// <summary>The gauge system of a sheet stated by gauge, or null.</summary>
    /// <param name="sheet">The sheet.</param>
    internal static string? GaugeSystemOf(ISheetInput sheet) => sheet.Gauge is null ? null : SheetRules.GaugeSystemOf(sheet);

    /// <summary>The panel with every default shown.</summary>
    /// <param name="panel">A panel that passed its rules.</param>
    /// <param name="units">The caller's units.</param>
    internal static PanelInput Apply(PanelInput panel, UnitSystem units) => panel with
    {
        Material = MaterialInputs.ById(panel.Material),
        LeadIn = panel.LeadIn ?? ShopLengths.Lead(units),
        LeadOut = panel.LeadOut ?? ShopLengths.LeadOut(units),
        GaugeSystem = GaugeSystemOf(panel),
        Mirrored = panel.Mirrored ?? false,
        Surface = panel.Surface ?? Surface.Inside,
        Finish = panel.Finish ?? FinishName.Satin,
        Curve = MeasuredCurves.InItsOwnTerms(panel.Curve) is var curve && curve is TaperInput taper ? Apply(taper) : curve,
        Trim = panel.Trim ?? 0,
        Grain = panel.Grain ?? Grain.Unknown,
        Clamp = new(
            panel.Clamp?.Gap,
            panel.Clamp?.Height ?? units.Length(Clamp.Default.HeightMm),
            panel.Clamp?.Depth ?? units.Length(Clamp.Default.DepthMm)),
        Pull = new(panel.Pull?.By is { Rated: not null } machine ? machine : new(panel.Pull?.By?.People ?? PullBy.OnePerson.People)),
        Springback = Apply(panel.Springback),
        Scatter = Apply(panel.Scatter, panel, units),
        Tolerance = new(
            panel.Tolerance?.Angle ?? FinishedTolerance.Default.Sweep.Degrees,
            panel.Tolerance?.Radius ?? FinishedTolerance.Default.RadiusShare,
            panel.Tolerance?.Profile),
        StockSheets = panel.StockSheets is null
            ? DefaultSheets(units)
            : [.. panel.StockSheets.Select(sheet => sheet with { Name = sheet.Name ?? NameOf(sheet, units) })],
        Assumed = Assumptions.Of(panel),
    };

    private static ScatterInput Apply(ScatterInput? scatter, PanelInput panel, UnitSystem units) => ScatterInput.Whole(
        scatter,
        FormSpecs.SheetFrom(panel with { GaugeSystem = GaugeSystemOf(panel) }, units),
        panel.Springback is { Factor: not null } or { EffectiveYield: not null },
        units);

    private static TaperInput Apply(TaperInput taper)
    {
        var placement = taper.Placement ?? TaperPlacement.Concentric;
        return placement == TaperPlacement.Offset
            ? taper with { OffsetX = taper.OffsetX ?? 0, OffsetY = taper.OffsetY ?? 0 }
            : taper with { Placement = placement };
    }

    private static SpringbackInput Apply(SpringbackInput? springback) =>
        springback?.Factor is not null ? springback : new(springback?.Model ?? SpringbackModel.Wrap, null, springback?.EffectiveYield);

    // The sheet and what goes with it is chosen once the rest is there.
    private static FormInput Apply(FormInput form, PanelInput panel, UnitSystem units) => form with
    {
        Material = MaterialInputs.ById(form.Material ?? FormInput.UsualMaterial),
        LeadIn = form.LeadIn ?? ShopLengths.Lead(units),
        LeadOut = form.LeadOut ?? ShopLengths.Lead(units),
        GaugeSystem = GaugeSystemOf(form),
        Width = form.Width ?? panel.Width ?? (panel.Curve as TaperInput)?.Length,
        Stepping = Apply(form.Stepping ?? new()),
        Grain = form.Grain ?? Grain.Unknown,
        Stop = WithRounding(form.Stop),
        Backing = form.IsSheetOpen() ? form.Backing : form.Backing ?? FormBacking.None,
        Assumed = Assumptions.Of(form),
    };

    /// <summary>The stop with its rounding shown, where anything is said of it.</summary>
    /// <param name="stop">A stop that passed its rules, or null.</param>
    internal static StopInput? WithRounding(StopInput? stop) =>
        stop is null ? null : stop with { Rounding = stop.Rounding ?? StopRounding.Each };

    private static SteppingInput Apply(SteppingInput stepping) => stepping with
    {
        Rule = stepping.Rule ?? (stepping.Spacing is null ? SteppingRule.EqualAngle : SteppingRule.EqualSpacing),
        Ends = stepping.Ends ?? SteppingEnds.Half,
        Confidence = stepping.Confidence ?? Stepping.LeastConfidence,
    };

    /// <summary>The brake with every default shown.</summary>
    /// <param name="brake">A brake that passed its rules.</param>
    /// <param name="units">The caller's units.</param>
    internal static BrakeInput Apply(BrakeInput brake, UnitSystem units) => brake with
    {
        Kind = brake.Kind ?? BrakeKind.Leaf,
        MinFacet = brake.MinFacet ?? units.Length(BrakeSpec.DefaultMinFacetMm),
        StopResolution = brake.StopResolution ?? BrakeSpec.DefaultStopResolutionDegrees,
        Assumed = Assumptions.Of(brake),
    };

    /// <summary>The tape that lengths are read on.</summary>
    /// <param name="marks">The marks, or null.</param>
    /// <param name="unit">The caller's unit.</param>
    internal static Tape TapeOf(MarksInput? marks, LengthUnit unit)
    {
        var whole = Apply(marks, unit);
        return new(whole.Tape!.Value, whole.Resolution!.Value);
    }

    private static MarksInput Apply(MarksInput? marks, LengthUnit unit)
    {
        var tape = marks?.Tape ?? unit;
        return new(
            marks?.Datum ?? Datum.Edge,
            tape,
            marks?.Resolution ?? (tape == LengthUnit.In ? InchResolution : MmResolution));
    }

    private static IReadOnlyList<StockSheetInput> DefaultSheets(UnitSystem units) =>
        units.Unit == LengthUnit.In ? InchSheets : MmSheets;

    private static IReadOnlyList<StockSheetInput> MmSheets { get; } = Sheets(StockSheet.Defaults, UnitSystem.Mm);

    private static IReadOnlyList<StockSheetInput> InchSheets { get; } = Sheets(StockSheet.InchDefaults, UnitSystem.Inch);

    private static IReadOnlyList<StockSheetInput> Sheets(IEnumerable<StockSheet> sheets, UnitSystem units) =>
        [.. sheets.Select(sheet => new StockSheetInput(units.Length(sheet.LengthMm), units.Length(sheet.WidthMm), sheet.Name))];

    private static string NameOf(StockSheetInput sheet, UnitSystem units) =>
        string.Create(CultureInfo.InvariantCulture, $"{sheet.Length} × {sheet.Width} {units.LengthName}");
}
