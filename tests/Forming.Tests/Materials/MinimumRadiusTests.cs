using CsCheck;
using Forming.Materials;

namespace Forming.Tests.Materials;

public class MinimumRadiusTests
{
    // Reduction r is an engineering measure of area: the outer face at R/t = 50/r − 1 has e = 1/(2(50/r − 1) + 1) = r/(100 − r).
    [Fact]
    public void At_the_least_radius_the_outer_face_has_the_strain_of_the_reduced_area() =>
        Gen.Double[0.1, 50].ForAll(reduction =>
        {
            var strain = MinimumRadius.OuterFibreStrain(MinimumRadius.OverThickness(reduction));
            Assert.Equal(reduction / (100 - reduction), strain, 1e-12);
        });

    [Fact]
    public void A_gentle_wrap_stretches_the_outer_face_by_less_than_2_5_percent() =>
        Assert.True(MinimumRadius.OuterFibreStrain(20) < 0.025);

    // 6061-T6, 1.5 t across the grain: 1.5 × 1.6 = 2.4 mm; along it 2.4 × 1.5 = 3.6 mm.
    [Theory]
    [InlineData(true, 2.4)]
    [InlineData(false, 3.6)]
    public void Folds_along_the_grain_need_half_as_much_radius_again(bool grainAcross, double expected) =>
        Assert.Equal(expected, MinimumRadius.For(Find("al-6061-t6"), grainAcross, 1.6), 1e-12);

    [Fact]
    public void The_least_radius_grows_in_proportion_to_the_thickness() =>
        Gen.Double[0.2, 6].ForAll(thickness =>
            Assert.Equal(
                thickness * MinimumRadius.For(Find("ss-304"), false, 1),
                MinimumRadius.For(Find("ss-304"), false, thickness),
                1e-12));

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_thickness_that_is_no_length_is_refused(double thickness) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => MinimumRadius.For(Find("ss-304"), true, thickness));

    [Theory]
    [InlineData(0)]
    [InlineData(100.5)]
    [InlineData(double.NaN)]
    public void A_reduction_of_area_outside_0_to_100_percent_is_refused(double reduction) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => MinimumRadius.OverThickness(reduction));

    [Theory]
    [InlineData(-0.1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_negative_or_endless_radius_has_no_strain(double ratio) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => MinimumRadius.OuterFibreStrain(ratio));

    private static Material Find(string id) =>
        MaterialCatalog.Default.TryFind(id, out var material) ? material : throw new KeyNotFoundException(id);
}
