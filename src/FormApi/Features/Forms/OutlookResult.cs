using System.Text.Json.Serialization;
using FormApi.Http.Json;
using FormApi.Http.Units;
using Forming;
using Forming.Outlook;

namespace FormApi.Features.Forms;

/// <summary>How far panels may differ, by <c>panel.scatter</c>: 95 of 100 lie in each band. Null: not known.</summary>
/// <param name="Known">Whether it is known.</param>
/// <param name="Coarse">Whether the bands are rough.</param>
/// <param name="Text">In words.</param>
/// <param name="Radius">Radius over the middle folds [mm or in].</param>
/// <param name="Sweep">Sweep [°]; null on a taper.</param>
/// <param name="Ripple">Largest ripple [mm or in].</param>
/// <param name="Chance">Chances, 0 to 1.</param>
/// <param name="Shares">Each cause's share in the variance of the radius, or else of the sweep, in the order of <c>scatter</c>.</param>
/// <param name="AfterStrip">After one strip of the coil, read to 1 %; null where springback is measured.</param>
/// <param name="Turn">Turn of a taper's face [°]; else left out.</param>
internal sealed record OutlookResult(
    bool Known,
    [property: InFull] bool Coarse,
    [property: InFull] string Text,
    OutlookBandResult? Radius,
    OutlookBandResult? Sweep,
    OutlookBandResult? Ripple,
    [property: InFull] ChanceResult Chance,
    [property: InFull] double[] Shares,
    [property: InFull] AfterStripResult? AfterStrip,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] OutlookBandResult? Turn)
{
    /// <summary>The outlook in the caller's units.</summary>
    /// <param name="outlook">The outlook.</param>
    /// <param name="isTaper">Whether the panel is a taper, whose face turns by less than its edges.</param>
    /// <param name="units">The caller's units.</param>
    public static OutlookResult From(PanelOutlook outlook, bool isTaper, UnitSystem units) => new(
        outlook.WhyUnknown is null,
        outlook.IsCoarse,
        units.Wording.Of(outlook.Text),
        OutlookBandResult.OfLength(outlook.RadiusMm, units),
        isTaper ? null : OfAngle(outlook.Sweep),
        outlook.Ripple is var (value, high) ? new(null, units.Length(value), units.Length(high)) : null,
        new(Number(outlook.ChanceOfFacets), Number(outlook.ChanceOfSweep)),
        Lists.Map(outlook.Shares, WireNumber.Of),
        outlook.AfterStrip is { } strip
            ? new(
                OutlookBandResult.OfLength(strip.RadiusMm, units),
                isTaper ? null : OfAngle(strip.Sweep),
                isTaper ? OfAngle(strip.Sweep) : null)
            : null,
        isTaper ? OfAngle(outlook.Sweep) : null);

    private static double? Number(double? chance) => chance is { } known ? WireNumber.Of(known) : null;

    private static OutlookBandResult? OfAngle(OutlookBand? band) => band is { } known
        ? new(Degrees(known.Low), Degrees(known.Value), Degrees(known.High))
        : null;

    private static double Degrees(double radians) => UnitSystem.Degrees(new Angle(radians));
}

/// <summary>A band.</summary>
/// <param name="Low">Low end.</param>
/// <param name="Value">What is predicted.</param>
/// <param name="High">High end.</param>
internal sealed record OutlookBandResult(double? Low, double Value, double High)
{
    /// <summary>A band of lengths in the caller's units, or null.</summary>
    /// <param name="band">The band, or null.</param>
    /// <param name="units">The caller's units.</param>
    public static OutlookBandResult? OfLength(OutlookBand? band, UnitSystem units) =>
        band is { } known ? new(units.Length(known.Low), units.Length(known.Value), units.Length(known.High)) : null;
}

/// <summary>Chances.</summary>
/// <param name="Facets">Of no facet showing.</param>
/// <param name="Sweep">Of a sweep within tolerance.</param>
internal sealed record ChanceResult(double? Facets, double? Sweep);

/// <summary>Bands after a strip.</summary>
/// <param name="Radius">Radius [mm or in].</param>
/// <param name="Sweep">Sweep [°]; null on a taper.</param>
/// <param name="Turn">Turn of a taper's face [°]; else left out.</param>
internal sealed record AfterStripResult(
    OutlookBandResult? Radius,
    OutlookBandResult? Sweep,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] OutlookBandResult? Turn);
