using System.Text.Json.Serialization;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Units;
using Forming;
using Forming.Materials;
using Forming.Results;

namespace FormApi.Features.Materials;

/// <summary>The materials this engine knows.</summary>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Units">Units of the values.</param>
/// <param name="Materials">The materials.</param>
internal sealed record MaterialsAnswer(
    string Engine,
    [property: JsonConverter(typeof(WordConverter<LengthUnit>))] LengthUnit Units,
    MaterialAnswer[] Materials)
{
    /// <summary>All materials.</summary>
    /// <param name="units">The caller's units.</param>
    public static MaterialsAnswer In(UnitSystem units) =>
        new(EngineVersion.Current, units.Unit, [.. MaterialCatalog.Default.All.Select(material => MaterialAnswer.From(material, units))]);
}

/// <summary>A sheet material: nominal properties at room temperature. A mill certificate or a trial bend overrides them.</summary>
/// <param name="Id">Id to ask for it by.</param>
/// <param name="Name">Name in words.</param>
/// <param name="Aliases">Other names to ask for it by; case, blanks and signs do not count.</param>
/// <param name="Family">Metal family, which decides the cautions.</param>
/// <param name="GaugeSystem">The gauge system this sheet is ordered by; null where it is ordered by thickness.</param>
/// <param name="YoungsModulus">Young's modulus [MPa or psi].</param>
/// <param name="PoissonRatio">Poisson's ratio.</param>
/// <param name="Yield">Yield stress, 0.2 % proof [MPa or psi].</param>
/// <param name="Ultimate">Ultimate tensile strength [MPa or psi].</param>
/// <param name="Elongation">Total elongation [%]; null where unknown.</param>
/// <param name="StrengthCoefficient">Strength coefficient K of the flow curve [MPa or psi]; null where unknown.</param>
/// <param name="StrainHardening">Strain-hardening exponent n of the flow curve; null where unknown.</param>
/// <param name="Density">Density [kg/m³ or lb/in³].</param>
/// <param name="MinRadiusOverThickness">Smallest inside bend radius over thickness, across the grain, 90°.</param>
/// <param name="Cautions">Cautions about the metal.</param>
/// <param name="Text">Remarks.</param>
internal sealed record MaterialAnswer(
    string Id,
    string Name,
    IReadOnlyList<string> Aliases,
    [property: JsonConverter(typeof(WordConverter<MetalFamily>))] MetalFamily Family,
    string? GaugeSystem,
    PropertyAnswer YoungsModulus,
    PropertyAnswer PoissonRatio,
    PropertyAnswer Yield,
    PropertyAnswer Ultimate,
    PropertyAnswer? Elongation,
    PropertyAnswer? StrengthCoefficient,
    PropertyAnswer? StrainHardening,
    PropertyAnswer Density,
    PropertyAnswer MinRadiusOverThickness,
    IReadOnlyList<string> Cautions,
    string Text)
{
    /// <summary>One material.</summary>
    /// <param name="material">The material.</param>
    /// <param name="units">The caller's units.</param>
    public static MaterialAnswer From(Material material, UnitSystem units)
    {
        return new(
            material.Id,
            material.Name,
            material.Aliases,
            material.Family,
            material.GaugeSystem,
            Of("youngsModulus", units.Stress(material.YoungsModulusMpa), units.StressName),
            Of("poissonRatio", material.PoissonRatio, ""),
            Of("yield", units.Stress(material.YieldMpa), units.StressName),
            Of("ultimate", units.Stress(material.UltimateMpa), units.StressName),
            OfOptional("elongation", material.ElongationPercent, value => value, "%"),
            OfOptional("strengthCoefficient", material.StrengthCoefficientMpa, units.Stress, units.StressName),
            OfOptional("strainHardening", material.StrainHardening, value => value, ""),
            Of("density", units.Density(material.DensityKgPerCubicMetre), units.DensityName),
            Of("minRadiusOverThickness", material.MinRadiusOverThickness, ""),
            material.Cautions,
            material.Notes);

        PropertyAnswer Of(string property, double value, string unit)
        {
            var origin = material.Provenance[property];
            return new(value, unit, origin.Source, origin.Status, material.ProvenanceNotes.GetValueOrDefault(property));
        }

        PropertyAnswer? OfOptional(string property, double? value, Func<double, double> convert, string unit) =>
            value is { } known ? Of(property, convert(known), unit) : null;
    }
}

/// <summary>One property and its source.</summary>
/// <param name="Value">The value.</param>
/// <param name="Unit">Its unit; empty for a plain number.</param>
/// <param name="Source">Key of its source in <c>/v1/references</c>.</param>
/// <param name="Status">How well it is supported.</param>
/// <param name="Text">What qualifies it, or null.</param>
internal sealed record PropertyAnswer(
    double Value,
    string Unit,
    string Source,
    [property: JsonConverter(typeof(WordConverter<Status>))] Status Status,
    string? Text);
