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
    public string Text(UnitSystem units)
    {
        var unit = UnitName(units);
        var max = Digits(MaxIn(units)) + (unit.Length > 0 && unit != "°" ? " " : "") + unit;
        return AboveMin ? $"above {Digits(MinIn(units))}, at most {max}" : $"{Digits(MinIn(units))} to {max}";
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
