using Forming.Drawing.Csv;
using Forming.Drawing.Dxf;
using Forming.Results;

namespace Forming.Drawing.Tests;

/// <summary>Nobody sets a stop to NaN°: what is no number is on no sheet and in no file.</summary>
public sealed class FiniteFiguresTests
{
    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void A_figure_that_is_no_number_leaves_no_writer(double figure)
    {
        var readout = new Readout(LengthUnit.Mm, new(LengthUnit.Mm, 0.5));
        Assert.All<Action>(
            [
                () => CsvText.Number(figure),
                () => new DxfText(1).Add(40, figure),
                () => readout.Length(figure),
                () => readout.LengthWithUnit(figure),
                () => readout.Mass(figure),
                () => Readout.Degrees(new Angle(figure)),
            ],
            write => Assert.Equal("figure.not-finite", Assert.Throws<NoSolutionException>(write).Code));
    }

    [Theory]
    [InlineData(0.5, "0.5")]
    [InlineData(-0.0, "0")]
    public void Every_other_is_written_as_ever(double figure, string text) => Assert.Equal(text, CsvText.Number(figure));
}
