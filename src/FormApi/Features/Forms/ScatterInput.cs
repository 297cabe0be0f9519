using FluentValidation;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;
using Forming.Jobs;
using Forming.Materials;
using Forming.Outlook;

namespace FormApi.Features.Forms;

/// <summary>One standard deviation each.</summary>
/// <param name="Yield">Flow curve [%]. Default: 8; 2 where springback is measured.</param>
/// <param name="Thickness">[mm or in]. Default: half the standard's tolerance, else 3 %.</param>
/// <param name="Modulus">[%]. Default: 2.</param>
/// <param name="FoldAngle">[°]. Default: 0.5.</param>
/// <param name="Mark">[mm or in]. Default: 0.4 mm.</param>
internal sealed record ScatterInput(
    double? Yield = null, double? Thickness = null, double? Modulus = null, double? FoldAngle = null, double? Mark = null)
{
    /// <summary>The scatter with every default shown.</summary>
    /// <param name="given">What was given, or null.</param>
    /// <param name="sheet">The panel's sheet.</param>
    /// <param name="isMeasured">Whether its yield stress or its springback was measured.</param>
    /// <param name="units">The caller's units.</param>
    public static ScatterInput Whole(ScatterInput? given, Sheet sheet, bool isMeasured, UnitSystem units)
    {
        var assumed = ScatterDefaults.Of(sheet, isMeasured);
        return new(
            given?.Yield ?? 100 * assumed.Yield,
            given?.Thickness ?? units.Length(assumed.ThicknessMm),
            given?.Modulus ?? 100 * assumed.Modulus,
            given?.FoldAngle ?? UnitSystem.Degrees(assumed.FoldAngle),
            given?.Mark ?? units.Length(assumed.MarkMm));
    }

    /// <summary>The scatter in the library's units, once defaults are filled in.</summary>
    /// <param name="units">The caller's units.</param>
    public Scatter ToScatter(UnitSystem units) => new(
        Yield!.Value / 100,
        units.ToMm(Thickness!.Value),
        Modulus!.Value / 100,
        Angle.FromDegrees(FoldAngle!.Value),
        units.ToMm(Mark!.Value));
}

/// <summary>What a scatter must satisfy.</summary>
internal sealed class ScatterInputRules : AbstractValidator<ScatterInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public ScatterInputRules(UnitSystem units)
    {
        RuleFor(scatter => scatter.Yield).Within(Ranges.YieldScatter, units);
        RuleFor(scatter => scatter.Thickness).Within(Ranges.ThicknessScatter, units);
        RuleFor(scatter => scatter.Modulus).Within(Ranges.ModulusScatter, units);
        RuleFor(scatter => scatter.FoldAngle).Within(Ranges.AngleScatter, units);
        RuleFor(scatter => scatter.Mark).Within(Ranges.MarkScatter, units);
    }
}
