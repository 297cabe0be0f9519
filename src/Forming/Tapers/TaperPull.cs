using Forming.Panels;
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
    /// <param name="clampGapMm">From the first fold back to the clamp [mm], &gt; 0.</param>
    public static Pull Compute(TaperWrap wrap, BendingLaw law, double leverMm, double leastLeverMm, double clampGapMm)
    {
        var lever = Math.Max(leverMm, leastLeverMm);
        var formed = wrap.Formed;
        double force = 0, energy = 0;
        (double Turn, double Density) last = default;
        foreach (var turn in wrap.Turns)
        {
            force = Math.Max(force, PullForces.ForceFactor * MomentAt(wrap, law, turn) / (lever + MeanMid(wrap) - MeanMidAt(wrap, turn)));
            var ruling = formed.Panel.At(turn);
            var density = AlongRuling(wrap, law, turn, moment => moment * moment) * (ruling.NearWidth + ruling.FarWidth) / 2;
            energy += (turn - last.Turn) * (density + last.Density) / 2;
            last = (turn, density);
        }

        energy += AlongRuling(wrap, law, formed.Panel.Sweep, moment => moment * moment) * lever / 3;
        var longest = wrap.LongestLeverMm(1);
        return new(
            wrap.Tightest.MomentPerWidth,
            leverMm,
            double.IsFinite(longest) ? Math.Max(0, longest) : null,
            force,
            PullForces.ClampFactor * MomentAt(wrap, law, 0) / clampGapMm,
            energy / (2 * law.Stiffness) / 1000);
    }

    /// <summary>Sections of the form along the middles of its rulings, with the wrap complete.</summary>
    /// <param name="wrap">How the panel wraps.</param>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="leverMm">Hand to the last ruling [mm].</param>
    public static IEnumerable<GiveSection> SectionsOf(TaperWrap wrap, BendingLaw law, double leverMm)
    {
        var end = wrap.Formed.Panel.Sweep;
        var (middle, onwards) = (MiddleAt(wrap.Formed, end), wrap.Formed.TriadAt(end).M);
        foreach (var turn in wrap.Turns)
        {
            var arm = leverMm + (middle - MiddleAt(wrap.Formed, turn)).Dot(onwards);
            yield return new(MeanMidAt(wrap, turn), arm, MomentAt(wrap, law, turn));
        }
    }

    private static Point3 MiddleAt(FormedPanel formed, double turn) =>
        formed.NearAt(turn) + (formed.Panel.At(turn).Length / 2 * formed.TriadAt(turn).E);

    private static double MomentAt(TaperWrap wrap, BendingLaw law, double turn) => AlongRuling(wrap, law, turn, moment => moment);

    // Integral of a function of the moment per width along one ruling.
    private static double AlongRuling(TaperWrap wrap, BendingLaw law, double turn, Func<double, double> function)
    {
        var ruling = wrap.Formed.Panel.At(turn);
        var factor = wrap.Formed.Factor.At(turn);
        return ruling.Length * RulingBalance.Mean(
            radius => function(law.At(factor / radius).MomentPerWidth), ruling.NearBendRadius, ruling.FarBendRadius);
    }

    private static double MeanMid(TaperWrap wrap) => (wrap.NearMidMm + wrap.FarMidMm) / 2;

    private static double MeanMidAt(TaperWrap wrap, double turn) =>
        (wrap.Formed.NearWidth.At(turn) + wrap.Formed.FarWidth.At(turn)) / 2;
}
