using System.Linq.Expressions;
using System.Text.Json.Serialization;
using FluentValidation;
using FormApi.Http.Requests;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming.Materials;

namespace FormApi.Features.Forms;

/// <summary>
/// A material of the table by its id, with any property overridden; or, without an id, the caller's material with all its
/// properties.
/// </summary>
/// <param name="Id">Id or alias in <c>/v1/materials</c>. Left out for the caller's own material.</param>
/// <param name="YoungsModulus">Young's modulus [MPa or psi].</param>
/// <param name="PoissonRatio">Poisson's ratio.</param>
/// <param name="Yield">Yield stress, 0.2 % proof [MPa or psi].</param>
/// <param name="Ultimate">Ultimate tensile strength [MPa or psi].</param>
/// <param name="Elongation">Total elongation [%].</param>
/// <param name="StrengthCoefficient">Strength coefficient K of the flow curve [MPa or psi]; needs <c>strainHardening</c>.</param>
/// <param name="StrainHardening">Strain-hardening exponent n of the flow curve; needs <c>strengthCoefficient</c>.</param>
/// <param name="Density">Density [kg/m³ or lb/in³].</param>
/// <param name="MinRadiusOverThickness">Smallest inside bend radius over thickness, across the grain, 90°.</param>
internal sealed record MaterialInput(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Id = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? YoungsModulus = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? PoissonRatio = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Yield = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Ultimate = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Elongation = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? StrengthCoefficient = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? StrainHardening = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Density = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? MinRadiusOverThickness = null)
{
    /// <summary>Whether the caller gave any property.</summary>
    public bool HasOwnFigures() =>
        (YoungsModulus ?? PoissonRatio ?? Yield ?? Ultimate ?? Elongation ?? StrengthCoefficient ?? StrainHardening
            ?? Density ?? MinRadiusOverThickness) is not null;
}

/// <summary>What a material must satisfy.</summary>
internal sealed class MaterialInputRules : AbstractValidator<MaterialInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public MaterialInputRules(UnitSystem units)
    {
        RuleFor(material => material.Id).Must(id => MaterialCatalog.Default.TryFindNamed(id!, out _))
            .Else("unknown-material", TextOfUnknown, _ => "an id or alias of /v1/materials, or no id and all properties")
            .When(material => material.Id is not null);
        When(material => material.Id is null, () =>
        {
            Need(material => material.YoungsModulus);
            Need(material => material.PoissonRatio);
            Need(material => material.Yield);
            Need(material => material.Ultimate);
            Need(material => material.Density);
            Need(material => material.MinRadiusOverThickness);
        });
        When(material => material.HasOwnFigures(), () =>
        {
            RuleFor(material => material.YoungsModulus).Within(Ranges.YoungsModulus, units);
            RuleFor(material => material.PoissonRatio).Within(Ranges.PoissonRatio, units);
            RuleFor(material => material.Yield).Within(Ranges.Strength, units);
            RuleFor(material => material.Ultimate).Within(Ranges.Strength, units);
            RuleFor(material => material.Elongation).Within(Ranges.Elongation, units);
            RuleFor(material => material.StrengthCoefficient).Within(Ranges.StrengthCoefficient, units);
            RuleFor(material => material.StrainHardening).Within(Ranges.StrainHardening, units);
            RuleFor(material => material.Density).Within(Ranges.Density, units);
            RuleFor(material => material.MinRadiusOverThickness).Within(Ranges.MinRadius, units);
            RuleFor(material => material.StrainHardening).NotNull()
                .Else("missing-property", "The flow curve needs both strengthCoefficient and strainHardening.", "strengthCoefficient and strainHardening together, or neither")
                .When(material => material.StrengthCoefficient is not null);
            RuleFor(material => material.StrengthCoefficient).NotNull()
                .Else("missing-property", "The flow curve needs both strengthCoefficient and strainHardening.", "strengthCoefficient and strainHardening together, or neither")
                .When(material => material.StrainHardening is not null);
            RuleFor(material => material.Ultimate).Must((material, ultimate) => !(ultimate < material.Yield))
                .Else("below-yield", "The ultimate strength is below the yield stress.", "at least the yield stress");
        });
    }

    private void Need(Expression<Func<MaterialInput, double?>> figure) => RuleFor(figure).NotNull()
        .Else("missing-property", "A material without an id needs this property.", "a number, or an id of /v1/materials");

    private static string TextOfUnknown(MaterialInput material) =>
        "Unknown material. Nearest: " + string.Join(", ", Spelling.Nearest(
            material.Id!,
            MaterialCatalog.Default.All.SelectMany(known => known.Aliases.Prepend(known.Id), (known, name) => (name, known.Id)),
            3)) + ".";
}
