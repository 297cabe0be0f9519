using Forming.Materials;
using Forming.Springback;

namespace Forming.Tests.Springback;

/// <summary>Springback against published formulas and what was computed from them.</summary>
public class PublishedSpringbackTests
{
    private const double Inch = 25.4;
    private const double Psi = 0.00689475729;

    [Theory]
    [Published("springback-closed-form.csv")]
    public void A_sheet_without_hardening_springs_back_by_the_closed_form(double x, double ratio)
    {
        var law = BendingLaw.Of(new Sheet(Workshop.Perfect(69e3, 0.33, 145), 1.5));
        var loaded = law.YieldCurvature / (2 * x);
        Workshop.Within(1e-12, ratio, law.Release(loaded) / loaded);
    }

    [Fact]
    public void A_sheet_bent_without_limit_keeps_all_of_its_curvature()
    {
        var law = BendingLaw.Of(new Sheet(Workshop.Perfect(69e3, 0.33, 145), 1.5));
        Workshop.Within(1e-6, 1, law.Release(1e6) / 1e6);
    }

    [Theory]
    [Published("springback-forward-cases.csv")]
    public void A_wide_sheet_springs_back_as_computed(
        double radius, double thickness, double yield, double modulus, double poisson,
        double insideRatio, double insideReleased, double midRatio, double midReleased)
    {
        var law = BendingLaw.Of(new Sheet(Workshop.Perfect(modulus, poisson, yield), thickness));

        var inside = law.Release(1 / radius) * radius;
        Workshop.Within(6e-7, insideRatio, inside);
        Workshop.Within(1e-3, insideReleased, radius / inside);

        var mid = radius + (thickness / 2);
        var midKept = law.Release(1 / mid) * mid;
        Workshop.Within(6e-7, midRatio, midKept);
        Workshop.Within(1e-3, midReleased, (mid / midKept) - (thickness / 2));
    }

    [Theory]
    [Published("springback-inverse-cases.csv")]
    public void The_form_is_tighter_than_the_wanted_curve_as_computed(
        double wanted, double thickness, double yield, double modulus,
        double f, double u, double formed, double ratio, double elasticLimit)
    {
        var law = BendingLaw.Of(new Sheet(Workshop.Uniaxial(modulus, yield), thickness));
        var finished = 1 / (wanted + (thickness / 2));
        var loaded = law.LoadedFor(finished).Curvature;
        Workshop.Within(6e-7, f, finished / law.YieldCurvature);
        Workshop.Within(1e-6, u, loaded / law.YieldCurvature);
        Workshop.Within(1e-5, formed, (1 / loaded) - (thickness / 2));
        Workshop.Within(6e-7, ratio, finished / loaded);
        Workshop.Within(6e-4, elasticLimit, 1 / law.YieldCurvature);
    }

    [Theory]
    [Published("kalpakjian-schmid-springback-example.csv")]
    public void The_textbooks_20_gauge_steel_opens_from_half_an_inch_to_0_53(
        double modulusPsi, double x, double ratio, double releasedIn, double releasedMm, double factor, double bendFor90)
    {
        const double thickness = 0.0359 * Inch, formed = 0.5 * Inch;
        var law = BendingLaw.Of(new Sheet(Workshop.Uniaxial(modulusPsi * Psi, 40_000 * Psi), thickness));
        var kept = law.Release(1 / formed) * formed;
        var released = formed / kept;
        Workshop.Within(1e-6, x, law.YieldCurvature * formed / 2);
        Workshop.Within(1e-6, ratio, kept);
        Workshop.Within(1e-6, releasedIn, released / Inch);
        Workshop.Within(1e-4, releasedMm, released);
        var springbackFactor = ((2 * formed / thickness) + 1) / ((2 * released / thickness) + 1);
        Workshop.Within(1e-6, factor, springbackFactor);
        Workshop.Within(0.006, bendFor90, 90 / springbackFactor);
    }

    // 6061-T6, t = 1.6 mm at an inside radius of 100 mm, uniaxial. M_e = 276 × 1.6²/6, M_p = 276 × 1.6²/4,
    // M = M_p (1 - (ky/k)²/3) with ky/k = 2 × 276 × 100.8/(69 000 × 1.6) = 0.504: Marciniak, Duncan & Hu eq. 6.18, 6.21-6.23.
    [Fact]
    public void Moments_at_first_yield_in_the_bend_and_fully_plastic_are_those_of_the_book()
    {
        var law = BendingLaw.Of(new Sheet(Workshop.Uniaxial(69e3, 276), 1.6));
        Workshop.Within(5e-4, 117.760, law.FirstYieldMoment);
        Workshop.Within(5e-7, 161.683538, law.At(1 / 100.8).MomentPerWidth);
        Workshop.Within(1e-3, 176.640, law.At(10).MomentPerWidth);
    }

    // Eq. 6.31: the fully plastic sheet unloads by 1.5 ky.
    [Fact]
    public void A_fully_plastic_sheet_lets_go_one_and_a_half_times_its_yield_curvature()
    {
        var law = BendingLaw.Of(new Sheet(Workshop.Perfect(207e3, 0.29, 200), 1.2));
        var loaded = 3000 * law.YieldCurvature;
        Workshop.Near(1.5 * law.YieldCurvature, loaded - law.Release(loaded), 1e-6);
    }

    // Without an elastic core to speak of (E a million times too high) and yielding at a strain of 1e-8, only K eps^n is left.
    [Theory]
    [Published("power-law-moments.csv")]
    public void A_stiff_sheet_that_yields_at_once_bends_by_the_power_law(
        double strengthCoefficient, double n, double thickness, double radius, double moment)
    {
        var metal = Workshop.Swift(1e12, 0, strengthCoefficient * Math.Pow(1e-8, n), n, 1e-8);
        var law = BendingLaw.Of(new Sheet(metal, thickness));
        Workshop.Near(moment, law.At(1 / radius).MomentPerWidth, 2e-6);
    }

    [Theory]
    [Published("tabellenbuch-springback-factors.csv")]
    public void The_textbook_tables_fall_with_the_radius_as_the_closed_form_does(
        double modulus, double flowStress, double? r16, double? r25, double? r40, double? r63, double? r100)
    {
        var law = BendingLaw.Of(new Sheet(Workshop.Uniaxial(modulus, flowStress), 1));
        foreach (var (radius, printed) in new[] { (16, r16), (25, r25), (40, r40), (63, r63), (100, r100) })
        {
            var finished = 1 / (radius + 0.5);
            if (printed is { } factor)
                Workshop.Within(0.05, factor, finished / law.LoadedFor(finished).Curvature);
        }
    }
}
