using CsCheck;
using Forming.Estimates;

namespace Forming.Tests.Estimates;

/// <summary>Break-even by hand, and against plain enumeration.</summary>
public class BreakEvenTests
{
    private static readonly LearningCurve Eighty = new(LearningModel.Unit, 0.8);

    // 500 + 30 n against 50 + 45 n: equal at n = 30, cheaper from 31.
    [Fact]
    public void An_even_score_is_not_cheaper_yet() =>
        Assert.Equal(new BreakEven(BreakEvenOutcome.From, 31, null, true), BreakEven.Search(Line(500, 20, 10), Other(50, 45)));

    // 100 + 30 n against 200 + 30 n, and against 200 + 40 n.
    [Theory]
    [InlineData(30)]
    [InlineData(40)]
    public void A_form_that_is_no_dearer_in_anything_is_always_cheaper(double each) =>
        Assert.Equal(new BreakEven(BreakEvenOutcome.Always, 1, null, true), BreakEven.Search(Line(100, 20, 10), Other(200, each)));

    // 500 + 30 n against 500 + 30 n, and against 400 + 20 n.
    [Theory]
    [InlineData(500, 30)]
    [InlineData(400, 20)]
    public void A_form_that_is_cheaper_in_nothing_never_is(double once, double each) =>
        Assert.Equal(new BreakEven(BreakEvenOutcome.Never, null, null, true), BreakEven.Search(Line(500, 20, 10), Other(once, each)));

    // 100 + 30 n against 400 + 20 n: 100 + 870 < 400 + 580 at 29, equal at 30.
    [Fact]
    public void A_cheap_form_with_dear_panels_wins_small_batches_only() =>
        Assert.Equal(new BreakEven(BreakEvenOutcome.UpTo, null, 29, true), BreakEven.Search(Line(100, 20, 10), Other(400, 20)));

    // 0 + 100 (1, 1.8, 2.502, 3.142, 3.738, …) against 120 + 60 n: 100 < 180, 180 < 240, 250 < 300, 314 < 360, 374 < 420: always.
    // Against 60 + 52 n: 100 < 112; 180 > 164, 250 > 216, 314 > 268, 374 > 320, 430 > 372, 483 > 424, 535 > 476, 584 > 528,
    // 632 > 580 …: the 20th total is 10.485, 1048 < 1100, so it is cheaper again before that.
    [Fact]
    public void Learning_can_win_back_what_it_first_lost()
    {
        Assert.Equal(BreakEvenOutcome.Always, BreakEven.Search(Line(0, 100, 0, Eighty), Other(120, 60)).Outcome);
        var found = BreakEven.Search(Line(0, 100, 0, Eighty), Other(60, 52));
        Assert.Equal(BreakEvenOutcome.UpToAndFrom, found.Outcome);
        Assert.Equal(1, found.UpTo);
        Assert.InRange(found.From!.Value, 11, 20);
        Assert.True(found.IsProven);
    }

    [Fact]
    public void Past_the_horizon_nothing_is_said()
    {
        // 1e6 to make up at 1 a panel.
        var far = BreakEven.Search(Line(1e6, 20, 10), Other(0, 31));
        Assert.Equal(new BreakEven(BreakEvenOutcome.NotWithinHorizon, null, null, false), far);
        // 1e6 ahead, losing 1 a panel.
        var ahead = BreakEven.Search(Line(0, 20, 10), Other(1e6, 29));
        Assert.Equal(new BreakEven(BreakEvenOutcome.Always, 1, null, false), ahead);
        // The same with learning: 100 n^-0.0145 is still 85 at the horizon, and falls below 50 far beyond it.
        var learning = BreakEven.Search(Line(0, 100, 0, new(LearningModel.Unit, 0.99)), Other(1e30, 50));
        Assert.Equal(ahead, learning);
        Assert.Contains("may not be for ever", FormattableString.Invariant(learning.Text), StringComparison.Ordinal);
    }

    // Whole amounts of money compare exactly, so the enumeration can be done in whole numbers.
    [Fact]
    public void Without_learning_the_search_is_plain_enumeration() =>
        Gen.Select(Gen.Int[0, 400], Gen.Int[0, 40], Gen.Int[0, 40], Gen.Int[0, 400], Gen.Int[0, 80]).ForAll((once, labour, sheet, otherOnce, otherEach) =>
        {
            const int Horizon = 500;
            var found = BreakEven.Search(Line(once, labour, sheet), Other(otherOnce, otherEach), Horizon);
            AssertSame(found, n => once + ((long)(labour + sheet) * n) < otherOnce + ((long)otherEach * n), Horizon);
        }, iter: 5000);

