using System.Globalization;
using System.Text;
using FormApi.Http.Json;
using FormApi.Http.Units;
using Forming.Results;

namespace FormApi.Tests;

/// <summary>Units at the edge, and figures inside messages.</summary>
public sealed class UnitSystemTests
{
    [Fact]
    public void Factors_are_the_exact_ones()
    {
        var inch = UnitSystem.Inch;
        Assert.Equal(25.4, inch.ToMm(1));
        Assert.Equal(1, inch.Length(25.4));
        Assert.Equal(1, inch.Area(645.16));
        Assert.Equal(1, inch.Force(4.4482216152605));
        Assert.Equal(1, inch.Mass(0.45359237));
        // 1 psi = 6894.757293168 Pa
        Assert.Equal(0.006894757293168361, inch.ToMpa(1), 15);
        // 1 lb/in³ = 27679.904710203 kg/m³
        Assert.Equal(27679.9047102031, inch.ToKgPerCubicMetre(1), 9);
        // 1 ft·lbf = 1.3558179483314 J
        Assert.Equal(1, inch.Energy(1.3558179483314004));
        Assert.Equal(1, inch.Moment(4.4482216152605));
    }

    [Fact]
    public void Answers_show_nine_decimals_and_no_negative_zero()
    {
        Assert.Equal(0.123456789, UnitSystem.Mm.Length(0.1234567891234));
        Assert.False(double.IsNegative(UnitSystem.Mm.Length(-1e-12)));
        Assert.Throws<NoSolutionException>(() => UnitSystem.Mm.Length(double.NaN));
    }

    [Theory]
    [InlineData(12.3456, "12.35 mm", "0.486 in")]
    [InlineData(1250.4, "1250 mm", "49.228 in")]
    [InlineData(0, "0 mm", "0 in")]
    public void Lengths_in_messages_are_in_the_callers_unit(double mm, string metric, string inches)
    {
        FormattableString message = $"{Figure.Length(mm)}";
        Assert.Equal(metric, UnitSystem.Mm.Wording.Of(message));
        Assert.Equal(inches, UnitSystem.Inch.Wording.Of(message));
    }

    [Theory]
    [InlineData(50, "50 mm", "1 15/16 in", "1 31/32 in")]
    [InlineData(236.68, "236.7 mm", "9 5/16 in", "9 5/16 in")]
    public void A_length_to_be_laid_out_is_a_fraction_of_an_inch(double mm, string metric, string sixteenths, string finer)
    {
        Assert.Equal(metric, UnitSystem.Mm.Wording.Of($"{Figure.Length(mm):/16}"));
        Assert.Equal(sixteenths, UnitSystem.Inch.Wording.Of($"{Figure.Length(mm):/16}"));
        Assert.Equal($"at {finer}", UnitSystem.Inch.Wording.Of($"at {(FormattableString)$"{Figure.Length(mm):/64}"}"));
    }

    [Fact]
    public void Every_kind_of_figure_has_its_unit()
    {
        FormattableString message =
            $"{Figure.Angle(Math.PI / 2)}, {Figure.Force(100)}, {Figure.Stress(200)}, {Figure.Moment(50)}, {Figure.Mass(2)}, {Figure.Energy(3)}, {Figure.Number(4.5)}, {7}, {"sheet"}";
        Assert.Equal("90°, 100 N, 200 MPa, 50 N·mm/mm, 2 kg, 3 J, 4.5, 7, sheet", UnitSystem.Mm.Wording.Of(message));
        Assert.Equal("90°, 22.5 lbf, 29000 psi, 11.2 lbf·in/in, 4.41 lb, 2.21 ft·lbf, 4.5, 7, sheet", UnitSystem.Inch.Wording.Of(message));
    }

    [Fact]
    public void Numbers_are_written_as_the_shortest_text_that_reads_back()
    {
        var random = new Random(8785);
        Span<byte> text = stackalloc byte[NumberText.Longest];
        for (var i = 0; i < 100_000; i++)
        {
            var number = WireNumber.Of((random.NextDouble() - 0.5) * Math.Pow(10, random.Next(-9, 12)));
            var written = Encoding.ASCII.GetString(text[..NumberText.Write(number, text)]);
            Assert.Equal(number, double.Parse(written, CultureInfo.InvariantCulture));
            if (Math.Abs(number) >= 1e-4)
                Assert.Equal(number.ToString("R", CultureInfo.InvariantCulture), written);
        }
    }
}
