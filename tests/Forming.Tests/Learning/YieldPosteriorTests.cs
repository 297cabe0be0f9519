using CsCheck;
using Forming.Learning;
using Forming.Materials;
using Forming.Springback;
using Forming.Tests.TestStrips;

namespace Forming.Tests.Learning;

/// <summary>What a grade says of a sheet, joined with what is read on it.</summary>
public class YieldPosteriorTests
{
    private const double ThicknessMm = 1.5;

    private const double FormRadiusMm = 60;

    private static Sheet Sheet { get; } = new(Workshop.Of("al-3003-h14"), ThicknessMm);

    private static SheetPrior Prior { get; } = SheetPrior.Of(Sheet);

    private static double LnRadius(double formRadiusMm, double lnFactor, double lnHardening, double thickness = 1)
    {
        var law = BendingLaw.Of(Sheet with { ThicknessMm = thickness * ThicknessMm }).Stronger(Math.Exp(lnFactor));
        var left = (lnHardening == 0 ? law : law.Hardened(Math.Exp(lnHardening))).Release(1 / (formRadiusMm + (thickness * ThicknessMm / 2)));
        return left > 0 ? -Math.Log(left) : double.PositiveInfinity;
    }

    private static YieldReading Read(double formRadiusMm, double lnRadius, double deviation) =>
        new(lnRadius, deviation, (lnFactor, lnHardening) => LnRadius(formRadiusMm, lnFactor, lnHardening));

    private static YieldPosterior Learn(params YieldReading[] readings) =>
        YieldPosterior.Of(new() { PriorDeviation = Prior.Effective, Readings = readings });

    [Fact]
    public void Without_a_reading_a_sheet_is_what_its_grade_says()
    {
        var posterior = Learn();
        Workshop.Within(1e-9, 0, posterior.LnFactor);
        Workshop.Near(Prior.Effective, posterior.Deviation, 0.002);
        Workshop.Near(YieldPosterior.TwoSided * Prior.Effective, posterior.LnHigh, 0.005);
        Workshop.Near(1, posterior.PriorWeight, 0.005);
        var yield = Prior.YieldOf(posterior);
        Workshop.Near(YieldPosterior.TwoSided * Prior.Yield, Math.Log(yield.High!.Value), 0.005);
        var thickness = Prior.ThicknessOf(posterior);
        Workshop.Near(YieldPosterior.TwoSided * Prior.Thickness, Math.Log(thickness.High!.Value), 0.005);
    }

    [Fact]
    public void A_very_sharp_reading_says_it_all() => Gen.Double[-0.3, 0.3].ForAll(truth =>
    {
        var posterior = Learn(Read(FormRadiusMm, LnRadius(FormRadiusMm, truth, 0), 1e-5));
        Workshop.Within(1e-5, truth, posterior.LnFactor);
        Workshop.Within(1e-6, truth, posterior.Alone!.Value.LnFactor);
        Assert.InRange(posterior.PriorWeight, 0, 1e-6);
    });

    // Of two normal sources each counts by the inverse square of its deviation.
    [Fact]
    public void One_strip_is_worth_what_it_is_worth_and_no_more() => Gen.Select(Gen.Double[-0.15, 0.15], Gen.Double[0.005, 0.05]).ForAll((truth, deviation) =>
    {
        var posterior = YieldPosterior.Of(new() { PriorDeviation = 0.08, Readings = [new(truth, deviation, (lnFactor, _) => lnFactor)] });
        var weight = deviation * deviation / ((deviation * deviation) + (0.08 * 0.08));
        Workshop.Within(1e-6, (1 - weight) * truth, posterior.LnFactor);
        Workshop.Near(weight, posterior.PriorWeight, 0.001);
        Workshop.Near(Math.Sqrt(weight) * 0.08, posterior.Deviation, 0.001);
    });

    // 500 draws of sheet, strip and reading error; 462 to 490 is what 95 % of 500 comes out as, 99 times of 100.
    [Theory]
    [InlineData(1, 41)]
    [InlineData(3, 42)]
    [Trait("Category", "Long")]
    public void Nineteen_of_twenty_intervals_hold_the_sheet(int strips, int seed)
    {
        var random = new Random(seed);
        var held = 0;
        for (var draw = 0; draw < 500; draw++)
        {
            double truth = Draws.Normal(random, Prior.Effective), deviation = 0.005 + (0.015 * random.NextDouble());
            var posterior = Learn([.. Enumerable.Range(0, strips).Select(i =>
                Read(FormRadiusMm + (10 * i), LnRadius(FormRadiusMm + (10 * i), truth, 0) + Draws.Normal(random, deviation), deviation))]);
            held += truth >= posterior.LnLow && truth <= posterior.LnHigh ? 1 : 0;
        }

        Assert.InRange(held, 462, 490);
    }

