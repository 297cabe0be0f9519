using CsCheck;
using Forming.Programs;

namespace Forming.Tests.Programs;

/// <summary>Search and proof against every order there is, on parts small enough to try them all.</summary>
public class OrderSearchTests
{
    private static readonly PartEdge[] Edges = [PartEdge.Start, PartEdge.End];

    [Fact]
    public void The_search_finds_the_best_of_all_orders_of_its_kinds()
    {
        var (found, none) = (0, 0);
        foreach (var brake in new ProgramBrake[] { Parts.Leaf, Parts.Press })
        {
            Parts.Uneven(4, 5, 15, 70).ForAll(
                part =>
                {
                    var trials = TrialsOf(part, brake);
                    var best = OrderSearch.Best(trials, null, Unlimited(), out var isExact);
                    Assert.True(isExact);
                    var all = Orders(part.Folds, inKinds: true).Select(moves => TriedOrder.Follow(trials, new("", moves))).Where(order => order.IsWhole).ToArray();
                    if (all.Length == 0)
                    {
                        Assert.Null(best);
                        Interlocked.Increment(ref none);
                        return;
                    }

                    Interlocked.Increment(ref found);
                    Assert.Equal(all.Min(order => order.Objective), TriedOrder.Follow(trials, best!).Objective);
                },
                iter: 12);
        }

        Assert.True(found > 3, $"{found} found, {none} without an order");
    }

    [Fact]
    public void Unfolding_proves_that_there_is_no_order_exactly_where_none_of_all_clears()
    {
        var (clears, none) = (0, 0);
        foreach (var brake in new ProgramBrake[] { Parts.Leaf, Parts.Press })
        {
            Parts.Uneven(3, 4, 40, 110).ForAll(
                part =>
                {
                    var trials = TrialsOf(part, brake);
                    var result = Unfolding.Try(trials, Unlimited());
                    var any = Orders(part.Folds, inKinds: false).Any(moves => Clears(trials, moves));
                    Assert.Equal(!any, result.IsProven);
                    Assert.Equal(any, result.Order is not null);
                    if (any)
                        Assert.True(Clears(trials, result.Order!.Moves));
                    else
                        Assert.NotEmpty(result.Folds);
                    Interlocked.Increment(ref any ? ref clears : ref none);
                },
                iter: 40);
        }

        Assert.True(clears > 10 && none > 10, $"{clears} clear, {none} do not");
    }

    [Fact]
    public void The_program_is_no_worse_than_any_named_order_that_clears()
    {
        var compared = 0;
        foreach (var brake in new ProgramBrake[] { Parts.Leaf, Parts.Press })
        {
            Parts.Uneven(5, 9, 8, 35).ForAll(
                part =>
                {
                    var program = BrakeProgram.Compute(part, brake);
                    var trials = TrialsOf(part, brake);
                    Move[] moves = [.. program.Steps.Select(step => new Move(step.Fold - 1, step.EdgeInFront))];
                    foreach (var named in FoldOrders.Of(part.Folds).Select(order => TriedOrder.Follow(trials, order)).Where(order => order.IsWhole))
                    {
                        Interlocked.Increment(ref compared);
                        Assert.True(TriedOrder.Follow(trials, new("", moves)).Objective.CompareTo(named.Objective) <= 0);
                    }
                },
                iter: 15);
        }

        Assert.True(compared > 20, $"{compared} compared");
    }

    private static StepTrials TrialsOf(ProgramPart part, ProgramBrake brake) => new(brake.ToolsFor(part), brake, new(default));

    private static SearchLimit Unlimited() => new(new(default), TimeSpan.FromHours(1));

    private static bool Clears(StepTrials trials, Move[] moves)
    {
        var made = default(FoldSet);
        foreach (var move in moves)
        {
            if (!trials.Try(made, move).IsClear)
                return false;
            made = made.With(move.Fold);
        }

        return true;
    }

    // Every order with every choice of edges; of its kinds: the made folds are outer ones of both edges, or one run of neighbours.
    private static IEnumerable<Move[]> Orders(int folds, bool inKinds)
    {
        return Grow([]);

        IEnumerable<Move[]> Grow(Move[] so)
        {
            if (so.Length == folds)
                return [so];
            return Enumerable.Range(0, folds)
                .Where(fold => so.All(move => move.Fold != fold))
                .SelectMany(fold => Edges.Select(edge => (Move[])[.. so, new(fold, edge)]))
                .Where(moves => !inKinds || IsOfKinds([.. moves.Select(move => move.Fold)]))
                .SelectMany(Grow);
        }

        bool IsOfKinds(int[] made) => IsRun(made) || IsRun([.. Enumerable.Range(0, folds).Except(made)]);

        static bool IsRun(int[] some) => some.Length == 0 || some.Max() - some.Min() + 1 == some.Length;
    }
}
