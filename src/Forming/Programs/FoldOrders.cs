using Forming.Programs.Brakes;

namespace Forming.Programs;

/// <summary>One fold of an order.</summary>
/// <param name="Fold">Its index, from 0.</param>
/// <param name="EdgeInFront">The edge towards the operator.</param>
internal readonly record struct Move(int Fold, PartEdge EdgeInFront);

/// <summary>An order that has a name.</summary>
/// <param name="Name">The name.</param>
/// <param name="Moves">[n] its folds.</param>
internal sealed record NamedOrder(string Name, Move[] Moves);

/// <summary>The orders a person would think of first.</summary>
internal static class FoldOrders
{
    /// <summary>The named orders of a part.</summary>
    /// <param name="folds">How many folds it has.</param>
    public static IReadOnlyList<NamedOrder> Of(int folds)
    {
        var middle = (folds + 1) / 2;
        int[] all = [.. Enumerable.Range(0, folds)];
        int[] low = all[..middle], high = all[middle..];
        Move[] outerLow = To(low, PartEdge.Start), outerHigh = To(high.Reverse(), PartEdge.End);
        Move[] innerLow = To(low.Reverse(), PartEdge.End), innerHigh = To(high, PartEdge.Start);
        return
        [
            new("edge to edge from the start edge, folded part in front", To(all, PartEdge.Start)),
            new("edge to edge from the end edge, folded part in front", To(all.Reverse(), PartEdge.End)),
            new("edges to the middle, start edge first", [.. outerLow, .. outerHigh]),
            new("edges to the middle, end edge first", [.. outerHigh, .. outerLow]),
            new("edges to the middle by turns", [.. ByTurns(outerLow, outerHigh)]),
            new("middle outwards, towards the start edge first", [.. innerLow, .. innerHigh]),
            new("middle outwards, towards the end edge first", [.. innerHigh, .. innerLow]),
            new("edge to edge from the start edge, folded part behind", To(all, PartEdge.End)),
            new("edge to edge from the end edge, folded part behind", To(all.Reverse(), PartEdge.Start)),
        ];
    }

    private static Move[] To(IEnumerable<int> folds, PartEdge edge) => [.. folds.Select(fold => new Move(fold, edge))];

    private static IEnumerable<Move> ByTurns(Move[] one, Move[] other)
    {
        for (var i = 0; i < one.Length; i++)
        {
            yield return one[i];
            if (i < other.Length)
                yield return other[i];
        }
    }
}
