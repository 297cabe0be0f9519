using Forming.Contact;
using Forming.Springback;

namespace Forming.Pulling;

/// <summary>What it takes to pull the panel around the form.</summary>
/// <param name="MomentPerWidth">Bending moment at the tightest point [N·mm/mm].</param>
/// <param name="LeverMm">Hand to the end of the curve [mm].</param>
/// <param name="LongestLeverMm">Longest lever that keeps the wrap in order [mm]; 0 where none does, null where any does.</param>
/// <param name="ClampGapMm">From the first fold's tangent line back to the clamp [mm], at least 0.</param>
/// <param name="ForceN">Largest hand force over the wrap, whole width [N].</param>
/// <param name="ClampLoadN">Hold-down at the clamp, whole width [N].</param>
/// <param name="EnergyReleasedJ">Elastic energy let go when the pull ends [J].</param>
public sealed record Pull(
    double MomentPerWidth,
    double LeverMm,
    double? LongestLeverMm,
    double ClampGapMm,
    double ForceN,
    double ClampLoadN,
    double EnergyReleasedJ);

/// <summary>Moments, forces and energy of the pull.</summary>
public static class PullForces
{
    /// <summary>Hand force over that of pure bending, 0.97 to 1.02 in the wrap model: the high side.</summary>
    internal const double ForceFactor = 1.02;

    /// <summary>
    /// Largest push on a fold beyond the first over the hand force, 0.59 to 1.88 in 21 wraps of the wrap model: the high side.
    /// </summary>
    internal const double FoldPushFactor = 2;

    /// <summary>What it takes to pull a panel around.</summary>
    /// <param name="curve">The contact curve.</param>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="tightest">The panel's state at its tightest point.</param>
    /// <param name="leverMm">Hand to the end of the curve [mm].</param>
    /// <param name="leastLeverMm">Shortest lever a force is reckoned with, one facet [mm], &gt; 0.</param>
    /// <param name="widthMm">The panel's width [mm].</param>
    /// <param name="clamp">The clamp.</param>
    /// <param name="clampGapMm">From the first fold's tangent line back to it [mm], at least 0.</param>
    /// <remarks>Source key <c>wrap-model</c> for the factors; energy <c>∫ M²/(2E'I) ds</c> over curve and lever.</remarks>
    public static Pull Compute(
        ContactCurve curve,
        BendingLaw law,
        BentState tightest,
        double leverMm,
        double leastLeverMm,
        double widthMm,
        Clamp clamp,
        double clampGapMm)
    {
        var lever = Math.Max(leverMm, leastLeverMm);
        var places = curve.Extremes;
        double forcePerWidth = 0, energyPerWidth = 0;
        foreach (var place in places)
            forcePerWidth = Math.Max(forcePerWidth, ForceFactor * place.State.MomentPerWidth / (lever + curve.MidMm - place.MidMm));
        foreach (var run in curve.Runs)
            energyPerWidth += run.Integral(state => state.MomentPerWidth * state.MomentPerWidth);

        var endMoment = places[^1].State.MomentPerWidth;
        energyPerWidth = (energyPerWidth + (endMoment * endMoment * lever / 3)) / (2 * law.Stiffness);
        var longest = Lever.LongestMm(places, curve.MidMm);
        return new(
            tightest.MomentPerWidth,
            leverMm,
            double.IsFinite(longest) ? Math.Max(0, longest) : null,
            clampGapMm,
            forcePerWidth * widthMm,
            clamp.LoadN(clampGapMm, places[0].State.MomentPerWidth * widthMm),
            energyPerWidth * widthMm / 1000);
    }
}
