using CsCheck;
using Forming.Facets;
using Forming.Learning;
using Forming.Materials;
using Forming.Prediction;
using Forming.Results;
using Forming.Springback;
using Forming.TestStrips;

namespace Forming.Tests.TestStrips;

/// <summary>Strips over a faceted form: what they teach through the simulated pull.</summary>
public class FacetedStripsTests
{
    // Springback factors of 0.5 to 0.77 as the grades have them, 0.4 to 0.8 with sheets that are 15 % stronger or softer.
    private static (string Id, double ThicknessMm, FacetedBar Bar)[] Cases { get; } =
    [
        ("al-3003-h14", 1.6, Bar(16, 6, 12, 120)),
        ("al-3003-h14", 1.6, Bar(20, 6, 9, 120)),
        ("steel-cr-cs", 1, Bar(17, 8, 10, 140)),
        ("ss-304", 1, Bar(20, 6, 12, 140)),
        ("al-5052-h32", 2, Bar(17, 7, 12, 150)),
    ];

    private static FacetedBar Bar(double facetMm, int facets, double degrees, double leverMm) => new(
        new(
            [.. Enumerable.Repeat(facetMm, facets)],
            [.. Enumerable.Range(0, facets + 1).Select(j => (j == 0 || j == facets ? 0.5 : 1) * degrees * Workshop.Degree)],
            4),
        SteppingEnds.Half,
        leverMm);

    private static Sheet SheetOf(int which) => new(Workshop.Of(Cases[which].Id), Cases[which].ThicknessMm);

    private static (double RadiusMm, double Sweep) Pulled(Sheet sheet, FacetedBar bar, double factor, double planeStress = 0)
    {
        var wrapped = PanelWrap.Compute(bar.Form, BendingLaw.OfStrip(sheet, planeStress).Stronger(factor), new WrapSetup(bar.LeverMm));
        Assert.Equal(WrapEnd.Complete, wrapped.End);
        return ((1 / wrapped.MeanCurvature) - (sheet.ThicknessMm / 2), wrapped.Sweep.Radians);
    }

    private static SpringbackLesson Learn(
        Sheet sheet, FacetedBar bar, double? radiusMm, double? sweep, double readingError = 0.005, double sweepDegrees = 0.2, double? widthMm = null) =>
        SpringbackStrips.Learn(new()
        {
            Sheet = sheet,
            Strips =
            [
                new(bar, sheet.ThicknessMm)
                {
                    FinishedRadiusMm = radiusMm,
                    FinishedSweep = sweep is { } turn ? new Angle(turn) : null,
                    WidthMm = widthMm,
                },
            ],
            ReadingError = readingError,
            SweepError = Angle.FromDegrees(sweepDegrees),
            FoldError = Angle.Zero,
        });

    // A radius read to half a millimetre and a sweep read to 0.2°.
    [Fact]
    public void A_strip_over_facets_teaches_its_yield_within_3_percent() =>
        Gen.Select(Gen.Int[0, Cases.Length - 1], Gen.Double[-0.15, 0.15], Gen.Double[-1, 1], Gen.Double[-1, 1]).ForAll((which, lnFactor, offRadius, offSweep) =>
        {
            var (sheet, bar) = (SheetOf(which), Cases[which].Bar);
            var (radius, sweep) = Pulled(sheet, bar, Math.Exp(lnFactor));
            var lesson = Learn(sheet, bar, radius + (0.5 * offRadius), sweep + (0.2 * Workshop.Degree * offSweep), 0.5 / radius);
            Assert.InRange(lesson.Readings[0]!.Factor, 0.4, 0.82);
            Workshop.Near(sheet.Material.YieldMpa * Math.Exp(lnFactor), lesson.YieldMpa.Value, 0.03);
        }, iter: 12);

    // Sheet from the grade, strip by its own pull, readings with their errors: 60 draws, of which 52 to 60 hold 99 times of 100.
    [Fact]
    public void Nineteen_of_twenty_intervals_through_the_pull_hold_the_sheet()
    {
        var random = new Random(51);
        var (sheet, bar) = (SheetOf(0), Cases[0].Bar);
        var prior = SheetPrior.Of(sheet).Effective;
        var pull = StripPull.Over(sheet, bar, widthMm: null, hardeningStep: 0, new(PullWork.Most), default)!;
        var held = 0;
        for (var draw = 0; draw < 60; draw++)
        {
            var truth = Draws.Normal(random, prior);
            var (radius, sweep) = Pulled(sheet, bar, Math.Exp(truth));
            const double OfRadius = 0.01, OfSweep = 0.3 * Workshop.Degree;
            var opening = Math.Log((radius + (sheet.ThicknessMm / 2)) * pull.LoadedCurvature) + Draws.Normal(random, OfRadius);
            var posterior = YieldPosterior.Of(new()
            {
                PriorDeviation = prior,
                Readings = [new(opening, OfRadius, pull.Opening), new(sweep + Draws.Normal(random, OfSweep), OfSweep, pull.Sweep)],
            });
            held += truth >= posterior.LnLow && truth <= posterior.LnHigh ? 1 : 0;
        }

        Assert.InRange(held, 52, 60);
    }