    // Yield, thickness, modulus and n all differ; what is asked of is the yield that with nominal values springs alike at 60 mm.
    [Fact]
    public void A_strip_at_another_radius_leaves_hardening_open_and_its_interval_says_so()
    {
        var random = new Random(43);
        var trade = HardeningTrade.Of((lnFactor, lnHardening) => LnRadius(FormRadiusMm, lnFactor, lnHardening));
        var held = 0;
        const double Spread = 0.5;
        for (var draw = 0; draw < 500; draw++)
        {
            double factor = Draws.Normal(random, Prior.Effective), hardening = Draws.Normal(random, Spread);
            var posterior = YieldPosterior.Of(new()
            {
                PriorDeviation = Prior.Effective,
                HardeningDeviation = Spread,
                HardeningTrade = trade,
                Readings = [Read(15, LnRadius(15, factor, hardening) + Draws.Normal(random, 0.003), 0.003)],
            });
            var wanted = LnRadius(FormRadiusMm, factor, hardening);
            var alike = Bisection.Solve(at => LnRadius(FormRadiusMm, at, 0) - wanted, -2, 2);
            held += alike >= posterior.LnLow && alike <= posterior.LnHigh ? 1 : 0;
        }

        Assert.InRange(held, 462, 490);
    }

    // A sheet 5 % thinner springs back like one 5 % stronger: no strip tells them apart, a micrometer does.
    [Fact]
    public void Springback_does_not_tell_yield_from_thickness()
    {
        var thinner = LnRadius(FormRadiusMm, 0, 0, 0.95);
        var posterior = Learn(Read(FormRadiusMm, thinner, 1e-4));
        Workshop.Within(0.004, -Math.Log(0.95), posterior.LnFactor);
        Assert.True(Prior.YieldOf(posterior).Low < 1 && Prior.ThicknessOf(posterior).Low < 0.95);
        var measured = SheetPrior.Of(Sheet, isThicknessMeasured: true);
        Assert.True(WidthOf(measured.YieldOf(posterior)) < WidthOf(Prior.YieldOf(posterior)));
        Assert.True(WidthOf(measured.ThicknessOf(posterior)) < 0.25 * WidthOf(Prior.ThicknessOf(posterior)));

        static double WidthOf(Interval interval) => interval.High!.Value - interval.Low!.Value;
    }

    // A fold 1 % off moves all readings of the panel: reading it ten times does not take that away.
    [Fact]
    public void An_error_that_all_readings_share_is_not_averaged_away()
    {
        var one = With(1);
        var ten = With(10);
        Workshop.Near(Math.Sqrt((0.01 * 0.01) + (0.02 * 0.02)), one.Deviation, 0.01);
        Workshop.Near(Math.Sqrt((0.01 * 0.01 / 10) + (0.02 * 0.02)), ten.Deviation, 0.01);

        static YieldPosterior With(int readings) => YieldPosterior.Of(new()
        {
            PriorDeviation = 0.5,
            Readings = [.. Enumerable.Repeat(new YieldReading(0.1, 0.01, (lnFactor, _) => lnFactor), readings)],
            SharedErrors = [[.. Enumerable.Repeat(0.02, readings)]],
        });
    }

    [Fact]
    public void Readings_that_no_one_sheet_explains_are_named_as_a_pair()
    {
        Assert.Equal((1, 0), Plausibility.Apart(Learn(Read(60, LnRadius(60, 0.2, 0), 0.01), Read(60, LnRadius(60, -0.1, 0), 0.01))));
        Assert.Null(Plausibility.Apart(Learn(Read(60, LnRadius(60, 0.05, 0), 0.01), Read(80, LnRadius(80, 0.04, 0), 0.01))));
    }

    // Nodes of a costly calculation stand in for it within a hundredth of what a tape reads.
    [Fact]
    public void A_table_of_a_few_nodes_stands_in_for_the_calculation()
    {
        var table = YieldTable.Of((lnFactor, lnHardening) => LnRadius(FormRadiusMm, lnFactor, lnHardening) is var at && double.IsFinite(at) ? [at] : null, 0.15)!;
        Gen.Select(Gen.Double[-0.4, 0.4], Gen.Double[-0.2, 0.2]).ForAll((lnFactor, lnHardening) =>
            Workshop.Within(5e-4, LnRadius(FormRadiusMm, lnFactor, lnHardening), table.At(0, lnFactor, lnHardening)));
    }
}
