using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;
using Forming.Results;

namespace Forming.Materials;

/// <summary>The materials this engine knows, each value with its source.</summary>
public sealed class MaterialCatalog
{
    private readonly FrozenDictionary<string, Material> _byId;
    private readonly FrozenDictionary<string, Material> _byName;

    private MaterialCatalog(IReadOnlyList<Material> materials)
    {
        All = materials;
        _byId = materials.ToFrozenDictionary(material => material.Id, StringComparer.Ordinal);
        _byName = materials
            .SelectMany(material => material.Aliases.Prepend(material.Id), (material, name) => (Name: Bare(name), Material: material))
            .DistinctBy(named => named.Name)
            .ToFrozenDictionary(named => named.Name, named => named.Material, StringComparer.Ordinal);
    }

    /// <summary>The catalogue that ships with the engine.</summary>
    public static MaterialCatalog Default { get; } = Of(
        CsvTable.ReadEmbedded("materials.csv"), CsvTable.ReadEmbedded("material-provenance.csv"), CsvTable.ReadEmbedded("material-aliases.csv"));

    /// <summary>All materials, in the order of the table.</summary>
    public IReadOnlyList<Material> All { get; }

    /// <summary>Looks a material up.</summary>
    /// <param name="id">Id, as in <see cref="Material.Id"/>; lower case.</param>
    /// <param name="material">The material, or null where there is none.</param>
    /// <returns>Whether a material has this id.</returns>
    public bool TryFind(string id, [NotNullWhen(true)] out Material? material) => _byId.TryGetValue(id, out material);

    /// <summary>Looks a material up as people write it.</summary>
    /// <param name="name">Id or alias; case, blanks and signs do not count.</param>
    /// <param name="material">The material, or null where there is none.</param>
    /// <returns>Whether a material has this name.</returns>
    public bool TryFindNamed(string name, [NotNullWhen(true)] out Material? material) =>
        _byId.TryGetValue(name, out material) || _byName.TryGetValue(Bare(name), out material);

    /// <summary>A name by its letters and digits alone, in capitals.</summary>
    /// <param name="name">The name.</param>
    public static string Bare(string name) => string.Concat(name.Where(char.IsAsciiLetterOrDigit)).ToUpperInvariant();

    /// <summary>Reads a catalogue.</summary>
    /// <param name="materials">The values, a row a material.</param>
    /// <param name="provenance">Where each value comes from, a row a value.</param>
    /// <param name="aliases">Other names, a row a name.</param>
    internal static MaterialCatalog Of(CsvTable materials, CsvTable provenance, CsvTable aliases)
    {
        var origins = provenance.Rows.ToLookup(row => row.Text("material"));
        var names = aliases.Rows.ToLookup(row => row.Text("material"), row => row.Text("alias"));
        return new MaterialCatalog(
            materials.Rows.Select(row => Read(row, origins[row.Text("id")], names[row.Text("id")])).ToArray().AsReadOnly());
    }

    private static Material Read(CsvRow row, IEnumerable<CsvRow> origins, IEnumerable<string> aliases)
    {
        var gaugeSystem = row.Text("gauge_system");
        return new Material
        {
            Id = row.Text("id"),
            Name = row.Text("name"),
            Aliases = [.. aliases],
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
