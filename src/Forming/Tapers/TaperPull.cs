using Forming.Pulling;
using Forming.Springback;

namespace Forming.Tapers;

/// <summary>Moments, forces and energy of pulling a tapered panel: those of a straight one, summed along each ruling.</summary>
internal static class TaperPull
{
    /// <summary>What it takes to pull the panel around.</summary>
    /// <param name="wrap">How it wraps.</param>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="leverMm">Hand to the last ruling [mm].</param>
    /// <param name="leastLeverMm">Shortest lever a force is reckoned with, one facet [mm], &gt; 0.</param>
    /// <param name="clamp">The clamp.</param>
    /// <param name="clampGapMm">From the first fold's tangent line back to it [mm], at least 0.</param>
    public static Pull Compute(
        TaperWrap wrap, BendingLaw law, double leverMm, double leastLeverMm, Clamp clamp, double clampGapMm)
    {
        var lever = Math.Max(leverMm, leastLeverMm);
        var formed = wrap.Formed;
        double force = 0, energy = 0;
        (double Turn, double Density) last = default;
        foreach (var turn in wrap.Turns)
        {
            force = Math.Max(force, PullForces.ForceFactor * MomentAt(wrap, law, turn) / (lever + MeanMid(wrap) - MeanMidAt(wrap, turn)));
            var ruling = formed.Panel.At(turn);
            var density = AlongRuling(wrap, law, turn, state => state.MomentPerWidth * state.MomentPerWidth)
                * (ruling.NearWidth + ruling.FarWidth) / 2;
            energy += (turn - last.Turn) * (density + last.Density) / 2;
            last = (turn, density);
        }

        energy += AlongRuling(wrap, law, formed.Panel.Sweep, state => state.MomentPerWidth * state.MomentPerWidth) * lever / 3;
        var longest = wrap.LongestLeverMm(1);
        return new(
            wrap.Tightest.MomentPerWidth,
            leverMm,
            double.IsFinite(longest) ? Math.Max(0, longest) : null,
            clampGapMm,
            force,
            clamp.LoadN(clampGapMm, MomentAt(wrap, law, 0)),
            energy / (2 * law.Stiffness) / 1000);
    }

    /// <summary>Sections of the form along the middles of its rulings.</summary>
    /// <param name="wrap">How the panel wraps.</param>
    /// <param name="law">The panel's bending law.</param>
    public static IReadOnlyList<GiveSection> SectionsOf(TaperWrap wrap, BendingLaw law)
    {
        return [.. wrap.Turns.Select(SectionAt)];

        GiveSection SectionAt(double turn)
        {
            var triad = wrap.Formed.TriadAt(turn);
            var moment = MomentAt(wrap, law, turn);
            var turned = AlongRuling(wrap, law, turn, state => (state.Curvature * state.MomentPerWidth) - state.WorkPerArea);
            return new(
                MeanMidAt(wrap, turn), MiddleAt(wrap.Formed, turn), triad.M, -1 * triad.N, moment, moment > 0 ? turned / moment : 0);
        }
    }

    /// <summary>Width of the curve square to the rulings, at their middles [mm].</summary>
    /// <param name="wrap">How the panel wraps.</param>
    public static double MeanMid(TaperWrap wrap) => (wrap.NearMidMm + wrap.FarMidMm) / 2;

    private static Point3 MiddleAt(FormedPanel formed, double turn) =>
        formed.NearAt(turn) + (formed.Panel.At(turn).Length / 2 * formed.TriadAt(turn).E);

    private static double MomentAt(TaperWrap wrap, BendingLaw law, double turn) =>
        AlongRuling(wrap, law, turn, state => state.MomentPerWidth);

    // Integral along one ruling of something that depends on how far the panel is bent.
    private static double AlongRuling(TaperWrap wrap, BendingLaw law, double turn, Func<BentState, double> density)
    {
        var ruling = wrap.Formed.Panel.At(turn);
        var factor = wrap.Formed.Factor.At(turn);
        return ruling.Length * RulingBalance.Mean(
            radius => density(law.At(factor / radius)), ruling.NearBendRadius, ruling.FarBendRadius);
    }

    private static double MeanMidAt(TaperWrap wrap, double turn) =>
        (wrap.Formed.NearWidth.At(turn) + wrap.Formed.FarWidth.At(turn)) / 2;
}
