using Forming.Contact;
using Forming.Facets;

namespace Forming.Panels;

/// <summary>How far along the lead-out to pull.</summary>
public static class Lever
{
    /// <summary>No lever that a plan chooses is longer [mm]: an assumption.</summary>
    public const double MostMm = 250;

    /// <summary>Longest lever at which the wrap runs in order: every lever along it within a share of the longest allowed there.</summary>
    /// <param name="places">Places along the curve, its tightest and gentlest among them.</param>
    /// <param name="curveMidMm">Mid-surface length of the whole curve [mm].</param>
    /// <param name="share">Share of the longest, 1 for the limit itself.</param>
    /// <returns>Hand to the end of the curve [mm]; 0 or less where no lever does, infinite where any does.</returns>
    /// <remarks>Source key <c>wrap-model</c>: <c>l_j = lever + arc still to wrap &lt;= 0.8/(k - W/M)</c>.</remarks>
    public static double LongestMm(IReadOnlyList<ContactPoint> places, double curveMidMm, double share = 1)
    {
        var longest = double.PositiveInfinity;
        foreach (var place in places)
        {
            if (place.State.IsPlastic)
                longest = Math.Min(longest, (share * PrintThrough.LongestLever(place.State)) - (curveMidMm - place.MidMm));
        }

        return longest;
    }

    /// <summary>The caller's lever, or the lead-out shortened to what keeps the wrap in order.</summary>
    /// <param name="inOrderMm">Longest lever that keeps the wrap in order, with something in hand [mm].</param>
    /// <param name="callersMm">The caller's lever [mm], or null.</param>
    /// <param name="leadOutMm">The panel's lead-out [mm].</param>
    /// <param name="leastMm">A shorter lever is no lever [mm]: where none in order is longer, the lead-out is taken as it is.</param>
    /// <returns>Hand to the end of the curve [mm].</returns>
    public static double Choose(double inOrderMm, double? callersMm, double leadOutMm, double leastMm)
    {
        var leadOut = Math.Min(leadOutMm, MostMm);
        return callersMm ?? (inOrderMm >= leastMm ? Math.Min(leadOut, inOrderMm) : leadOut);
    }
}
