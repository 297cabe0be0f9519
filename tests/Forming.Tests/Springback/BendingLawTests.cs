using CsCheck;
using Forming.Materials;
using Forming.Springback;
using MathNet.Numerics;
using MathNet.Numerics.Integration;
using MathNet.Numerics.RootFinding;

namespace Forming.Tests.Springback;

/// <summary>The closed forms of bending against MathNet's integrals and roots.</summary>
public class BendingLawTests
{
    /// <summary>A sheet: modulus, Poisson's ratio, yield stress, n, eps0, thickness.</summary>
    private static readonly Gen<Metal> Metals = Gen.Select(
        Gen.Double[45e3, 210e3], Gen.Double[0, 0.45], Gen.Double[30, 900], Gen.Double[0, 0.6], Gen.Double[-4, -1.3], Gen.Double[0.3, 6])
        .Select((modulus, poisson, yield, n, prestrain, thickness) =>
            new Metal(modulus, poisson, yield, n < 0.02 ? 0 : n, Math.Pow(10, prestrain), thickness));

    /// <summary>Curvature under load over that of first yield.</summary>
    private static readonly Gen<double> PastYield = Gen.Double[0.02, 2].Select(exponent => Math.Pow(10, exponent));

    [Fact]
    public void The_moment_is_the_integral_of_the_stress_over_the_thickness() =>
        Gen.Select(Metals, PastYield).ForAll(
            (metal, u) =>
            {
                var law = metal.Law;
                var curvature = u * law.YieldCurvature;
                Workshop.Near(MomentByQuadrature(metal, curvature), law.At(curvature).MomentPerWidth, 1e-8);
            },
            iter: 150);

    [Fact]
    public void The_work_is_the_integral_of_the_moment_over_the_curvature() =>
        Gen.Select(Metals, PastYield).ForAll(
            (metal, u) =>
            {
                var law = metal.Law;
                var (yield, curvature) = (law.YieldCurvature, u * law.YieldCurvature);
                var elastic = law.Stiffness * yield * yield / 2;
                var plastic = DoubleExponentialTransformation.Integrate(k => law.At(k).MomentPerWidth, yield, curvature, 1e-11);
                Workshop.Near(elastic + plastic, law.At(curvature).WorkPerArea, 1e-8);
            },
            iter: 150);

    [Fact]
    public void The_tangent_stiffness_is_the_slope_of_the_moment() =>
        Gen.Select(Metals, PastYield).ForAll(
            (metal, u) =>
            {
                var law = metal.Law;
                var curvature = u * law.YieldCurvature;
                var step = 1e-4 * curvature;
                double Moment(double k) => law.At(k).MomentPerWidth;
                var slope = ((8 * (Moment(curvature + step) - Moment(curvature - step))) - Moment(curvature + (2 * step)) + Moment(curvature - (2 * step)))
                    / (12 * step);
                Workshop.Within(1e-7 * law.Stiffness, slope, law.At(curvature).TangentStiffness);
            },
            iter: 300);

    [Fact]
    public void Below_yield_the_sheet_is_a_spring_and_keeps_nothing()
    {
        var law = new Metal(69e3, 0.33, 145, 0.2, 0.004, 1.5).Law;
        var state = law.At(0.8 * law.YieldCurvature);
        Assert.False(state.IsPlastic);
        Workshop.Near(law.Stiffness * 0.8 * law.YieldCurvature, state.MomentPerWidth, 1e-14);
        Assert.Equal(0, law.Release(0.8 * law.YieldCurvature));
    }

    [Fact]
    public void The_moment_at_first_yield_is_that_of_the_elastic_beam() =>
        Metals.ForAll(
            metal =>
            {
                var law = metal.Law;
                Workshop.Near(law.FirstYieldMoment, law.At(law.YieldCurvature * (1 + 1e-12)).MomentPerWidth, 1e-10);
                Workshop.Near(law.FirstYieldMoment, law.Stiffness * law.YieldCurvature, 1e-12);
            },
            iter: 100);

    [Fact]
    public void Without_hardening_the_formed_curvature_is_the_largest_root_of_the_cubic() =>
        Gen.Select(Metals, Gen.Double[-2, 3]).ForAll(
            (metal, exponent) =>
            {
                var law = (metal with { N = 0 }).Law;
                var f = Math.Pow(10, exponent);
                var (a, b, c) = FindRoots.Cubic(0.5, 0, -(f + 1.5), 1);
                var largest = Math.Max(a.Real, Math.Max(b.Real, c.Real));
                Workshop.Near(largest, law.LoadedFor(f * law.YieldCurvature).Curvature / law.YieldCurvature, 1e-9);
            },
            iter: 300);

