using Forming.Contact;
using Forming.Facets;

namespace Forming.Pulling;

/// <summary>How far along the lead-out to pull.</summary>
public static class Lever
{
    /// <summary>No lever that a plan chooses is longer [mm]: an assumption.</summary>
    public const double MostMm = 250;

    /// <summary>
    /// Share of arc, form sweep and springback by which the panel slides; source key <c>wrap-model</c>: exceeded in 8 of 219 simulated
    /// pulls, by 8 % at most where the lever is short.
    /// </summary>
    private const double SlideShare = 1.0 / 75;

    /// <summary>The form sweep to which pulls were simulated [rad]: further round the arch is taken to grow no more.</summary>
    private const double MostSlideSweep = 4.2;

    /// <summary>
    /// Share of the curve: with shorter levers the hand meets the form before the last facets lie, so gentle is the rest of the moment
    /// there. An assumption; 45 of 48 simulated jobs came off as wanted with it, the others were bent by 2.5 times and more.
    /// </summary>
    private const double FollowedShare = 0.25;

    /// <summary>From this springback on, whatever the form turns, no lever pulls a panel over it that turns far [rad].</summary>
    private const double LeastOfMostSpringback = 115 * Math.PI / 180;

    /// <summary>The further the form turns, the less may the panel spring back: sweep and this many times springback are at most
    /// <see cref="MostSweepAndSpringback"/>.</summary>
    private const double SpringbackShare = 2.4;

    /// <inheritdoc cref="SpringbackShare"/>
    private const double MostSweepAndSpringback = 515 * Math.PI / 180;

    private const int MostRounds = 30;

    private const double Equal = 1 + 1e-10;

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

    /// <summary>
    /// Lever below which a plan that is solved on the simulated pull does not shorten it: there the simulation tells whether the wrap
    /// runs in order, and <see cref="LongestMm"/>, an estimate of the same, reads low for long gentle curves.
    /// </summary>
    /// <param name="curveMidMm">Mid-surface length of the whole curve [mm].</param>
    /// <returns>Hand to the end of the curve [mm].</returns>
    public static double FollowedMm(double curveMidMm) => FollowedShare * curveMidMm;

    /// <summary>The most springback with which a panel can be pulled over a form.</summary>
    /// <param name="formSweep">How far the form turns [rad].</param>
    /// <returns>Springback over the whole curve [rad]: with more, no lever does.</returns>
    /// <remarks>
    /// A force square to the end of an elastic strip of length l bends its beginning to a moment M while <c>l M/E'I</c> is at most 2.9, a
    /// sheet that yields to 2.6: with more, the free side only curls up. The hand has to be a quarter of the curve past its end and more,
    /// or it meets the form before the last facet lies. So springback, <c>M/E'I</c> times the curve, ends near 2.6/1.25, sooner over forms
    /// that turn far, as the panel slides forward over them. Source key <c>wrap-model</c>: over rigid forms that turn 170 to 320 degrees,
    /// with levers of a tenth to six tenths of the curve, none of 50 panels past this came off as far round as wanted.
    /// </remarks>
    public static double MostSpringback(double formSweep) =>
        Math.Max(LeastOfMostSpringback, (MostSweepAndSpringback - formSweep) / SpringbackShare);

    /// <summary>How far the panel slides forward under the hand until the last facet is pulled down.</summary>
    /// <param name="curveMidMm">Mid-surface length of the whole curve [mm].</param>
    /// <param name="formSweep">How far the form turns [rad].</param>
    /// <param name="springback">How far the panel would spring back over the whole curve [rad].</param>
    /// <returns>Slide [mm].</returns>
    /// <remarks>
    /// What lies over the form already springs back a little and arches over the folds, and the length of that arch comes from the
    /// sheet under the hand. The arch is as high as springback times arc, and longer than the form by its height times the sweep.
    /// </remarks>
    public static double SlideMm(double curveMidMm, double formSweep, double springback) => formSweep > 0
        ? SlideShare * curveMidMm * Math.Min(formSweep, MostSlideSweep) * springback * Math.Min(1, MostSlideSweep / formSweep)
        : 0;

    /// <summary>
    /// The caller's lever, or the lead-out shortened to what keeps the wrap in order, but never below the shortest that pulls the last
    /// facet down.
    /// </summary>
    /// <param name="inOrderMm">Longest lever that keeps the wrap in order, with something in hand [mm].</param>
    /// <param name="callersMm">The caller's lever [mm], or null.</param>
    /// <param name="leadOutMm">The panel's lead-out [mm].</param>
    /// <param name="leastMm">Shortest lever for the widest facet, from <see cref="FacetJudge.LeastLeverMm"/> [mm].</param>
    /// <returns>Hand to the end of the curve [mm].</returns>
    public static double Choose(double inOrderMm, double? callersMm, double leadOutMm, double leastMm) =>
        callersMm ?? Math.Min(Math.Min(leadOutMm, MostMm), Math.Max(inOrderMm, leastMm));

    /// <summary>Widest facet to plan with where the plan chooses the lever, so that a lever of one facet keeps the wrap in order.</summary>
    /// <param name="longestMm">Longest lever that keeps the wrap in order [mm].</param>
    /// <param name="minFacetMm">Narrowest facet the brake can fold [mm].</param>
    /// <returns>Facet width [mm].</returns>
    /// <remarks>
    /// Where even the narrowest does not fit under the longest lever, folding as narrow as that helps nobody. So the limit is let go
    /// as fast as it closed in: neither folds nor lever jump from one job to the next.
    /// </remarks>
    public static double WidestFacetMm(double longestMm, double minFacetMm) => minFacetMm + Math.Abs(longestMm - minFacetMm);

    /// <summary>Chooses lever and folds together: facets that are pulled at a lever must not be wider than the lever is long.</summary>
    /// <typeparam name="T">A plan of folds.</typeparam>
    /// <param name="choose">The lever to the widest facet, from <see cref="Choose"/> [mm].</param>
    /// <param name="plan">The folds at a lever.</param>
    /// <param name="widestFacet">Their widest facet [mm].</param>
    public static T Settle<T>(Func<double, double> choose, Func<double, T> plan, Func<T, double> widestFacet)
    {
        // A longer lever allows wider facets, never without bound: lever and facets grow together and stop.
        var lever = choose(0);
        var planned = plan(lever);
        for (var round = 0; round < MostRounds; round++)
        {
            var next = choose(widestFacet(planned));
            if (!(next > lever * Equal))
                break;
            lever = next;
            planned = plan(lever);
        }

        return planned;
    }
}
