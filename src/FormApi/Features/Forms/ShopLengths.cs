using FormApi.Http.Units;
using Forming;

namespace FormApi.Features.Forms;

/// <summary>Lengths that a shop would take where nobody says, as it would say them.</summary>
internal static class ShopLengths
{
    /// <summary>A flat that a clamp bears on and a brake holds: 60 mm or 2.5 in.</summary>
    /// <param name="units">The caller's units.</param>
    public static double Lead(UnitSystem units) => units.Unit == LengthUnit.In ? 2.5 : 60;

    /// <summary>A flat that two hands pull on: 150 mm or 6 in.</summary>
    /// <param name="units">The caller's units.</param>
    public static double LeadOut(UnitSystem units) => units.Unit == LengthUnit.In ? 6 : 150;
}