    [Fact]
    public void With_hardening_the_formed_curvature_is_the_root_that_a_bracket_finds() =>
        Gen.Select(Metals, Gen.Double[-2, 3]).ForAll(
            (metal, exponent) =>
            {
                var law = metal.Law;
                var (yield, wanted) = (law.YieldCurvature, Math.Pow(10, exponent) * law.YieldCurvature);
                var root = Brent.FindRoot(
                    u => (u * yield) - (law.At(u * yield).MomentPerWidth / law.Stiffness) - wanted, 1, 1e8, 1e-14, 300);
                Workshop.Near(root, law.LoadedFor(wanted).Curvature / yield, 1e-8);
            },
            iter: 200);

    [Fact]
    public void What_is_formed_for_a_curve_springs_back_to_it_over_many_decades() =>
        Gen.Select(Metals, Gen.Double[-9, 4]).ForAll(
            (metal, exponent) =>
            {
                var law = metal.Law;
                var wanted = Math.Pow(10, exponent) * law.YieldCurvature;
                var loaded = law.LoadedFor(wanted).Curvature;
                Workshop.Within((1e-13 * loaded) + (1e-12 * wanted), wanted, law.Release(loaded));
            },
            iter: 500);

    [Fact]
    public void An_almost_flat_panel_still_needs_a_form_of_its_yield_radius() =>
        Metals.ForAll(
            metal =>
            {
                var law = metal.Law;
                Workshop.Near(law.YieldCurvature, law.LoadedFor(0).Curvature, 1e-14);
                Workshop.Near(law.YieldCurvature, law.LoadedFor(1e-14 * law.YieldCurvature).Curvature, 1e-5);
                Assert.True(law.LoadedFor(1e-6 * law.YieldCurvature).Curvature > law.YieldCurvature);
            },
            iter: 100);

    [Fact]
    public void A_tighter_finished_curve_needs_a_tighter_form() =>
        Gen.Select(Metals, Gen.Double[-6, 3], Gen.Double[0.01, 1]).ForAll(
            (metal, exponent, growth) =>
            {
                var law = metal.Law;
                var wanted = Math.Pow(10, exponent) * law.YieldCurvature;
                Assert.True(law.LoadedFor(wanted * (1 + growth)).Curvature > law.LoadedFor(wanted).Curvature);
            },
            iter: 300);

    [Fact]
    public void A_stronger_sheet_springs_back_further()
    {
        var soft = new Metal(69e3, 0.33, 100, 0, 0, 1.5).Law;
        var hard = new Metal(69e3, 0.33, 150, 0, 0, 1.5).Law;
        Assert.True(hard.Release(0.02) < soft.Release(0.02));
    }

    [Fact]
    public void A_measured_yield_stands_in_for_the_catalogues()
    {
        var sheet = new Sheet(Workshop.Perfect(69e3, 0.33, 145), 1.5);
        var measured = BendingLaw.WithYield(sheet, 120);
        var same = BendingLaw.Of(sheet with { Material = Workshop.Perfect(69e3, 0.33, 120) });
        Assert.Equal(same.LoadedFor(0.01).Curvature, measured.LoadedFor(0.01).Curvature);
    }

    // The stress profile, solved for strain by bracketing, integrated by halves: elastic core and plastic skin.
    private static double MomentByQuadrature(Metal metal, double curvature)
    {
        double modulus = metal.Modulus / (1 - (metal.Poisson * metal.Poisson)), yield = 2 / Math.Sqrt(3) * metal.Yield;
        double e0 = Math.Sqrt(3) / 2 * metal.Prestrain, core = yield / modulus / curvature, half = metal.Thickness / 2;
        var elastic = GaussLegendreRule.Integrate(z => modulus * curvature * z * z, 0, core, 8);
        var plastic = DoubleExponentialTransformation.Integrate(z => Stress(curvature * z) * z, core, half, 1e-11);
        return 2 * (elastic + plastic);

        double Stress(double strain)
        {
            if (metal.N == 0)
                return yield;
            var p = Brent.FindRoot(
                p => (yield * Math.Pow(1 + (p / e0), metal.N) / modulus) + p - strain, 0, Math.Max(strain, 1e-300), 1e-17, 500);
            return modulus * (strain - p);
        }
    }

    private sealed record Metal(double Modulus, double Poisson, double Yield, double N, double Prestrain, double Thickness)
    {
        public BendingLaw Law => BendingLaw.Of(new Sheet(
            N == 0 ? Workshop.Perfect(Modulus, Poisson, Yield) : Workshop.Swift(Modulus, Poisson, Yield, N, Prestrain), Thickness));
    }
}
