using System.Text.Json.Serialization;
using FluentValidation;
using FormApi.Http.Json;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming.Curves;
using Forming.Jobs;

namespace FormApi.Features.Forms;

/// <summary>The finished panel that is wanted, and how it will be pulled.</summary>
/// <param name="Material">Material of the panel.</param>
/// <param name="Curve">The finished curve; it starts at (0, 0) heading along x and turns left.</param>
/// <param name="LeadIn">Flat before the curve [mm or in]. Default: 60 mm or 2.5 in.</param>
/// <param name="LeadOut">Flat after the curve [mm or in]; with <c>mirrored</c> the single flat between the two curves. Default:
/// 150 mm or 6 in.</param>
/// <param name="Width">Width along the folds [mm or in]; needed but for a taper, which does not use it: its own length is used.</param>
/// <param name="Thickness">Thickness [mm or in]; this or <c>gauge</c>.</param>
/// <param name="Gauge">Gauge number; this or <c>thickness</c>.</param>
/// <param name="GaugeSystem">The gauge's system, an id of <c>/v1/gauges</c>. Default: the material's own.</param>
/// <param name="Mirrored">Whether the panel carries the curve twice, symmetric about its centre line. Default: false.</param>
/// <param name="Surface">The face on which the curve was measured. Default: <c>inside</c>, the concave face that lies on the form.</param>
/// <param name="Finish">How much of the facets may show: <c>gloss</c> mirrors its surroundings, <c>satin</c> covers mill finish too,
/// <c>hidden</c> is out of sight; polished, mirror, mill, brushed, matte are read too. Default: <c>satin</c>.</param>
/// <param name="Trim">Material left on for trimming at each end of the blank [mm or in]. Default: 0.</param>
/// <param name="Grain">How the folds lie to the rolling direction. Default: <c>unknown</c>, treated as along.</param>
/// <param name="Lever">From the end of the curve to the hand that pulls [mm or in]. Default: null, the plan chooses.</param>
/// <param name="Clamp">The clamp on the lead-in. Default: 40 mm high, 25 mm deep.</param>
/// <param name="AllowedRipple">Largest peak-to-valley height that may show [mm or in]. Default: null, from the finish.</param>
/// <param name="AllowedSlope">Largest slope against the smooth curve that may show [°]. Default: null, from the finish.</param>
/// <param name="Springback">How springback is found. Default: solved on the simulated pull.</param>
/// <param name="Tolerance">How far what comes off may miss what is wanted.</param>
/// <param name="StockSheets">Sheets that blanks are cut from. Default: sizes that merchants commonly stock.</param>
/// <param name="Pull">Who or what pulls the panel and lifts the blanks. Default: one person.</param>
/// <param name="Scatter">How much sheets and folds differ. Default: see <c>basis</c>.</param>
/// <param name="Assumed">Which values nobody gave. Default: those that are left out.</param>
internal sealed record PanelInput(
    MaterialInput Material,
    CurveInput Curve,
    double? LeadIn = null,
    double? LeadOut = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Width = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Thickness = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? Gauge = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? GaugeSystem = null,
    bool? Mirrored = null,
    Surface? Surface = null,
    FinishName? Finish = null,
    double? Trim = null,
    Grain? Grain = null,
    double? Lever = null,
    ClampInput? Clamp = null,
    double? AllowedRipple = null,
    double? AllowedSlope = null,
    SpringbackInput? Springback = null,
    FinishedToleranceInput? Tolerance = null,
    IReadOnlyList<StockSheetInput>? StockSheets = null,
    PullInput? Pull = null,
    ScatterInput? Scatter = null,
    IReadOnlyList<PanelFigure>? Assumed = null) : ISheetInput;

/// <summary>A value of the panel that may be left open.</summary>
internal enum PanelFigure
{
    /// <summary>The lead-in.</summary>
    LeadIn,

    /// <summary>The lead-out.</summary>
    LeadOut,
}

/// <summary>How much of the facets may show in the finished panel.</summary>
internal enum FinishName
{
    /// <summary>Paint or polish that mirrors its surroundings.</summary>
    [AlsoWritten("polished", "mirror", "high gloss", "glossy")]
    Gloss,

    /// <summary>Satin or mill finish.</summary>
    [AlsoWritten("mill", "mill finish", "brushed", "matte", "matt")]
    Satin,

    /// <summary>Out of sight.</summary>
    [AlsoWritten("unseen", "out of sight")]
    Hidden,
}

/// <summary>How far the panel that comes off may miss the one that is wanted.</summary>
/// <param name="Angle">Of the sweep [°]. Default: 1.</param>
/// <param name="Radius">Of the radius over the middle folds, as a share. Default: 0.02.</param>
/// <param name="Profile">From the finished curve [mm or in]. Default: null, 0.3 % of its length and at least 0.3 mm.</param>
internal sealed record FinishedToleranceInput(double? Angle = null, double? Radius = null, double? Profile = null);

/// <summary>The clamp that holds form and panel to the bench.</summary>
/// <param name="Gap">From the first fold's tangent line back to the clamp [mm or in]. Default: null, the plan chooses: 0, or half a facet
/// with <c>full</c> ends.</param>
/// <param name="Height">Room it needs above the lead-in [mm or in]. Default: 40 mm.</param>
/// <param name="Depth">How deep it bears on the lead-in [mm or in]. Default: 25 mm, an assumption.</param>
internal sealed record ClampInput(double? Gap = null, double? Height = null, double? Depth = null);

