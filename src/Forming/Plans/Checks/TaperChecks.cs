using Forming.Checks;
using Forming.Tapers;

namespace Forming.Plans.Checks;

/// <summary>How far a taper's plane facets and balanced springback may be trusted.</summary>
internal static class TaperChecks
{
    /// <summary>A free strip at an end may spring this share away before it is worth a word (assumption).</summary>
    private const double MostEndBias = 0.2;

    private const double MostTouchMissMm = 0.02;

    public static void AddTo(List<Check> checks, TaperReport taper)
    {
        checks.Add(EndBias(taper));
        checks.Add(TouchMiss(taper));
    }

    private static Check EndBias(TaperReport taper)
    {
        var worst = Math.Max(Math.Abs(taper.EndBiasNear), Math.Abs(taper.EndBiasFar));
        return PlanChecks.AtMost(
            CheckIds.EndBias,
            Verdict.Warn,
            worst,
            MostEndBias,
            $"the sheet keeps stress along its rulings: a narrow strip cut free would spring {taper.EndBiasNear:P0} at the near end and {taper.EndBiasFar:P0} at the far end: expect the ends to flare, and leave trim on both");
    }

    private static Check TouchMiss(TaperReport taper) => PlanChecks.AtMost(
        CheckIds.TouchMiss,
        Verdict.Warn,
        taper.TouchMissMm,
        MostTouchMissMm,
        $"how far plane facets miss the rulings that the panel should touch");
}
