using Forming.Programs.Brakes;
using Forming.Programs.Motion;

namespace Forming.Programs;

/// <summary>
/// The best order of all where the folds are few; else among those whose made folds are always the outer ones of both edges, or one run of
/// neighbours.
/// </summary>
internal sealed class OrderSearch
{
    /// <summary>Up to so many folds all orders are searched: 2⁸ sets of made folds are few enough.</summary>
    public const int MostFoldsInAllOrders = 8;

    /// <summary>States looked at before the search is given up.</summary>
    public const int MostStates = 20_000;

    private readonly StepTrials _trials;
    private readonly TriedOrder? _bound;
    private readonly SearchedOrders _kinds;
    private readonly int _folds;
    private readonly FoldSet[] _sameStop; // the folds of each setting of the stop
    private readonly PriorityQueue<Node, Objective> _queue = new();
    private readonly HashSet<(FoldSet, Move)> _settled = [];

    private OrderSearch(StepTrials trials, TriedOrder? bound, SearchedOrders kinds)
    {
        (_trials, _bound, _kinds) = (trials, bound, kinds);
        _folds = trials.Tools.Part.Folds;
        _sameStop = [.. Enumerable.Range(0, _folds).GroupBy(fold => trials.StopSteps[fold]).Select(SetOf)];
    }

    /// <summary>Searches best first.</summary>
    /// <param name="trials">What was tried so far.</param>
    /// <param name="bound">The best order known, or null: no worse one is looked for.</param>
    /// <param name="limit">When to give up.</param>
    /// <param name="kinds">Which orders are searched.</param>
    /// <param name="isExact">Whether the search was complete.</param>
    /// <returns>A better order, or null.</returns>
    public static NamedOrder? Best(StepTrials trials, TriedOrder? bound, SearchLimit limit, SearchedOrders kinds, out bool isExact) =>
        new OrderSearch(trials, bound, kinds).Run(limit, out isExact);

    private NamedOrder? Run(SearchLimit limit, out bool isExact)
    {
        isExact = true;
        var begun = _trials.Work;
        Push(null, Enumerable.Range(0, _folds));
        while (_queue.TryDequeue(out var node, out _))
        {
            if (_settled.Contains((node.Made, node.Move)))
                continue;
            if (_settled.Count > MostStates || limit.IsReached(begun, 1))
            {
                isExact = false;
                return null;
            }

            if (node.Trial is null)
                Try(node);
            else if (IsBestOrder(node))
                return new("searched", [.. node.Back().Reverse()]);
        }

        return null;
    }

    // The first whole order that is taken from the queue and comes off the tools is the best; from any other state the search goes on.
    private bool IsBestOrder(Node node)
    {
        _settled.Add((node.Made, node.Move));
        if (node.Made == FoldSet.All(_folds))
            return _trials.ComesOff(node.Trial!);
        Push(node, _kinds == SearchedOrders.AllOrders ? Unmade(node.Made, _folds) : NextTo(node.Made, _folds));
        return false;
    }

    private void Push(Node? from, IEnumerable<int> folds)
    {
        foreach (var fold in folds)
        {
            foreach (var edge in Edges)
                Push(from, new Move(fold, edge));
        }
    }

    // A fold waits at what it costs at best, and is tried only when its turn comes.
    private void Push(Node? from, Move move)
    {
        var before = Before(from);
        var least = from is null ? 0 : TriedOrder.CostOf(from.Move.EdgeInFront == move.EdgeInFront ? Handling.Push : Handling.Turn);
        Enqueue(new(from, move, (from?.Made ?? default).With(move.Fold), null, before with { Cost = before.Cost + least }));
    }

    private void Try(Node node)
    {
        var from = node.From;
        var trial = _trials.Try(node.Made.Without(node.Move.Fold), node.Move);
        if (!trial.IsClear)
            return;
        var handling = from is null ? Handling.Load : _trials.HandlingBetween(from.Trial!, trial);
        if (handling is { } way)
            Enqueue(node with { Trial = trial, Objective = TriedOrder.Next(Before(from), _trials, from?.Trial, trial, way) });
    }

    private void Enqueue(Node node)
    {
        var hoped = Hoped(node);
        if (_bound is null || hoped.CompareTo(_bound.Objective) < 0)
            _queue.Enqueue(node, hoped);
    }

    // Every fold still to make is pushed to at best, and every setting other than the present one is one more change.
    private Objective Hoped(Node node) => node.Objective with
    {
        Cost = node.Objective.Cost + _folds - node.Made.Count,
        StopChanges = node.Objective.StopChanges
            + _sameStop.Count(same => !same.Has(node.Move.Fold) && (same.Bits & ~node.Made.Bits) != 0),
    };

    private Objective Before(Node? from) => from?.Objective ?? new(0, 0, 0, 0, _trials.Brake.PlentyMm);

    private static FoldSet SetOf(IEnumerable<int> folds) => folds.Aggregate(default(FoldSet), (set, fold) => set.With(fold));

    /// <summary>Which orders are searched.</summary>
    /// <param name="folds">How many folds the part has.</param>
    public static SearchedOrders KindsFor(int folds) => folds <= MostFoldsInAllOrders ? SearchedOrders.AllOrders : SearchedOrders.Families;

    private static PartEdge[] Edges { get; } = [PartEdge.Start, PartEdge.End];

    private static IEnumerable<int> Unmade(FoldSet made, int folds) => Enumerable.Range(0, folds).Where(fold => !made.Has(fold));

    private static IEnumerable<int> NextTo(FoldSet made, int folds)
    {
        int first = 0, last = folds - 1;
        while (made.Has(first))
            first++;
        while (made.Has(last))
            last--;
        var isOuter = made.Count == first + (folds - 1 - last);
        if (isOuter)
            yield return first;
        if (isOuter && last != first)
            yield return last;
        if (first > 0 && last < folds - 1)
            yield break;

        // One run of neighbours: it may grow at either end.
        int from = 0, to = folds - 1;
        while (!made.Has(from))
            from++;
        while (!made.Has(to))
            to--;
        if (to - from + 1 != made.Count)
            yield break;
        if (from > 0 && !(isOuter && (from - 1 == first || from - 1 == last)))
            yield return from - 1;
        if (to < folds - 1 && !(isOuter && (to + 1 == first || to + 1 == last)))
            yield return to + 1;
    }

    private sealed record Node(Node? From, Move Move, FoldSet Made, FoldTrial? Trial, Objective Objective)
    {
        public IEnumerable<Move> Back()
        {
            for (var node = this; node is not null; node = node.From)
                yield return node.Move;
        }
    }
}

/// <summary>
/// How much work a search may do. Work is counted and no clock is read, so the answer is the same on any machine under any load.
/// </summary>
/// <param name="effort">Work counted.</param>
/// <param name="most">Work granted to a search.</param>
internal sealed class SearchLimit(Effort effort, double most)
{
    /// <summary>Whether a search that began with some work done must end.</summary>
    /// <param name="begun">Work done when it began.</param>
    /// <param name="share">Its share of the work granted.</param>
    public bool IsReached(long begun, double share) => effort.Spent - begun >= share * most;
}

/// <summary>Which orders a search looks among.</summary>
public enum SearchedOrders
{
    /// <summary>Those whose made folds are always the outer ones of both edges, or one run of neighbours.</summary>
    Families,

    /// <summary>Every order there is.</summary>
    AllOrders,
}