    [Fact]
    public void With_learning_the_search_is_plain_enumeration() =>
        Gen.Select(Gen.Double[0, 400], Gen.Double[1, 60], Gen.Double[0, 20], Gen.Double[0, 400], Gen.Double[0, 60], Gen.Double[0.6, 0.99], Gen.Enum<LearningModel>())
            .ForAll((once, labour, sheet, otherOnce, otherEach, rate, model) =>
            {
                const int Horizon = 600;
                var line = Line(once, labour, sheet, new(model, rate));
                var found = BreakEven.Search(line, Other(otherOnce, otherEach), Horizon);
                var learnt = line.Learning.Totals([.. Enumerable.Range(1, Horizon)]);
                AssertSame(found, n => IsCheaper(once + (labour * learnt[n - 1]) + (sheet * n), otherOnce + (otherEach * n)), Horizon);
            }, iter: 300);

    // 60 an hour, two trials each: form 300 + 12 a panel against 50 + 20 a panel, sheet alike: 300 + 12 n + 24 < 50 + 20 n + 40 from n = 30
    // on: 234/8 = 29.25.
    [Fact]
    public void Two_ways_of_one_shop_pay_for_the_same_sheet_and_trials()
    {
        var (form, bumped) = (new CostLine(300, 12, 7, LearningCurve.None, 2), new CostLine(50, 20, 7, LearningCurve.None, 2));
        Assert.Equal(new BreakEven(BreakEvenOutcome.From, 30, null, true), BreakEven.Search(form, bumped));
        Assert.Equal(new BreakEven(BreakEvenOutcome.UpTo, null, 29, true), BreakEven.Search(bumped, form));
    }

    // Both get faster alike, so the slower way never catches up what it costs more at first.
    [Fact]
    public void Two_ways_that_are_learnt_alike_are_compared_for_good() =>
        Gen.Select(Gen.Double[0, 400], Gen.Double[1, 60], Gen.Double[0, 400], Gen.Double[1, 60], Gen.Double[0.6, 0.99], Gen.Enum<LearningModel>(), Gen.Int[0, 4])
            .ForAll((once, labour, otherOnce, otherLabour, rate, model, trials) =>
            {
                const int Horizon = 600;
                CostLine form = new(once, labour, 5, new(model, rate), trials), other = new(otherOnce, otherLabour, 5, new(model, rate), trials);
                var found = BreakEven.Search(form, other, Horizon);
                var learnt = form.Learning.Totals([.. Enumerable.Range(1, Horizon + trials)]);
                AssertSame(found, n => IsCheaper(Total(form, n), Total(other, n)), Horizon);
                Assert.True(found.IsProven || found.Outcome == BreakEvenOutcome.NotWithinHorizon || labour > otherLabour);

                double Total(CostLine line, int n) => line.Once + (line.FirstLabour * learnt[n + trials - 1]) + (5 * (n + trials));
            }, iter: 300);

    // A draw that once made the run red: 3 a panel at first against 3 once, and amounts far below a cent beside them.
    [Fact]
    public void Costs_that_differ_by_rounding_alone_are_equal()
    {
        var found = BreakEven.Search(Line(4.154e-23, 3, 0, new(LearningModel.CumulativeAverage, 0.7585475207274971)), Other(3, 9.243e-16), 600);
        Assert.Equal(BreakEvenOutcome.NotWithinHorizon, found.Outcome);
    }

    private static CostLine Other(double once, double each) => new(once, 0, each, LearningCurve.None);

    private static CostLine Line(double once, double labour, double sheet, LearningCurve? learning = null) => new(once, labour, sheet, learning ?? LearningCurve.None);

    private static bool IsCheaper(double mine, double others) => mine < others - (1e-9 * Math.Max(mine, others));

    private static void AssertSame(BreakEven found, Func<int, bool> isCheaper, int horizon)
    {
        var cheaper = Enumerable.Range(1, horizon).Select(isCheaper).ToArray();
        for (var n = 1; n <= horizon; n++)
            Assert.Equal(cheaper[n - 1], n <= found.UpTo || n >= found.From);
        if (!cheaper.Contains(true))
            Assert.True(found.Outcome is BreakEvenOutcome.Never or BreakEvenOutcome.NotWithinHorizon);
        if (!cheaper.Contains(false))
            Assert.Equal(BreakEvenOutcome.Always, found.Outcome);
    }
}
