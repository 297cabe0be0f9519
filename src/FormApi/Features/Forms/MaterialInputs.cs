using FormApi.Http.Units;
using Forming.Materials;
using Forming.Results;

namespace FormApi.Features.Forms;

/// <summary>From a material as a request states it to the library's.</summary>
internal static class MaterialInputs
{
    private const string Caller = "caller";

    private static readonly Material Blank = new()
    {
        Id = "custom",
        Name = "the caller's material",
        Family = MetalFamily.Other,
        YoungsModulusMpa = 0,
        PoissonRatio = 0,
        YieldMpa = 0,
        UltimateMpa = 0,
        DensityKgPerCubicMetre = 0,
        MinRadiusOverThickness = 0,
    };

    /// <summary>The material of the table, with the caller's values over it; each of those says that it is the caller's.</summary>
    /// <param name="input">A material that passed its rules.</param>
    /// <param name="units">The caller's units.</param>
    public static Material ToMaterial(MaterialInput input, UnitSystem units)
    {
        var known = input.Id is { } id && MaterialCatalog.Default.TryFindNamed(id, out var found) ? found : Blank;
        return input.HasOwnFigures() ? WithOwnFigures(known, input, units) : known;
    }

    /// <summary>The material by its id, as the echo shows it.</summary>
    /// <param name="input">A material that passed its rules.</param>
    public static MaterialInput ById(MaterialInput input) =>
        input.Id is { } name && MaterialCatalog.Default.TryFindNamed(name, out var found) && found.Id != name
            ? input with { Id = found.Id }
            : input;

    private static Material WithOwnFigures(Material known, MaterialInput input, UnitSystem units)
    {
        var provenance = new Dictionary<string, Provenance>(known.Provenance);
        return known with
        {
            YoungsModulusMpa = Own(input.YoungsModulus, "youngsModulus", units.ToMpa) ?? known.YoungsModulusMpa,
            PoissonRatio = Own(input.PoissonRatio, "poissonRatio") ?? known.PoissonRatio,
            YieldMpa = Own(input.Yield, "yield", units.ToMpa) ?? known.YieldMpa,
            UltimateMpa = Own(input.Ultimate, "ultimate", units.ToMpa) ?? known.UltimateMpa,
            ElongationPercent = Own(input.Elongation, "elongation") ?? known.ElongationPercent,
            StrengthCoefficientMpa = Own(input.StrengthCoefficient, "strengthCoefficient", units.ToMpa) ?? known.StrengthCoefficientMpa,
            StrainHardening = Own(input.StrainHardening, "strainHardening") ?? known.StrainHardening,
            DensityKgPerCubicMetre = Own(input.Density, "density", units.ToKgPerCubicMetre) ?? known.DensityKgPerCubicMetre,
            MinRadiusOverThickness = Own(input.MinRadiusOverThickness, "minRadiusOverThickness") ?? known.MinRadiusOverThickness,
            Provenance = provenance,
        };

        double? Own(double? given, string property, Func<double, double>? convert = null)
        {
            if (given is not { } figure)
                return null;
            provenance[property] = new(Caller, Status.Caller);
            return convert is null ? figure : convert(figure);
        }
    }
}
