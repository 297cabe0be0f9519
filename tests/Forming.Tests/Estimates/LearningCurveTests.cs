using CsCheck;
using Forming.Estimates;
using static Forming.Tests.Workshop;

namespace Forming.Tests.Estimates;

/// <summary>Learning by its own law of doubling, and by hand; printed coefficients are among the check tables.</summary>
public class LearningCurveTests
{
    private static readonly Gen<double> Rates = Gen.Double[0.55, 1];

    [Fact]
    public void A_doubling_takes_the_unit_time_down_by_the_rate() =>
        Gen.Select(Rates, Gen.Int[1, 5000]).ForAll((rate, n) =>
        {
            var curve = new LearningCurve(LearningModel.Unit, rate);
            Near(rate * curve.Unit(n), curve.Unit(2 * n), 1e-12);
        });

    [Fact]
    public void A_doubling_takes_the_mean_time_down_by_the_rate() =>
        Gen.Select(Rates, Gen.Int[1, 5000]).ForAll((rate, n) =>
        {
            var curve = new LearningCurve(LearningModel.CumulativeAverage, rate);
            Near(rate * curve.Total(n) / n, curve.Total(2 * n) / (2 * n), 1e-12);
        });

    // 80 %, first panel 100: the mean of two is 80, so both take 160 and the second 60; in the unit form the second takes 80, both 180.
    [Fact]
    public void The_two_forms_of_the_law_differ_as_by_hand()
    {
        var (wright, crawford) = (new LearningCurve(LearningModel.CumulativeAverage, 0.8), new LearningCurve(LearningModel.Unit, 0.8));
        Within(1e-12, 1.6, wright.Total(2));
        Within(1e-12, 0.6, wright.Unit(2));
        Within(1e-12, 1.8, crawford.Total(2));
        Within(1e-12, 0.8, crawford.Unit(2));
    }

    [Fact]
    public void Units_add_up_to_totals_and_never_rise() =>
        Gen.Select(Rates, Gen.Enum<LearningModel>(), Gen.Int[1, 400]).ForAll((rate, model, count) =>
        {
            var curve = new LearningCurve(model, rate);
            var units = Enumerable.Range(1, count).Select(curve.Unit).ToArray();
            Near(units.Sum(), curve.Total(count), 1e-11);
            for (var i = 1; i < count; i++)
                Assert.True(units[i] <= units[i - 1] * (1 + 1e-9) && units[i] > 0);
            Assert.Equal(curve.Total(count), curve.Totals([1, count])[1]);
        });

    [Fact]
    public void Without_learning_every_panel_takes_what_the_first_took()
    {
        Assert.Equal(1, LearningCurve.None.Unit(1000));
        Assert.Equal(1000, LearningCurve.None.Total(1000));
        Assert.Equal(1000, new LearningCurve(LearningModel.CumulativeAverage, 1).Total(1000));
    }
}
