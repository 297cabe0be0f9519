using System.Text.Json.Serialization;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Units;
using Forming;
using Forming.Results;

namespace FormApi.Features.Gauges;

/// <summary>The gauge systems: the same number means another thickness in each.</summary>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Units">Units of the thicknesses.</param>
/// <param name="Systems">The systems.</param>
internal sealed record GaugesAnswer(
    string Engine,
    [property: JsonConverter(typeof(WordConverter<LengthUnit>))] LengthUnit Units,
    GaugeSystemAnswer[] Systems)
{
    /// <summary>All systems.</summary>
    /// <param name="units">The caller's units.</param>
    public static GaugesAnswer In(UnitSystem units) => new(
        EngineVersion.Current,
        units.Unit,
        [
            .. Forming.Materials.Gauges.Systems.Select(system => new GaugeSystemAnswer(
                system.Id,
                system.Name,
                system.Law,
                system.Source,
                system.Status,
                [.. system.Thicknesses.Select(row => new GaugeAnswer(row.Gauge, units.Length(row.Millimetres), row.Source))])),
        ]);
}

/// <summary>One gauge system.</summary>
/// <param name="Id">Id to ask for it by.</param>
/// <param name="Name">Name, and the sheet it is used for.</param>
/// <param name="Law">The law behind the published table, in words.</param>
/// <param name="Source">Key of the system's source in <c>/v1/references</c>.</param>
/// <param name="Status">How well the table is supported.</param>
/// <param name="Gauges">The published table.</param>
internal sealed record GaugeSystemAnswer(
    string Id,
    string Name,
    string Law,
    string Source,
    [property: JsonConverter(typeof(WordConverter<Status>))] Status Status,
    GaugeAnswer[] Gauges);

/// <summary>The thickness of one gauge.</summary>
/// <param name="Gauge">Gauge number.</param>
/// <param name="Thickness">Nominal thickness [mm or in].</param>
/// <param name="Source">Key of its source in <c>/v1/references</c>.</param>
internal sealed record GaugeAnswer(int Gauge, double Thickness, string Source);
