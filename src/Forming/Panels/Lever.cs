using Forming.Contact;
using Forming.Facets;

namespace Forming.Panels;

/// <summary>How far along the lead-out to pull.</summary>
public static class Lever
{
    /// <summary>No lever that a plan chooses is longer [mm]: an assumption.</summary>
    public const double MostMm = 250;

    /// <summary>Longest lever at which the wrap runs in order: every lever along it within a share of the longest allowed there.</summary>
    /// <param name="curve">The contact curve.</param>
    /// <param name="share">Share of the longest, 1 for the limit itself.</param>
    /// <returns>Hand to the end of the curve [mm]; 0 or less where no lever does, infinite where any does.</returns>
    /// <remarks>Source key <c>wrap-model</c>: <c>l_j = lever + arc still to wrap &lt;= 0.8/(k - W/M)</c>.</remarks>
    public static double LongestMm(ContactCurve curve, double share = 1)
    {
        var longest = double.PositiveInfinity;
        foreach (var run in curve.Runs)
        {
            foreach (var place in run.Extremes())
            {
                if (place.State.IsPlastic)
                    longest = Math.Min(longest, (share * PrintThrough.LongestLever(place.State)) - (curve.MidMm - place.MidMm));
            }
        }

        return longest;
    }

    /// <summary>The caller's lever, or the lead-out shortened to what keeps the wrap in order.</summary>
    /// <param name="curve">The contact curve.</param>
    /// <param name="callersMm">The caller's lever [mm], or null.</param>
    /// <param name="leadOutMm">The panel's lead-out [mm].</param>
    /// <param name="leastMm">A shorter lever is no lever [mm]: where none in order is longer, the lead-out is taken as it is.</param>
    /// <returns>Hand to the end of the curve [mm].</returns>
    public static double Choose(ContactCurve curve, double? callersMm, double leadOutMm, double leastMm)
    {
        if (callersMm is { } lever)
            return lever;
        var inOrder = LongestMm(curve, FacetJudge.LeverShare);
        var leadOut = Math.Min(leadOutMm, MostMm);
        return inOrder >= leastMm ? Math.Min(leadOut, inOrder) : leadOut;
    }
}
