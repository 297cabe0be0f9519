using Forming.Results;

namespace Forming.Materials;

/// <summary>A system of sheet gauges. The same number means another thickness in another system.</summary>
/// <param name="Id">Stable id such as <c>brown-sharpe</c>.</param>
/// <param name="Name">Name, and the sheet it is used for.</param>
/// <param name="Law">The law behind the published table, in words.</param>
/// <param name="Source">Key of the source of the system.</param>
/// <param name="Status">How well the table is supported.</param>
/// <param name="Thicknesses">The published table, gauge numbers rising and thickness falling.</param>
/// <seealso cref="GaugeLaw"/>
public sealed record GaugeSystem(
    string Id,
    string Name,
    string Law,
    string Source,
    Status Status,
    IReadOnlyList<GaugeThickness> Thicknesses);
