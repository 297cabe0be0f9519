using System.Text.Json.Serialization;
using FluentValidation;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Results;
using GaugeTable = Forming.Materials.Gauges;

namespace FormApi.Features.Forms;

/// <summary>The faceted form to be folded.</summary>
/// <param name="Material">Material of the form. Default: <c>steel-cr-cs</c>.</param>
/// <param name="FoldRadius">Inside radius of its folds [mm or in]; below 0.2 of the thickness give <c>neutralFactor</c> too. Default: one
/// thickness.</param>
/// <param name="LeadIn">Flat before the first fold, to its mold line [mm or in]. Default: 60 mm or 2.5 in.</param>
/// <param name="LeadOut">Flat after the last fold, to its mold line [mm or in]. Default: 60 mm or 2.5 in.</param>
/// <param name="Thickness">Thickness [mm or in]; this or <c>gauge</c>. Default: the thinnest standard sheet that carries the pull bare, or
/// 1.5 mm or 16 gauge with ribs where none does.</param>
/// <param name="Gauge">Gauge number; this or <c>thickness</c>.</param>
/// <param name="GaugeSystem">The gauge's system, an id of <c>/v1/gauges</c>. Default: the material's own.</param>
/// <param name="Width">Width along the folds [mm or in]. Default: the panel's.</param>
/// <param name="Stepping">Where the folds go. Default: equal angles, half folds at the ends, as few as the finish allows.</param>
/// <param name="Grain">How the folds lie to the rolling direction. Default: <c>unknown</c>, treated as along.</param>
/// <param name="NeutralFactor">Neutral factor K of the folds. Default: null, from the published formula.</param>
/// <param name="Stop">What test strips taught about the angle stop, and how stop angles are rounded to its steps. Default: null, a first
/// guess from the form's springback, and <c>each</c>.</param>
/// <param name="Backing">What supports the form: <c>none</c>, or <c>ribs</c> cut to its inside profile, which keep it from bending.
/// Default: <c>none</c>, or with the sheet.</param>
/// <param name="Assumed">Which values nobody gave. Default: those that are left out.</param>
internal sealed record FormInput(
    MaterialInput? Material = null,
    double? FoldRadius = null,
    double? LeadIn = null,
    double? LeadOut = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Thickness = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? Gauge = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? GaugeSystem = null,
    double? Width = null,
    SteppingInput? Stepping = null,
    Grain? Grain = null,
    double? NeutralFactor = null,
    StopInput? Stop = null,
    FormBacking? Backing = null,
    IReadOnlyList<FormFigure>? Assumed = null) : ISheetInput
{
    /// <summary>What a form is folded from where nobody says.</summary>
    internal static MaterialInput UsualMaterial { get; } = new("steel-cr-cs");

    /// <inheritdoc/>
    MaterialInput ISheetInput.Material => Material ?? UsualMaterial;

    /// <summary>Whether its sheet is left open.</summary>
    internal bool IsSheetOpen() => Thickness is null && Gauge is null;
}

/// <summary>A value of the form that may be left open.</summary>
internal enum FormFigure
{
    /// <summary>The material.</summary>
    Material,

    /// <summary>The thickness, and with it the backing.</summary>
    Thickness,

    /// <summary>The fold radius.</summary>
    FoldRadius,

    /// <summary>The lead-in.</summary>
    LeadIn,

    /// <summary>The lead-out.</summary>
    LeadOut,
}

/// <summary>Where the folds go. At most one of <c>folds</c>, <c>angle</c> and <c>spacing</c>.</summary>
/// <param name="Rule">How folds are spread: evenly over the turned angle, evenly over the flat blank, or as far apart as the finish allows.
/// Default: <c>equal-angle</c>, or <c>equal-spacing</c> where a spacing is given.</param>
/// <param name="Ends">Half folds at both ends of the curve, or all folds alike. Default: <c>half</c>.</param>
/// <param name="Folds">Fixed number of folds. Default: null, the fewest that the finish allows.</param>
/// <param name="Angle">Fixed angle of a fold [°]; with <c>equal-angle</c> only. Default: null.</param>
/// <param name="Spacing">Fixed distance between fold centre lines on the flat [mm or in]; with <c>equal-spacing</c> only. Default:
/// null.</param>
/// <param name="MaxFacet">Widest facet wanted [mm or in]. Default: null, from the finish alone.</param>
/// <param name="Confidence">Chance of no facet showing; model <c>wrap</c>, nothing fixed. Default: 0.5.</param>
internal sealed record SteppingInput(
    SteppingRule? Rule = null,
    SteppingEnds? Ends = null,
    int? Folds = null,
    double? Angle = null,
    double? Spacing = null,
    double? MaxFacet = null,
    double? Confidence = null);

/// <summary>
/// The angle stop: a line through what test strips measured, stop angle = offset + slope × fold angle, and how stop angles are rounded.
/// </summary>
/// <param name="Offset">Stop angle at a fold of zero [°]; with <c>slope</c>. Default: null, a first guess from the form's
/// springback.</param>
/// <param name="Slope">Growth of the stop angle with the fold angle; with <c>offset</c>. Default: null, a first guess from the form's
/// springback.</param>
/// <param name="Rounding">How stop angles are rounded to the stop's resolution: <c>each</c> group of alike folds alone, the fewest
/// settings; or
/// <c>sum</c>, along the form, each fold making up for what rounding left so far, at the cost of more settings. Default:
/// <c>each</c>.</param>
internal sealed record StopInput(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Offset = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Slope = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] StopRounding? Rounding = null);

