namespace Forming.Drawing.Tests;

/// <summary>Lengths and masses as a shop says them.</summary>
public sealed class ReadoutTests
{
    private const double InchMm = 25.4;
    private static readonly Readout Inches = new(LengthUnit.In, new(LengthUnit.In, 1 / 64.0));
    private static readonly Readout Millimetres = new(LengthUnit.Mm, new(LengthUnit.Mm, 0.5));

    [Theory]
    [InlineData(0.0625, "1/16 in")]
    [InlineData(0.1875, "3/16 in")]
    [InlineData(2.5, "2 1/2 in")]
    [InlineData(0.0598, "0.0598 in")]
    [InlineData(0.135, "0.135 in")]
    public void A_sixty_fourth_of_an_inch_is_a_fraction_and_a_gauge_keeps_its_digits(double inches, string text) =>
        Assert.Equal(text, Inches.LengthWithUnit(inches * InchMm));

    [Theory]
    [InlineData(12.437, "12 7/16")]
    [InlineData(23.622, "23 5/8")]
    public void An_inch_sheet_lays_out_in_fractions(double inches, string text)
    {
        Assert.Equal(text, Inches.LaidOut(inches * InchMm));
        Assert.Equal($"{text} × {text} in", Inches.Size(inches * InchMm, inches * InchMm));
    }

    [Fact]
    public void A_sheet_in_millimetres_keeps_its_hundredths()
    {
        Assert.Equal("317.48", Millimetres.LaidOut(317.4800001));
        Assert.Equal("317.5", Millimetres.OnTape(317.48));
        Assert.Equal("317.48 × 600 mm", Millimetres.Size(317.48, 600));
    }

    [Theory]
    [InlineData(0.0042, "0.0042 kg")]
    [InlineData(0.00038, "0.00038 kg")]
    [InlineData(0.1, "0.1 kg")]
    [InlineData(3.4223, "3.42 kg")]
    public void No_blank_weighs_nothing(double kg, string text) => Assert.Equal(text, Millimetres.Mass(kg));
}
