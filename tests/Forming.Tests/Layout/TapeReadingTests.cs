using CsCheck;
using Forming.Layout;

namespace Forming.Tests.Layout;

/// <summary>Lengths as they read on a tape.</summary>
public class TapeReadingTests
{
    private static readonly Tape Inches = new(LengthUnit.In, 1.0 / 64);
    private static readonly Tape HalfMillimetres = new(LengthUnit.Mm, 0.5);

    [Theory]
    [InlineData(12.4375, "12 7/16")]
    [InlineData(-3.5, "-3 1/2")]
    [InlineData(0.015625, "1/64")]
    [InlineData(-0.03125, "-1/32")]
    [InlineData(0, "0")]
    [InlineData(7, "7")]
    [InlineData(0.99, "63/64")]
    [InlineData(0.9975, "1")]
    [InlineData(31.890625, "31 57/64")]
    public void Inches_read_as_the_lowest_fraction(double inches, string text) =>
        Assert.Equal(text, TapeReading.Of(inches * 25.4, Inches).Text);

    [Theory]
    [InlineData(317.5, "317.5")]
    [InlineData(317.26, "317.5")]
    [InlineData(317.24, "317")]
    [InlineData(-0.1, "0")]
    [InlineData(-12.3, "-12.5")]
    public void Millimetres_read_to_the_half(double mm, string text) => Assert.Equal(text, TapeReading.Of(mm, HalfMillimetres).Text);

    // NIST Handbook 44 §5.52: midway between graduations, to the even one.
    [Theory]
    [InlineData(0.25, 0)]
    [InlineData(0.75, 1)]
    [InlineData(1.25, 1)]
    [InlineData(-0.75, -1)]
    public void Midway_goes_to_the_even_step(double mm, double expected) => Assert.Equal(expected, TapeReading.Of(mm, HalfMillimetres).Mm);

    [Fact]
    public void A_tape_divided_in_tenths_of_an_inch_reads_in_decimals() =>
        Assert.Equal("12.4", TapeReading.Of(12.4375 * 25.4, new(LengthUnit.In, 0.1)).Text);

    [Fact]
    public void A_reading_is_never_off_by_more_than_half_a_step() =>
        Gen.Select(Gen.Double[-5000, 5000], Gen.Int[0, 3].Select(i => new[] { Inches, HalfMillimetres, new(LengthUnit.Mm, 1), new Tape(LengthUnit.In, 0.0625) }[i]))
            .ForAll((mm, tape) => Workshop.Within((tape.ResolutionMm / 2) + 1e-9, mm, TapeReading.Of(mm, tape).Mm), iter: 1000);
}