/// <summary>What a form must satisfy.</summary>
internal sealed class FormInputRules : AbstractValidator<FormInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    /// <param name="isStanding">Whether the form already exists, so that no flat blank is needed.</param>
    /// <param name="mustHaveSheet">Whether its folds are known, so that its sheet must be too.</param>
    public FormInputRules(UnitSystem units, bool isStanding = false, bool mustHaveSheet = false)
    {
        this.AddSheetRules(units, mayBeOpen: !isStanding && !mustHaveSheet);
        RuleFor(form => form.FoldRadius).Within(Ranges.FoldRadius, units);
        RuleFor(form => form.LeadIn).Within(Ranges.Flat, units);
        RuleFor(form => form.LeadOut).Within(Ranges.Flat, units);
        RuleFor(form => form.Width).Within(Ranges.Width, units);
        RuleFor(form => form.NeutralFactor).Within(Ranges.NeutralFactor, units);
        RuleFor(form => form.Stepping!).SetValidator(new SteppingInputRules(units)).When(form => form.Stepping is not null);
        RuleFor(form => form.Stop!).SetValidator(new StopInputRules(units)).When(form => form.Stop is not null);
        if (isStanding)
            return;
        RuleFor(form => form.NeutralFactor).NotNull()
            .Else(
                "missing-property",
                "The fold radius is below 0.2 of the thickness, where no published neutral factor applies.",
                "a number from a test strip, or a larger foldRadius")
            .When(form => form.FoldRadius < WorkingLimits.LeastRadiusOverThickness * ThicknessOf(form, units));
    }

    private static double ThicknessOf(FormInput form, UnitSystem units) =>
        form.Thickness
        ?? (form.Gauge is { } gauge && SheetRules.GaugeSystemOf(form) is { } system && GaugeTable.TryThickness(system, gauge, out var mm)
            ? units.Length(mm)
            : form.IsSheetOpen() ? units.Length(FormChoices.ThinnestMm) : 0);
}

/// <summary>What a stepping must satisfy.</summary>
internal sealed class SteppingInputRules : AbstractValidator<SteppingInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public SteppingInputRules(UnitSystem units)
    {
        RuleFor(stepping => stepping.Folds).Within(Ranges.Folds, units);
        RuleFor(stepping => stepping.Angle).Within(Ranges.FoldAngle, units);
        RuleFor(stepping => stepping.Spacing).Within(Ranges.Facet, units);
        RuleFor(stepping => stepping.MaxFacet).Within(Ranges.Facet, units);
        RuleFor(stepping => stepping.Spacing).Null()
            .Else("choose-one", "Only one value of the stepping can be fixed.", "folds, angle or spacing, at most one of them")
            .When(stepping => stepping.Folds is not null || stepping.Angle is not null);
        RuleFor(stepping => stepping.Angle).Null()
            .Else("choose-one", "Only one value of the stepping can be fixed.", "folds, angle or spacing, at most one of them")
            .When(stepping => stepping is { Spacing: null, Folds: not null });
        RuleFor(stepping => stepping.Angle).Null()
            .Else("not-applicable", "A fixed angle needs the rule equal-angle.", "only with rule equal-angle")
            .When(stepping => stepping is { Folds: null, Spacing: null, Rule: not (null or SteppingRule.EqualAngle) });
        RuleFor(stepping => stepping.Spacing).Null()
            .Else("not-applicable", "A fixed spacing needs the rule equal-spacing.", "only with rule equal-spacing")
            .When(stepping => stepping is { Folds: null, Angle: null, Rule: not (null or SteppingRule.EqualSpacing) });
        RuleFor(stepping => stepping.Confidence).Within(Ranges.Confidence, units);
        RuleFor(stepping => stepping.Confidence).Must(confidence => confidence is null or Stepping.LeastConfidence)
            .Else("not-applicable", "confidence needs a free fold count.", "only without folds, angle and spacing")
            .When(stepping => stepping is not { Folds: null, Angle: null, Spacing: null });
    }
}

/// <summary>What a stop's line must satisfy.</summary>
internal sealed class StopInputRules : AbstractValidator<StopInput>
{
    /// <summary>The rules.</summary>
    /// <param name="units">The caller's units.</param>
    public StopInputRules(UnitSystem units)
    {
        RuleFor(stop => stop.Offset).Within(Ranges.StopOffset, units);
        RuleFor(stop => stop.Slope).Within(Ranges.StopSlope, units);
        RuleFor(stop => stop.Offset).NotNull().Else("missing-property", "A line of the stop has both an offset and a slope.", "offset and slope, or neither")
            .When(stop => stop.Slope is not null);
        RuleFor(stop => stop.Slope).NotNull().Else("missing-property", "A line of the stop has both an offset and a slope.", "offset and slope, or neither")
            .When(stop => stop.Offset is not null);
    }
}
