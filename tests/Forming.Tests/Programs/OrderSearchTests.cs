using CsCheck;
using Forming.Checks;
using Forming.Programs;
using Forming.Programs.Brakes;

namespace Forming.Tests.Programs;

/// <summary>Search and proof against every order there is, on parts small enough to try them all.</summary>
public class OrderSearchTests
{
    private static readonly PartEdge[] Edges = [PartEdge.Start, PartEdge.End];

    [Fact]
    [Trait("Category", "Long")]
    public void Of_few_folds_the_search_finds_the_best_of_all_orders_there_are() => IsBest(SearchedOrders.AllOrders, Parts.Uneven(4, 5, 15, 70), 12);

    [Fact]
    public void Of_six_folds_too() => IsBest(SearchedOrders.AllOrders, Parts.Uneven(6, 6, 15, 60), 1);

    [Fact]
    public void Of_many_folds_the_search_finds_the_best_of_its_families() => IsBest(SearchedOrders.Families, Parts.Uneven(4, 5, 15, 70), 12);

    [Theory]
    [InlineData(8, SearchedOrders.AllOrders)]
    [InlineData(9, SearchedOrders.Families)]
    public void A_program_says_which_orders_were_searched(int folds, SearchedOrders expected) =>
        Assert.Equal(expected, Parts.Program(Parts.Even(90, 90, folds), Parts.Leaf).Searched);

    // Folds 5, 3, 4, 1, 2 cost no more than any named order and clear the press by 5.86 mm, where the families come to 0.89 mm and a tight step.
    [Fact]
    public void An_order_that_belongs_to_no_family_is_found_where_it_is_better()
    {
        var part = Parts.Known(2, 3, 21.657111710010984, 25.98577049500332, [68.746, 71.217, 71.217, 17.604, 71.217], [46.6538822050143, 174.37254099000666, 21.000990107263604, 14.354990107263601], 0.2039539281458933, 1.0071193351370435);
        var program = BrakeProgram.Compute(part, Parts.Press);
        Assert.True(program.IsSearchComplete);
        Assert.True(program.Clearance.Mm > 5.8, $"{program.Clearance.Mm}");
        Assert.All(program.Steps, step => Assert.DoesNotContain(step.Checks, check => check.Id.StartsWith("clearance", StringComparison.Ordinal) && check.Verdict != Verdict.Pass));
    }

    private static void IsBest(SearchedOrders kinds, Gen<ProgramPart> parts, int count)
    {
        var (found, none) = (0, 0);
        foreach (var brake in new ProgramBrake[] { Parts.Leaf, Parts.Press })
        {
            parts.ForAll(
                part =>
                {
                    var trials = TrialsOf(part, brake);
                    var best = OrderSearch.Best(trials, null, Unlimited(), kinds, out var isExact);
                    Assert.True(isExact);
                    var all = Orders(part.Folds, inKinds: kinds == SearchedOrders.Families).Select(moves => TriedOrder.Follow(trials, new("", moves))).Where(order => order.IsWhole).ToArray();
                    if (all.Length == 0)
                    {
                        Assert.Null(best);
                        Interlocked.Increment(ref none);
                        return;
                    }

                    Interlocked.Increment(ref found);
                    Assert.Equal(all.Min(order => order.Objective), TriedOrder.Follow(trials, best!).Objective);
                },
                iter: count);
        }

        Assert.True(found + none > 0 && (found > 3 || count == 1), $"{found} found, {none} without an order");
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
    [Trait("Category", "Long")]
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
                iter: 5);
        }

        Assert.True(compared > 20, $"{compared} compared");
    }

    private static StepTrials TrialsOf(ProgramPart part, ProgramBrake brake) => new(brake.ToolsFor(part), brake, new(default));

    private static SearchLimit Unlimited() => new(new(default), long.MaxValue);

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
