using Forming.Programs.Brakes;

namespace Forming.Programs;

/// <summary>
/// Whether there is any order at all, handling left aside: the finished part is unfolded, for some fold must be the last.
/// </summary>
internal static class Unfolding
{
    /// <summary>States looked at before it is given up.</summary>
    public const int MostStates = 20_000;

    private const double Share = 0.5;

    /// <summary>Unfolds.</summary>
    /// <param name="trials">What was tried so far.</param>
    /// <param name="limit">When to give up.</param>
    public static UnfoldingResult Try(StepTrials trials, SearchLimit limit)
    {
        var folds = trials.Tools.Part.Folds;
        var tooShort = ShortInEveryState(trials);
        if (tooShort.Count > 0)
            return new(true, 1, null, tooShort);
        var all = FoldSet.All(folds);
        var begun = trials.Work;
        var seen = new HashSet<FoldSet> { all };
        var stack = new Stack<(FoldSet Made, UnfoldedFrom? From)>();
        stack.Push((all, null));
        FoldSet? leastFolded = null;
        while (stack.TryPop(out var state))
        {
            if (state.Made == default)
                return new(false, seen.Count, new("unfolded", [.. Moves(state.From)]), []);

            // The finished part itself is always looked at.
            if (seen.Count > MostStates || (state.Made != all && limit.IsReached(begun, Share)))
                return new(false, seen.Count, null, []);

            var isStuck = true;
            foreach (var fold in InnerFirst(state.Made, folds))
            {
                var rest = state.Made.Without(fold);
                if (ClearLast(trials, rest, fold) is not { } move)
                    continue;
                isStuck = false;
                if (seen.Add(rest))
                    stack.Push((rest, new(move, state.From)));
            }

            if (isStuck && (leastFolded is not { } least || state.Made.Count < least.Count))
                leastFolded = state.Made;
        }

        return new(true, seen.Count, null, [.. Stuck(trials, leastFolded!.Value, folds)]);
    }

    // The last pushed is the first looked at: what folds at all is mostly unfolded from its edges.
    private static IEnumerable<int> InnerFirst(FoldSet made, int folds) =>
        Enumerable.Range(0, folds).Where(made.Has).OrderByDescending(fold => Math.Min(fold, folds - 1 - fold));

    private static Move? ClearLast(StepTrials trials, FoldSet rest, int fold)
    {
        foreach (var edge in Edges)
        {
            if (trials.Try(rest, new(fold, edge)).IsClear)
                return new(fold, edge);
        }

        return null;
    }

    private static IEnumerable<Move> Moves(UnfoldedFrom? from)
    {
        for (; from is not null; from = from.Before)
            yield return from.Move;
    }

    // With every other fold flat the runs are as long as they can be.
    private static List<FoldTrial> ShortInEveryState(StepTrials trials) =>
    [
        .. Enumerable.Range(0, trials.Tools.Part.Folds)
            .Select(fold => (trials.Try(default, new(fold, PartEdge.Start)), trials.Try(default, new(fold, PartEdge.End))))
            .Where(pair => !pair.Item1.Runs && !pair.Item2.Runs)
            .Select(pair => pair.Item1),
    ];

    private static IEnumerable<FoldTrial> Stuck(StepTrials trials, FoldSet made, int folds)
    {
        foreach (var fold in Enumerable.Range(0, folds).Where(made.Has))
        {
            var one = trials.Try(made.Without(fold), new(fold, PartEdge.Start));
            var other = trials.Try(made.Without(fold), new(fold, PartEdge.End));
            yield return one.Runs || !other.Runs ? one : other;
        }
    }

    private static PartEdge[] Edges { get; } = [PartEdge.Start, PartEdge.End];

    private sealed record UnfoldedFrom(Move Move, UnfoldedFrom? Before);
}

/// <summary>What unfolding showed.</summary>
/// <param name="IsProven">Whether no order exists, for certain.</param>
/// <param name="States">States looked at.</param>
/// <param name="Order">An order in which every fold clears, or null.</param>
/// <param name="Folds">Where it is proved: what stops every fold of the least folded state from which there is no way on.</param>
internal sealed record UnfoldingResult(bool IsProven, int States, NamedOrder? Order, IReadOnlyList<FoldTrial> Folds);
