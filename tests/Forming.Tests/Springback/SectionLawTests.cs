using Forming.Materials;
using Forming.Springback;

namespace Forming.Tests.Springback;

/// <summary>The moment of a wide sheet with the stress across the bend worked out.</summary>
public class SectionLawTests
{
    private static readonly Sheet HalfHard = new(Workshop.Swift(69e3, 0.33, 145, 0.03, 0.002), 1.5875);

    // Computed elsewhere by a return mapping with 3,000 steps and 4,001 layers.
    [Theory]
    [InlineData(51.58, 110.020)]
    [InlineData(273.9, 85.585)]
    public void It_is_what_a_return_mapping_through_the_thickness_finds(double radius, double moment)
    {
        var law = SectionLaw.Of(HalfHard, FlowCurve.Of(HalfHard.Material), 1 / 2.8);
        Workshop.Near(moment, law.MomentAt(1 / radius, out _), 5e-4);
    }

    [Fact]
    public void It_meets_the_closed_form_once_the_stress_across_has_built_up()
    {
        var law = SectionLaw.Of(HalfHard, FlowCurve.Of(HalfHard.Material), 1 / 2.8);
        var closed = BendingLaw.Of(HalfHard);
        Workshop.Near(closed.Stiffness / 1000, law.MomentAt(1.0 / 1000, out _), 1e-12);
        foreach (var times in new[] { 2, 5, 20, 100 })
        {
            var curvature = times * closed.YieldCurvature;
            Workshop.Near(closed.At(curvature).MomentPerWidth, law.MomentAt(curvature, out _), 0.02 / times);
        }
    }

    [Fact]
    public void Its_rate_is_its_slope()
    {
        var law = SectionLaw.Of(HalfHard, FlowCurve.Of(HalfHard.Material), 1 / 2.8);
        foreach (var radius in new[] { 400.0, 200, 60, 12 })
        {
            var step = 1e-5 / radius;
            law.MomentAt(1 / radius, out var rate);
            var slope = (law.MomentAt((1 / radius) + step, out _) - law.MomentAt((1 / radius) - step, out _)) / (2 * step);
            Workshop.Near(slope, rate, 1e-3);
        }
    }
}
