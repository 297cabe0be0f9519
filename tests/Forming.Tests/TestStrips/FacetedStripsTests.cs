using CsCheck;
using Forming.Facets;
using Forming.Learning;
using Forming.Materials;
using Forming.Prediction;
using Forming.Springback;
using Forming.TestStrips;

namespace Forming.Tests.TestStrips;

/// <summary>Strips over a faceted form: what they teach through the simulated pull.</summary>
public class FacetedStripsTests
{
    private static FacetedBar Bar(double facetMm, int facets, double degrees, double leverMm) => new(
        new(
            [.. Enumerable.Repeat(facetMm, facets)],
            [.. Enumerable.Range(0, facets + 1).Select(j => (j == 0 || j == facets ? 0.5 : 1) * degrees * Workshop.Degree)],
            4),
        SteppingEnds.Half,
        leverMm);

    private static (string Id, double ThicknessMm, FacetedBar Bar)[] Cases { get; } =
    [
        ("al-3003-h14", 1.6, Bar(13, 6, 15, 120)),
        ("steel-cr-cs", 1, Bar(17, 8, 10, 140)),
        ("ss-304", 1.5, Bar(20, 5, 20, 140)),
        ("al-5052-h32", 2, Bar(17, 7, 12, 150)),
        ("steel-cr-cs", 0.9, Bar(22, 7, 7, 150)),
    ];

    private static (double RadiusMm, Angle Sweep) Pulled(Sheet sheet, FacetedBar bar, double factor, double planeStress = 0)
    {
        var wrapped = PanelWrap.Compute(
            bar.Form, BendingLaw.OfStrip(sheet, planeStress).Stronger(factor), new WrapSetup(bar.LeverMm));
        Assert.Equal(WrapEnd.Complete, wrapped.End);
        return ((1 / wrapped.MeanCurvature) - (sheet.ThicknessMm / 2), wrapped.Sweep);
    }

    private static SpringbackLesson Learn(Sheet sheet, FacetedBar bar, double? radiusMm, Angle? sweep, double readingError, double sweepDegrees, double? widthMm = null) =>
        SpringbackStrips.Learn(new()
        {
            Sheet = sheet,
            Strips = [new(bar, sheet.ThicknessMm) { FinishedRadiusMm = radiusMm, FinishedSweep = sweep, WidthMm = widthMm }],
            ReadingError = readingError,
            SweepError = Angle.FromDegrees(sweepDegrees),
            FoldError = Angle.Zero,
        });

    [Fact]
    public void A_strip_over_facets_teaches_its_yield_by_radius_and_sweep() =>
        Gen.Select(Gen.Int[0, Cases.Length - 1], Gen.Double[-0.15, 0.15], Gen.Double[-1, 1], Gen.Double[-1, 1]).ForAll((which, lnFactor, offRadius, offSweep) =>
        {
            var (id, thickness, bar) = Cases[which];
            var sheet = new Sheet(Workshop.Of(id), thickness);
            var (radius, sweep) = Pulled(sheet, bar, Math.Exp(lnFactor));
            var lesson = Learn(
                sheet, bar, radius + (0.5 * offRadius), new(sweep.Radians + (0.2 * Workshop.Degree * offSweep)), 0.5 / radius, 0.2);
            Assert.InRange(lesson.Readings[0]!.Factor, 0.35, 0.85);
            Assert.DoesNotContain(lesson.Doubts, doubt => doubt.Id is not "readings-contradict");
            Workshop.Near(sheet.Material.YieldMpa * Math.Exp(lnFactor), lesson.YieldMpa.Value, 0.03);
        }, iter: 60);
}
