using System.Globalization;
using FormApi.Http.Units;

namespace FormApi.Http.Rules;

/// <summary>The values a field may take, declared once: the rules check it and the contract shows it.</summary>
/// <param name="Min">Least value, in mm, °, N, MPa, kg/m³ or as a plain number.</param>
/// <param name="Max">Greatest value, in the same unit.</param>
/// <param name="Measure">What it measures.</param>
/// <param name="AboveMin">Whether the least value itself is refused.</param>
/// <param name="TooSmall">What a smaller value most likely is, in a sentence; null where nothing is likelier than another.</param>
/// <param name="TooLarge">What a larger value most likely is, in a sentence; null where nothing is likelier than another.</param>
/// <param name="Where">Where it holds, in words that end the sentence; null where it holds unless another is said to.</param>
internal sealed record AllowedRange(
    double Min, double Max, Measure Measure, bool AboveMin = false, string? TooSmall = null, string? TooLarge = null, string? Where = null)
{
    /// <summary>The least value in a caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public double MinIn(UnitSystem units) => In(units, Min);

    /// <summary>The greatest value in a caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public double MaxIn(UnitSystem units) => In(units, Max);

    /// <summary>The range in words, in a caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public string Text(UnitSystem units) => Text(units, MinIn(units), MaxIn(units));

    /// <summary>The same in short numbers: a little within the range, never beyond it.</summary>
    /// <param name="units">The caller's units.</param>
    public string TextWithin(UnitSystem units) => Text(units, Shortened(MinIn(units), Math.Ceiling), Shortened(MaxIn(units), Math.Floor));

    private string Text(UnitSystem units, double min, double max)
    {
        var unit = UnitName(units);
        var most = Digits(max) + (unit.Length > 0 && unit != "°" ? " " : "") + unit;
        return AboveMin ? $"above {Digits(min)}, at most {most}" : $"{Digits(min)} to {most}";
    }

    // To three digits.
    private static double Shortened(double value, Func<double, double> towards)
    {
        if (value == 0)
            return 0;
        var step = 1.0;
        while (Math.Abs(value) >= 1000 * step)
            step *= 10;
        while (Math.Abs(value) < 100 * step)
            step /= 10;
        var rounded = Math.Round(value / step);
        // What has three digits already stays as it is.
        return (Math.Abs(rounded - (value / step)) < 1e-9 ? rounded : towards(value / step)) * step;
    }

    private string UnitName(UnitSystem units) => Measure switch
    {
        Measure.Length => units.LengthName,
        Measure.Angle => "°",
        Measure.Force => units.ForceName,
        Measure.Stress => units.StressName,
        Measure.Density => units.DensityName,
        Measure.Percent => "%",
        _ => "",
    };

    private double In(UnitSystem units, double value) => Measure switch
    {
        Measure.Length => units.Length(value),
        Measure.Force => units.Force(value),
        Measure.Stress => units.Stress(value),
        Measure.Density => units.Density(value),
        _ => value,
    };

    private static string Digits(double value) => value.ToString("0.#########", CultureInfo.InvariantCulture);
}