/// <summary>How the panel is pulled.</summary>
/// <param name="By">Who or what pulls the panel and lifts the blanks. Default: one person.</param>
internal sealed record PullInput(PullByInput? By = null);

/// <summary>Who or what pulls: people, or a machine in their place. One of the two.</summary>
/// <param name="People">How many people pull and lift, side by side along the edge. Default: 1, unless something is rated for the
/// pull.</param>
/// <param name="Rated">What a winch, press or hoist is rated for [N or lbf]; it pulls on a stiff bar along the whole edge.</param>
internal sealed record PullByInput(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? People = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Rated = null);

/// <summary>A sheet that blanks are cut from; the rolling direction runs along its length.</summary>
/// <param name="Length">Along the rolling direction [mm or in].</param>
/// <param name="Width">Across it [mm or in].</param>
/// <param name="Name">Its name. Default: its two sides.</param>
internal sealed record StockSheetInput(double Length, double Width, string? Name = null);

/// <summary>What a panel must satisfy.</summary>
internal sealed class PanelInputRules : AbstractValidator<PanelInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public PanelInputRules(UnitSystem units)
    {
        this.AddSheetRules(units);
        RuleFor(panel => panel.Width).Within(Ranges.Width, units);
        RuleFor(panel => panel.LeadIn).Within(Ranges.Flat, units);
        RuleFor(panel => panel.LeadOut).Within(Ranges.Flat, units);
        RuleFor(panel => panel.Curve).SetValidator(new CurveInputRules(units, CurvePlace.Whole));
        RuleFor(panel => panel.Trim).Within(Ranges.Flat, units);
        RuleFor(panel => panel.Lever).Within(Ranges.Lever, units);
        RuleFor(panel => panel.Clamp!).SetValidator(new ClampInputRules(units)).When(panel => panel.Clamp is not null);
        RuleFor(panel => panel.Pull!.By!).SetValidator(new PullByInputRules(units)).When(panel => panel.Pull?.By is not null);
        RuleFor(panel => panel.Scatter!).SetValidator(new ScatterInputRules(units)).When(panel => panel.Scatter is not null);
        RuleFor(panel => panel.AllowedRipple).Within(Ranges.Ripple, units);
        RuleFor(panel => panel.AllowedSlope).Within(Ranges.Slope, units);
        RuleFor(panel => panel.Springback!).SetValidator(new SpringbackInputRules(units)).When(panel => panel.Springback is not null);
        RuleFor(panel => panel.Tolerance!).SetValidator(new FinishedToleranceInputRules(units)).When(panel => panel.Tolerance is not null);
        When(panel => panel.StockSheets is not null, () =>
        {
            RuleFor(panel => panel.StockSheets!.Count).Within(Ranges.StockCount, units).About(panel => panel.StockSheets);
            RuleForEach(panel => panel.StockSheets!.Take((int)Ranges.StockCount.Max))
                .SetValidator(new StockSheetInputRules(units)).About(panel => panel.StockSheets);
        });
    }
}

/// <summary>What a tolerance must satisfy.</summary>
internal sealed class FinishedToleranceInputRules : AbstractValidator<FinishedToleranceInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public FinishedToleranceInputRules(UnitSystem units)
    {
        RuleFor(tolerance => tolerance.Angle).Within(Ranges.FinishedAngle, units);
        RuleFor(tolerance => tolerance.Radius).Within(Ranges.FinishedRadius, units);
        RuleFor(tolerance => tolerance.Profile).Within(Ranges.FinishedProfile, units);
    }
}

/// <summary>What a clamp must satisfy.</summary>
internal sealed class ClampInputRules : AbstractValidator<ClampInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public ClampInputRules(UnitSystem units)
    {
        RuleFor(clamp => clamp.Gap).Within(Ranges.ClampGap, units);
        RuleFor(clamp => clamp.Height).Within(Ranges.ClampHeight, units);
        RuleFor(clamp => clamp.Depth).Within(Ranges.ClampDepth, units);
    }
}

/// <summary>What those who pull must satisfy.</summary>
internal sealed class PullByInputRules : AbstractValidator<PullByInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public PullByInputRules(UnitSystem units)
    {
        RuleFor(by => by.People).Within(Ranges.Crew, units);
        RuleFor(by => by.Rated).Within(Ranges.RatedForce, units);
        RuleFor(by => by.Rated).Null().Else("choose-one", "People pull, or something that is rated for it.", "people or rated, one of them")
            .When(by => by.People is not null);
    }
}

/// <summary>What a stock sheet must satisfy.</summary>
internal sealed class StockSheetInputRules : AbstractValidator<StockSheetInput>
{
    private const int LongestName = 60;

    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public StockSheetInputRules(UnitSystem units)
    {
        RuleFor(sheet => sheet.Length).Within(Ranges.StockSide, units);
        RuleFor(sheet => sheet.Width).Within(Ranges.StockSide, units);
        RuleFor(sheet => sheet.Name).MaximumLength(LongestName).Else("too-long", "The name is too long.", $"at most {LongestName} characters");
    }
}