    [Fact]
    public void A_sweep_alone_teaches_the_yield_too()
    {
        var (sheet, bar) = (SheetOf(4), Cases[4].Bar);
        var lesson = Learn(sheet, bar, null, Pulled(sheet, bar, 1.1).Sweep, sweepDegrees: 0.05);
        Workshop.Near(1.1 * sheet.Material.YieldMpa, lesson.YieldMpa.Value, 0.005);
        Workshop.Near(Pulled(sheet, bar, 1.1).RadiusMm, lesson.Readings[0]!.ExpectedFinishedMm!.Value, 0.005);
    }

    // A narrow strip springs back less: taken for a wide sheet it would seem softer than it is.
    [Fact]
    public void A_narrow_strip_is_read_by_its_width()
    {
        var (sheet, bar) = (SheetOf(4), Cases[4].Bar);
        var wide = SheetPrior.Of(sheet);
        var pull = StripPull.Over(sheet, bar, 20, wide.Hardening, new(PullWork.Most), default)!;
        Assert.InRange(pull.PlaneStress, 0.5, 0.99);
        var (radius, sweep) = Pulled(sheet, bar, 1.1, pull.PlaneStress);
        Workshop.Near(1.1 * sheet.Material.YieldMpa, Learn(sheet, bar, radius, sweep, widthMm: 20).AloneMpa.Value, 0.002);
        Assert.InRange(Learn(sheet, bar, radius, sweep).AloneMpa.Value / (1.1 * sheet.Material.YieldMpa), 0.95, 0.99);
    }

    [Fact]
    public void A_radius_and_a_sweep_that_do_not_belong_together_are_named()
    {
        var (sheet, bar) = (SheetOf(0), Cases[0].Bar);
        var lesson = Learn(sheet, bar, Pulled(sheet, bar, 0.9).RadiusMm, Pulled(sheet, bar, 1.1).Sweep);
        Assert.Equal([0], Assert.Single(lesson.Doubts, doubt => doubt.Id == "readings-contradict").Strips);
    }

    [Fact]
    public void Strips_that_cannot_be_followed_are_named_and_left_out_or_refused_where_none_is_left()
    {
        var (sheet, bar) = (SheetOf(0), Cases[0].Bar);
        var over = new SpringbackStrip(bar with { LeverMm = 600 }, sheet.ThicknessMm) { FinishedRadiusMm = 110 };
        var round = SpringbackStrip.Round(70, 95, sheet.ThicknessMm);
        Assert.Equal(
            "strips.not-followed",
            Assert.Throws<NoSolutionException>(() => SpringbackStrips.Learn(new() { Sheet = sheet, Strips = [over] })).Code);
        var lesson = SpringbackStrips.Learn(new() { Sheet = sheet, Strips = [over, round] });
        Assert.Equal([0], Assert.Single(lesson.Doubts).Strips);
        Assert.Null(lesson.Readings[0]);
        Workshop.Near(SpringbackStrips.Learn(new() { Sheet = sheet, Strips = [round] }).YieldMpa.Value, lesson.YieldMpa.Value, 1e-9);
    }

    // So nobody has to measure it: facets go from mold line to mold line.
    [Fact]
    public void The_fold_radius_hardly_moves_what_a_strip_shows()
    {
        for (var which = 0; which < Cases.Length; which++)
        {
            var (sheet, bar) = (SheetOf(which), Cases[which].Bar);
            var (sharp, sharpSweep) = Pulled(sheet, bar with { Form = bar.Form with { OuterFoldRadiusMm = 2.5 } }, 1);
            var (round, roundSweep) = Pulled(sheet, bar with { Form = bar.Form with { OuterFoldRadiusMm = 6 } }, 1);
            Workshop.Near(sharp, round, 0.004);
            Workshop.Near(sharpSweep, roundSweep, 0.004);
        }
    }
}
