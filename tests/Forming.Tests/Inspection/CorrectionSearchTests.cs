using CsCheck;
using Forming.Inspection;
using Forming.Layout;
using static Forming.Tests.Tolerances.ErrorPropagationTests;
using static Forming.Tests.Workshop;

namespace Forming.Tests.Inspection;

/// <summary>The fewest corrections, against every choice there is.</summary>
public class CorrectionSearchTests
{
    private static readonly Angle Step = Angle.FromDegrees(0.5);

    [Fact]
    public void It_finds_what_full_enumeration_finds() =>
        Gen.Select(
            Gen.Int[2, 5],
            Gen.Double[-1.6, 1.6].Array[5],
            Gen.Double[-0.6, 0.6].Array[6],
            Gen.Bool,
            Gen.Int[1, 2],
            Gen.Double[0.2, 1.2],
            Gen.Double[0.1, 1]).ForAll((folds, errors, shifts, both, most, closing, vertex) =>
        {
            var planned = Even(folds, 14, 18);
            var built = new FoldedPolygon(
                [.. planned.FlatsMm.Select((flat, i) => i == 0 || i == folds ? flat : flat + shifts[i])],
                [.. planned.FoldAngles.Select((angle, i) => angle + (errors[i] * Degree))]);
            var rules = new CorrectionRules(Step, both ? CorrectionDirection.Both : CorrectionDirection.CloseOnly, most, Angle.FromDegrees(closing), vertex);
            var found = CorrectionSearch.Find(built, planned, rules);
            var best = Enumerate(built, planned, rules);
            Assert.Equal(best is not null, found.Found);
            if (best is not { } expected)
            {
                Assert.Equal(Math.Min(CorrectionSearch.MostFolds, folds) + 1, found.LowerBound);
                return;
            }

            Assert.Equal(expected.Folds, found.Folds.Count);
            Assert.Equal(expected.Folds, found.LowerBound);
            Assert.Equal(expected.Steps, found.Folds.Sum(fold => Math.Abs(fold.Steps)));
            Within(1e-9, expected.Miss, found.MissMm!.Value);
            Assert.True(found.IsGentlest);
        }, iter: 400);

    [Fact]
    public void Whole_steps_taken_too_far_are_undone() =>
        Gen.Select(Gen.Int[0, 8].Array[2], Gen.Int[1, 3], Gen.Int[1, 3], Gen.Bool).ForAll((places, first, second, open) =>
        {
            var planned = Even(9, 14, 18);
            var steps = new int[9];
            steps[places[0]] += open ? first : -first;
            steps[places[1]] += open ? second : -second;
            var built = planned with { FoldAngles = [.. planned.FoldAngles.Select((angle, i) => angle + (steps[i] * Step.Radians))] };
            var rules = new CorrectionRules(Step, open ? CorrectionDirection.Both : CorrectionDirection.CloseOnly, 6, Angle.FromDegrees(0.01), 0.01);
            var found = CorrectionSearch.Find(built, planned, rules);
            Assert.True(found.Found);
            Assert.Equal(
                Enumerable.Range(0, 9).Where(i => steps[i] != 0).Select(i => new FoldCorrection(i, -steps[i])),
                found.Folds);
            Within(1e-9, 0, found.MissMm!.Value);
        }, iter: 60);

    [Fact]
    public void Nothing_is_corrected_where_nothing_is_off()
    {
        var planned = Even(9, 14, 18);
        var found = CorrectionSearch.Find(planned, planned, new(Step, CorrectionDirection.CloseOnly, 4, Angle.FromDegrees(1), 0.8));
        Assert.True(found.Found);
        Assert.Empty(found.Folds);
        Assert.Equal(0, found.LowerBound);
    }

    [Fact]
    public void A_form_folded_too_far_cannot_be_closed_further()
    {
        var planned = Even(9, 14, 18);
        var built = planned with { FoldAngles = [.. planned.FoldAngles.Select(angle => angle + (1 * Degree))] };
        var rules = new CorrectionRules(Step, CorrectionDirection.CloseOnly, 4, Angle.FromDegrees(1), 0.8);
        Assert.False(CorrectionSearch.Find(built, planned, rules).Found);
    }

    [Fact]
    public void At_its_limit_the_search_tells_what_is_proven()
    {
        var planned = Even(30, 6, 12);
        var random = new Random(5);
        var built = planned with { FoldAngles = [.. planned.FoldAngles.Select(angle => angle + ((random.NextDouble() - 0.5) * 3 * Degree))] };
        var rules = new CorrectionRules(Angle.FromDegrees(0.05), CorrectionDirection.Both, 40, Angle.FromDegrees(0.2), 2.5);
        var found = CorrectionSearch.Find(built, planned, rules, nodeLimit: 20_000, CancellationToken.None);
        Assert.True(found.HitLimit);
        Assert.InRange(found.LowerBound, 1, CorrectionSearch.MostFolds);
        Assert.False(found.IsGentlest);
        Assert.InRange(found.Nodes, 20_000, 20_001);
    }

    [Fact]
    public void It_ends_when_it_is_told_to()
    {
        var planned = Even(30, 6, 12);
        var built = planned with { FoldAngles = [.. planned.FoldAngles.Select((angle, i) => angle + ((i % 2 == 0 ? 1 : -1) * Degree))] };
        var rules = new CorrectionRules(Angle.FromDegrees(0.05), CorrectionDirection.Both, 40, Angle.FromDegrees(0.01), 0.4);
        using var cancelled = new CancellationTokenSource();
        cancelled.Cancel();
        Assert.Throws<OperationCanceledException>(() => CorrectionSearch.Find(built, planned, rules, cancelled.Token));
    }

    private static (int Folds, int Steps, double Miss)? Enumerate(FoldedPolygon built, FoldedPolygon planned, CorrectionRules rules)
    {
        var least = rules.Direction == CorrectionDirection.CloseOnly ? 0 : -rules.MostSteps;
        var (count, width) = (built.Folds, rules.MostSteps - least + 1);
        var wanted = planned.Vertices();
        (int Folds, int Steps, double Miss)? best = null;
        for (var code = 0; code < Math.Pow(width, count); code++)
        {
            var steps = new int[count];
            for (int i = 0, rest = code; i < count; i++, rest /= width)
                steps[i] = least + (rest % width);
            var form = built with { FoldAngles = [.. built.FoldAngles.Select((angle, i) => angle + (steps[i] * rules.Step.Radians))] };
            var choice = (Folds: steps.Count(step => step != 0), Steps: steps.Sum(Math.Abs), Miss: form.Vertices()[1..^1].Zip(wanted[1..^1], (a, b) => (a - b).Length).Max());
            if (choice.Folds > CorrectionSearch.MostFolds || choice.Miss > rules.VertexMm + 1e-9 || Math.Abs(form.Sweep - planned.Sweep) > rules.Closing.Radians + 1e-9)
                continue;
            if (best is null || choice.CompareTo(best.Value) < 0)
                best = choice;
        }

        return best;
    }
}
