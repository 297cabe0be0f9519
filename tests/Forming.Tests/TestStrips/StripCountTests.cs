using CsCheck;
using Forming.Learning;
using Forming.Materials;
using Forming.Springback;
using Forming.TestStrips;

namespace Forming.Tests.TestStrips;

/// <summary>How many more strips a tolerance takes, and what strips do not show.</summary>
public class StripCountTests
{
    private const double ThicknessMm = 1.5;

    private static Material Metal { get; } = Workshop.Of("al-3003-h14");

    private static SpringbackStrip Bent(double formRadiusMm, double factor)
    {
        var law = BendingLaw.Of(new Sheet(Metal, ThicknessMm)).Stronger(factor);
        return SpringbackStrip.Round(formRadiusMm, (1 / law.Release(1 / (formRadiusMm + (ThicknessMm / 2)))) - (ThicknessMm / 2), ThicknessMm);
    }

    private static SpringbackLesson Learn(double targetMm, double toleranceMm, IEnumerable<SpringbackStrip> strips) => SpringbackStrips.Learn(new()
    {
        Sheet = new(Metal, ThicknessMm),
        Strips = [.. strips],
        TargetsMm = [targetMm],
        ToleranceMm = toleranceMm,
    });

    [Fact]
    public void So_many_more_strips_bring_the_panel_within_the_tolerance_and_one_less_does_not() =>
        Gen.Select(Gen.Double[60, 150], Gen.Double[0.9, 1.15], Gen.Double[0.4, 1]).ForAll((target, factor, share) =>
        {
            var first = Bent(0.6 * target, factor);
            var tolerance = share * Learn(target, 1, [first]).Needed.NowMm;
            var lesson = Learn(target, tolerance, [first]);
            var count = lesson.Needed.Strips!.Value;
            var next = Bent(lesson.Effects[0].FormRadiusMm.Value, factor);
            Assert.InRange(Learn(target, tolerance, [first, .. Enumerable.Repeat(next, count)]).Needed.NowMm, 0, 1.03 * tolerance);
            if (count > 0)
                Assert.InRange(Learn(target, tolerance, [first, .. Enumerable.Repeat(next, count - 1)]).Needed.NowMm, 0.97 * tolerance, 1e3);
        }, iter: 20);

    [Fact]
    public void A_tolerance_finer_than_a_hundred_strips_reach_is_said_to_be_so()
    {
        var needed = Learn(120, 0.01, [Bent(80, 1)]).Needed;
        Assert.Null(needed.Strips);
        Assert.StartsWith("Read the radius finer", FormattableString.Invariant(needed.Text), StringComparison.Ordinal);
    }

    // 3003 of 1.5 mm may be 0.09 mm off by its standard: no strip of this sheet shows how thick the next one is.
    [Fact]
    public void What_another_sheets_thickness_does_is_not_taken_away_by_strips()
    {
        var one = Learn(120, 1, [Bent(80, 1)]).Needed;
        var nine = Learn(120, 1, Enumerable.Repeat(Bent(80, 1), 9)).Needed;
        Assert.True(nine.NowMm < 0.5 * one.NowMm);
        Workshop.Near(one.OtherSheetsMm, nine.OtherSheetsMm, 0.01);
        Assert.InRange(nine.OtherSheetsMm, 2, 8);
    }

    [Fact]
    public void A_measured_thickness_narrows_what_the_yield_may_be()
    {
        var strip = Bent(80, 1.1);
        var nominal = Learn(120, 1, [strip]);
        var measured = Learn(120, 1, [strip with { IsThicknessMeasured = true }]);
        Assert.True(Width(measured.Sheet.YieldMpa) < 0.8 * Width(nominal.Sheet.YieldMpa));
        Assert.Contains(nominal.Notes, note => note.Id == "measure-thickness");
        Assert.DoesNotContain(measured.Notes, note => note.Id == "measure-thickness");

        static double Width(Interval interval) => interval.High!.Value - interval.Low!.Value;
    }

