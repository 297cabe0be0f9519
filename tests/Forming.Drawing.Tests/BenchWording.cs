using System.Globalization;
using Forming.Results;

namespace Forming.Drawing.Tests;

/// <summary>Messages as text: figures in mm and the units that go with it.</summary>
internal sealed class BenchWording : IFormatProvider, ICustomFormatter
{
    public static string Of(FormattableString message) => message.ToString(new BenchWording());

    public object? GetFormat(Type? formatType) =>
        formatType == typeof(ICustomFormatter) ? this : CultureInfo.InvariantCulture.GetFormat(formatType!);

    public string Format(string? format, object? arg, IFormatProvider? formatProvider) => arg switch
    {
        Figure { Quantity: Quantity.Angle } angle => Number(new Angle(angle.Value).Degrees) + "°",
        Figure { Quantity: Quantity.Number } number => Number(number.Value),
        Figure figure => $"{Number(figure.Value)} {UnitOf(figure.Quantity)}",
        FormattableString inner => inner.ToString(this),
        IFormattable other => other.ToString(format, CultureInfo.InvariantCulture),
        _ => arg?.ToString() ?? "",
    };

    private static string Number(double value) => value.ToString(
        Math.Abs(value) switch { >= 1000 => "0", >= 100 => "0.#", >= 10 => "0.##", _ => "0.###" }, CultureInfo.InvariantCulture);

    private static string UnitOf(Quantity quantity) => quantity switch
    {
        Quantity.Length => "mm",
        Quantity.Force => "N",
        Quantity.Stress => "MPa",
        Quantity.MomentPerWidth => "N·mm/mm",
        Quantity.Mass => "kg",
        _ => "J",
    };
}
