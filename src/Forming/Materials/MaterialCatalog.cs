using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;
using Forming.Results;

namespace Forming.Materials;

/// <summary>The materials this engine knows, each value with its source.</summary>
public sealed class MaterialCatalog
{
    private readonly FrozenDictionary<string, Material> _byId;

    private MaterialCatalog(IReadOnlyList<Material> materials)
    {
        All = materials;
        _byId = materials.ToFrozenDictionary(material => material.Id, StringComparer.Ordinal);
    }

    /// <summary>The catalogue that ships with the engine.</summary>
    public static MaterialCatalog Default { get; } = Of(CsvTable.ReadEmbedded("materials.csv"), CsvTable.ReadEmbedded("material-provenance.csv"));

    /// <summary>All materials, in the order of the table.</summary>
    public IReadOnlyList<Material> All { get; }

    /// <summary>Looks a material up.</summary>
    /// <param name="id">Id, as in <see cref="Material.Id"/>; lower case.</param>
    /// <param name="material">The material, or null where there is none.</param>
    /// <returns>Whether a material has this id.</returns>
    public bool TryFind(string id, [NotNullWhen(true)] out Material? material) => _byId.TryGetValue(id, out material);

    /// <summary>Reads a catalogue.</summary>
    /// <param name="materials">The values, a row a material.</param>
    /// <param name="provenance">Where each value comes from, a row a value.</param>
    internal static MaterialCatalog Of(CsvTable materials, CsvTable provenance)
    {
        var origins = provenance.Rows.ToLookup(row => row.Text("material"));
        return new MaterialCatalog(materials.Rows.Select(row => Read(row, origins[row.Text("id")])).ToArray().AsReadOnly());
    }

    private static Material Read(CsvRow row, IEnumerable<CsvRow> origins)
    {
        var gaugeSystem = row.Text("gauge_system");
        return new Material
        {
            Id = row.Text("id"),
            Name = row.Text("name"),
            Family = row.Word<MetalFamily>("family"),
            YoungsModulusMpa = row.Number("youngs_modulus_mpa"),
            PoissonRatio = row.Number("poisson_ratio"),
            YieldMpa = row.Number("yield_mpa"),
            UltimateMpa = row.Number("ultimate_mpa"),
            ElongationPercent = row.OptionalNumber("elongation_percent"),
            StrengthCoefficientMpa = row.OptionalNumber("strength_coefficient_mpa"),
            StrainHardening = row.OptionalNumber("strain_hardening"),
            DensityKgPerCubicMetre = row.Number("density_kg_per_m3"),
            MinRadiusOverThickness = row.Number("min_radius_over_thickness"),
            GaugeSystem = gaugeSystem.Length == 0 ? null : gaugeSystem,
            Cautions = row.Text("cautions").Split(" | ", StringSplitOptions.RemoveEmptyEntries).AsReadOnly(),
            Notes = row.Text("notes"),
            Provenance = origins.ToFrozenDictionary(
                origin => origin.Text("property"),
                origin => new Provenance(origin.Text("source"), origin.Word<Status>("status")),
                StringComparer.Ordinal),
            ProvenanceNotes = origins.Where(origin => origin.Text("note").Length > 0).ToFrozenDictionary(
                origin => origin.Text("property"),
                origin => origin.Text("note"),
                StringComparer.Ordinal),
        };
    }
}
