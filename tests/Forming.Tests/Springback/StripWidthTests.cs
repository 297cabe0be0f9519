using CsCheck;
using Forming.Materials;
using Forming.Springback;

namespace Forming.Tests.Springback;

/// <summary>Narrow strips bend in plane stress, wide sheets in plane strain, others between.</summary>
public class StripWidthTests
{
    [Fact]
    public void A_narrow_strip_is_in_plane_stress_and_a_wide_sheet_in_plane_strain() =>
        Gen.Select(Gen.Double[10, 1000], Gen.Double[0.3, 5], Gen.Double[0.2, 0.4]).ForAll((radius, thickness, poisson) =>
        {
            var curl = Math.Sqrt(radius * thickness);
            Workshop.Within(1e-9, 1, StripWidth.PlaneStress(0.001 * curl, radius, thickness, poisson));
            Workshop.Within(1e-6, 0, StripWidth.PlaneStress(1e7 * curl, radius, thickness, poisson));
            Assert.InRange(StripWidth.PlaneStress(32 * curl, radius, thickness, poisson), 0.045, 0.055);
        });

    [Fact]
    public void A_wider_strip_has_less_of_plane_stress() => Gen.Select(Gen.Double[0.001, 30], Gen.Double[1.001, 1.5]).ForAll((width, wider) =>
    {
        double narrow = StripWidth.PlaneStress(width, 50, 1, 0.3), wide = StripWidth.PlaneStress(width * wider, 50, 1, 0.3);
        Assert.InRange(wide, 0, narrow);
        Assert.InRange(narrow, 0, 1);
    });

    // The same by hyperbolic functions, where these do not overflow.
    [Fact]
    public void The_share_is_that_of_a_plate_bent_to_a_cylinder() => Gen.Double[0.06, 300].ForAll(g =>
    {
        var width = g / Math.Pow(3 * (1 - (0.3 * 0.3)), 0.25) * Math.Sqrt(50);
        var expected = 2 / g * (Math.Cosh(g) - Math.Cos(g)) / (Math.Sinh(g) + Math.Sin(g));
        Workshop.Near(expected, StripWidth.PlaneStress(width, 50, 1, 0.3), 1e-9);
    });

    [Fact]
    public void Half_of_it_is_left_in_a_strip_of_25_mm_at_97() =>
        Assert.InRange(StripWidth.PlaneStress(25, 97, 0.9, 0.3), 0.45, 0.65);

    [Theory]
    [InlineData("al-3003-h14")]
    [InlineData("ss-304")]
    public void Without_plane_stress_a_strip_is_a_wide_sheet_to_the_last_digit(string id)
    {
        var sheet = new Sheet(Workshop.Of(id), 1.5);
        foreach (var curvature in new[] { 0.001, 0.01, 0.03 })
            Assert.Equal(BendingLaw.Of(sheet).At(curvature), BendingLaw.OfStrip(sheet, 0).At(curvature));
    }

    // Moment of a bar: Y t²/4 (1 - (ky/k)²/3), ky = 2Y/(Et); with E and Y themselves.
    [Fact]
    public void In_plane_stress_a_strip_is_a_bar_of_yield_Y_and_modulus_E() =>
        Gen.Select(Gen.Double[50e3, 210e3], Gen.Double[50, 400], Gen.Double[1.1, 20]).ForAll((modulus, yield, times) =>
        {
            const double t = 1.2;
            var law = BendingLaw.OfStrip(new(Workshop.Perfect(modulus, 0.3, yield), t), 1);
            var atYield = 2 * yield / (modulus * t);
            Workshop.Near(atYield, law.YieldCurvature, 1e-12);
            Workshop.Near(yield * t * t / 4 * (1 - (1 / (3 * times * times))), law.At(times * atYield).MomentPerWidth, 1e-12);
            Workshop.Near(modulus * t * t * t / 12, law.Stiffness, 1e-12);
        });

    // Hardening strains of a bar are its own, of a wide sheet √3/2 of its length strains.
    [Fact]
    public void In_plane_stress_a_bar_hardens_by_its_own_strains()
    {
        var metal = Workshop.Swift(200e3, 0.3, 200, 0.2, 0.002);
        var law = BendingLaw.OfStrip(new(metal, 1), 1);
        var state = law.At(0.05);
        // Fibre by fibre: stress = Y ((e - s/E)/e0 + 1)^n, moment = 2∫ s z dz.
        var moment = 2 * MathNet.Numerics.Integration.GaussLegendreRule.Integrate(z => Stress(0.05 * z) * z, 0, 0.5, 512);
        Workshop.Near(moment, state.MomentPerWidth, 1e-5);

        static double Stress(double strain)
        {
            if (strain <= 200 / 200e3)
                return 200e3 * strain;
            double low = 200, high = 2000;
            for (var i = 0; i < 100; i++)
            {
                var stress = (low + high) / 2;
                if (200 * Math.Pow(1 + ((strain - (stress / 200e3)) / 0.002), 0.2) > stress)
                    low = stress;
                else
                    high = stress;
            }

            return low;
        }
    }
}
