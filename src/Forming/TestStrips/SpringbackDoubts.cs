using Forming.Learning;
using Forming.Results;

namespace Forming.TestStrips;

/// <summary>Why a learnt yield should not be used before something is cleared up.</summary>
internal static class SpringbackDoubts
{
    /// <summary>A panel planned with another thickness than its strips have springs back by so much more or less.</summary>
    private const double SameThickness = 0.02;

    /// <summary>All doubts.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="set">The strips.</param>
    /// <param name="fit">What they say by themselves.</param>
    /// <param name="posterior">What is known with the grade.</param>
    public static List<StripDoubt> Of(SpringbackQuestion question, StripSet set, YieldFit fit, YieldPosterior posterior)
    {
        var doubts = new List<StripDoubt>();
        AddNotFollowed(doubts, set, posterior);
        var (learnt, grade) = (fit.YieldMpa, fit.NominalMpa);
        if (!Plausibility.IsUsual(learnt / grade))
        {
            doubts.Add(new(
                "yield-implausible",
                [],
                $"The strips give a yield stress of {Figure.Stress(learnt)}; this grade has {Figure.Stress(grade)}, and {Plausibility.GradeShare:P0} to either side of that is usual. Look for radii in the wrong unit or on the wrong face, a wrong thickness, or sheet of another grade, before you use it."));
        }

        AddContradictions(doubts, question, fit);
        int[] others =
        [
            .. Enumerable.Range(0, question.Strips.Count)
                .Where(i => Math.Abs((question.Strips[i].ThicknessMm / question.Sheet.ThicknessMm) - 1) > SameThickness),
        ];
        if (others.Length == question.Strips.Count)
        {
            doubts.Add(new(
                "thickness-differs",
                others,
                $"The strips are {Figure.Length(question.Strips[others[0]].ThicknessMm)} thick and the panel to come {Figure.Length(question.Sheet.ThicknessMm)}. If it is one sheet, ask again with the thickness that you measured, here and for the panel: springback depends on yield over thickness. If they are two sheets, strips of the one say nothing of the other's yield."));
        }

        return doubts;
    }

    private static void AddNotFollowed(List<StripDoubt> doubts, StripSet set, YieldPosterior posterior)
    {
        int[] without = [.. Enumerable.Range(0, set.Pulls.Count).Where(i => set.Pulls[i] is null)];
        if (without.Length > 0)
        {
            doubts.Add(new(
                "strip-not-followed",
                without,
                $"The pull of {without.Length} of {set.Pulls.Count} strips over its form cannot be followed, so they are left out: the hand meets the form first, or the free side curls up. Look at lever and stations, and leave those strips out if both are right."));
        }

        int[] beyond = [.. Enumerable.Range(0, set.Pulls.Count).Where(i => set.Pulls[i] is { } pull && !pull.Covers(posterior.LnFactor))];
        if (beyond.Length > 0)
        {
            doubts.Add(new(
                "strip-beyond-reach",
                beyond,
                $"A sheet of this yield cannot be followed over the form of strip {beyond[0] + 1}: what that strip says is carried on from softer and harder sheets. Strip the sheet round a bar."));
        }
    }

    private static void AddContradictions(List<StripDoubt> doubts, SpringbackQuestion question, YieldFit fit)
    {
        StripReading[][] strips = [.. fit.Readings.GroupBy(reading => reading.Strip).Select(group => group.ToArray())];
        double[] best = [.. strips.Select(fit.BestOf)];
        if (ApartOf(strips) is { } pair)
        {
            int low = strips[pair.Low][0].Strip, high = strips[pair.High][0].Strip;
            doubts.Add(new(
                "strips-contradict",
                [low, high],
                $"Strip {low + 1} alone gives a yield stress of {Stress(best[pair.Low])}, strip {high + 1} gives {Stress(best[pair.High])}: too far apart for a reading error of {Figure.Number(100 * question.ReadingError)} %. Measure both again; if both readings are right, the strips are not from one sheet."));
        }

        foreach (var strip in strips.Where(strip => strip.Length > 1))
        {
            StripReading[][] each = [.. strip.Select(reading => new[] { reading })];
            if (ApartOf(each) is null)
                continue;
            doubts.Add(new(
                "readings-contradict",
                [strip[0].Strip],
                $"By its radius strip {strip[0].Strip + 1} has a yield stress of {Stress(fit.BestOf(each[0]))}, by its sweep {Stress(fit.BestOf(each[1]))}: too far apart for the reading errors. Measure both again, and the folds of its form; if all are right, look at the lever and at the clamp."));
        }

        Figure Stress(double lnFactor) => Figure.Stress(fit.NominalMpa * Math.Exp(lnFactor));

        (int Low, int High)? ApartOf(StripReading[][] groups)
        {
            var within = Plausibility.Widening(groups.Length);
            return Plausibility.Apart([.. groups.Select(group =>
            {
                var (low, high) = fit.Within(group, fit.BestOf(group), within);
                return (low ?? double.NegativeInfinity, high);
            })]);
        }
    }
}
