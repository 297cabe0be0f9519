using System.Diagnostics;

namespace Forming.Programs;

/// <summary>Whether there is any order at all, handling left aside: the finished part is unfolded, for some fold must be the last.</summary>
internal static class Unfolding
{
    /// <summary>Unfolds.</summary>
    /// <param name="trials">What was tried so far.</param>
    /// <param name="until">When to give up, as a last resort.</param>
    public static UnfoldingResult Try(StepTrials trials, long until)
    {
        var folds = trials.Tools.Part.Folds;
        var all = FoldSet.All(folds);
        var most = trials.Work + OrderSearch.MostWork;
        var lasts = Enumerable.Range(0, folds)
            .Select(fold => (Start: trials.Try(all.Without(fold), new(fold, PartEdge.Start)), End: trials.Try(all.Without(fold), new(fold, PartEdge.End))))
            .ToArray();
        var tooShort = ShortInEveryState(trials);
        if (tooShort.Count > 0)
            return new(true, folds, null, tooShort);

        var seen = new HashSet<FoldSet> { all };
        var stack = new Stack<(FoldSet Made, Move[] Undone)>();
        stack.Push((all, []));
        while (stack.TryPop(out var state))
        {
            if (state.Made == default)
                return new(false, seen.Count, new("unfolded", [.. state.Undone.Reverse()]), []);
            if (seen.Count > OrderSearch.MostStates || trials.Work > most || Stopwatch.GetTimestamp() > until)
                return new(false, seen.Count, null, []);

            // The outer folds lie on top of the stack: what folds at all is mostly unfolded from its edges.
            foreach (var fold in Enumerable.Range(0, folds).Where(state.Made.Has).OrderBy(fold => Math.Min(fold, folds - 1 - fold)).Reverse())
            {
                var rest = state.Made.Without(fold);
                if (seen.Contains(rest))
                    continue;
                foreach (var edge in Edges)
                {
                    if (!trials.Try(rest, new(fold, edge)).IsClear)
                        continue;
                    seen.Add(rest);
                    stack.Push((rest, [.. state.Undone, new(fold, edge)]));
                    break;
                }
            }
        }

        var none = lasts.All(last => !last.Start.IsClear && !last.End.IsClear);
        return new(true, seen.Count, null, none ? [.. lasts.Select(last => Nearer(last.Start, last.End))] : []);
    }

    private static PartEdge[] Edges { get; } = [PartEdge.Start, PartEdge.End];

    // With every other fold flat the runs are as long as they can be.
    private static List<FoldTrial> ShortInEveryState(StepTrials trials) =>
    [
        .. Enumerable.Range(0, trials.Tools.Part.Folds)
            .Select(fold => (trials.Try(default, new(fold, PartEdge.Start)), trials.Try(default, new(fold, PartEdge.End))))
            .Where(pair => !pair.Item1.Runs && !pair.Item2.Runs)
            .Select(pair => pair.Item1),
    ];

    private static FoldTrial Nearer(FoldTrial one, FoldTrial other) => one.Runs || !other.Runs ? one : other;
}

/// <summary>What unfolding showed.</summary>
/// <param name="IsProven">Whether no order exists, for certain.</param>
/// <param name="States">States looked at.</param>
/// <param name="Order">An order in which every fold clears, or null.</param>
/// <param name="Folds">The folds at fault, where they can be named.</param>
internal sealed record UnfoldingResult(bool IsProven, int States, NamedOrder? Order, IReadOnlyList<FoldTrial> Folds);
