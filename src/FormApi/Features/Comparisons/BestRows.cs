using Forming.Plans;

namespace FormApi.Features.Comparisons;

/// <summary>The rows that are worth a look.</summary>
internal static class BestRows
{
    /// <summary>Numbers of the rows that none beats: no other is as good in folds, ripple and minutes and better in one of them.</summary>
    /// <param name="rows">The rows; those without a figure, and those that cannot be made, are left out.</param>
    public static int[] Of(IReadOnlyList<ComparedRow> rows)
    {
        (int Row, double[] Figures)[] candidates =
        [
            .. rows
                .Where(row => row is { Verdict: PlanVerdict.Ready or PlanVerdict.Attention, Ripple: not null, BuildMinutes: not null })
                .Select(row => (row.Row, (double[])[row.Folds!.Value, row.Ripple!.Value, row.BuildMinutes!.Value])),
        ];
        return [.. candidates
            .Where(candidate => !candidates.Any(other => Beats(other.Figures, candidate.Figures)))
            .Select(candidate => candidate.Row)];
    }

    private static bool Beats(double[] one, double[] other) =>
        one.Zip(other).All(pair => pair.First <= pair.Second) && one.Zip(other).Any(pair => pair.First < pair.Second);
}