    [Fact]
    public void Strips_thicker_than_the_panel_to_come_are_doubted() => Assert.Contains(
        Learn(120, 1, [Bent(80, 1) with { ThicknessMm = 1.6 }]).Doubts, doubt => doubt.Id == "thickness-differs");

    [Fact]
    public void Strips_that_do_lead_to_the_plan_and_others_to_the_next_strip()
    {
        var (enough, tooFew) = (Learn(120, 50, [Bent(80, 1)]), Learn(120, 0.5, [Bent(80, 1)]));
        Assert.True(enough.IsEnough);
        Assert.Contains("no more strips", enough.Planning!.Format, StringComparison.Ordinal);
        Assert.False(tooFew.IsEnough);
        Assert.NotNull(tooFew.Planning);
        Assert.Null(Learn(120, 1, [Bent(80, 1) with { ThicknessMm = 1.6 }]).Planning); // in doubt
    }

    // Yield, thickness, modulus and n of the sheet differ from the grade's; strip and panel are of that one sheet, nobody measured it.
    [Theory]
    [InlineData("al-3003-h14", 50, 100, 61)]
    [InlineData("steel-cr-cs", 80, 140, 62)]
    [InlineData("ss-304", 120, 90, 63)]
    [Trait("Category", "Long")]
    public void Nineteen_of_twenty_panels_finish_within_what_is_said(string id, double barMm, double targetMm, int seed)
    {
        var nominal = new Sheet(Workshop.Of(id), ThicknessMm);
        var prior = SheetPrior.Of(nominal);
        Draws.AssertNominal(Draws.Share(seed, random =>
        {
            var sheet = new Sheet(
                nominal.Material with { YoungsModulusMpa = nominal.Material.YoungsModulusMpa * Math.Exp(Draws.Normal(random, prior.Modulus)) },
                ThicknessMm * Math.Exp(Draws.Normal(random, prior.Thickness)));
            var law = BendingLaw.Of(sheet).Stronger(Math.Exp(Draws.Normal(random, prior.Yield))).Hardened(Math.Exp(Draws.Normal(random, prior.Hardening)));
            var read = Finished(barMm) * Math.Exp(Draws.Normal(random, 0.01 / Draws.Half));
            var lesson = SpringbackStrips.Learn(new()
            {
                Sheet = nominal,
                Strips = [SpringbackStrip.Round(barMm, read, ThicknessMm)],
                ReadingError = 0.01,
                TargetsMm = [targetMm],
            });
            return Math.Abs(Finished(lesson.Effects[0].FormRadiusMm.Value) - targetMm) <= lesson.Needed.NowMm;

            double Finished(double formMm) => (1 / law.Release(1 / (formMm + (sheet.ThicknessMm / 2)))) - (sheet.ThicknessMm / 2);
        }));
    }

    // 12 % stronger and 4 % thinner: planned by the grade the panel misses by 6 %, by one strip read to 1 % by less than 1.
    [Fact]
    public void One_strip_brings_a_strong_thin_sheet_home()
    {
        var sheet = new Sheet(Metal, 0.96 * ThicknessMm);
        var law = BendingLaw.Of(sheet).Stronger(1.12);
        var lesson = SpringbackStrips.Learn(new()
        {
            Sheet = new(Metal, ThicknessMm),
            Strips = [SpringbackStrip.Round(70, Finished(70), ThicknessMm)],
            ReadingError = 0.01,
            TargetsMm = [110],
        });
        Assert.True(Finished(lesson.Effects[0].FormRadiusBeforeMm) > 1.05 * 110);
        Workshop.Near(110, Finished(lesson.Effects[0].FormRadiusMm.Value), 0.01);

        double Finished(double formMm) => (1 / law.Release(1 / (formMm + (sheet.ThicknessMm / 2)))) - (sheet.ThicknessMm / 2);
    }

    [Fact]
    public void A_strip_without_a_width_asks_for_it()
    {
        Assert.Contains(Learn(120, 1, [Bent(80, 1)]).Notes, note => note.Id == "give-width");
        Assert.DoesNotContain(Learn(120, 1, [Bent(80, 1) with { WidthMm = 60 }]).Notes, note => note.Id == "give-width");
    }
}
