using System.Buffers.Text;

namespace FormApi.Http.Json;

/// <summary>Writes the numbers of an answer, which have at most nine decimals, faster than shortest round-trip formatting can.</summary>
internal static class NumberText
{
    /// <summary>Most bytes that one number takes.</summary>
    public const int Longest = 32;

    private const double Scale = 1e9;

    // Below this a number of nine decimals has at most 15 digits: reading them back gives the same double, and no shorter text does.
    private const double ExactBelow = 1e6;

    /// <summary>Whether a number has at most nine decimals and no more digits than a double holds.</summary>
    /// <param name="number">The number.</param>
    public static bool IsExact(double number) =>
        Math.Abs(number) < ExactBelow && Math.Round(number * Scale) / Scale == number
        && (number == 0 || Math.Abs(number) >= 1e-6);

    /// <summary>Writes a number.</summary>
    /// <param name="number">The number, as <see cref="WireNumber.Of"/> made it.</param>
    /// <param name="text">Where to; at least <see cref="Longest"/> bytes.</param>
    /// <returns>Bytes written.</returns>
    public static int Write(double number, Span<byte> text)
    {
        if (!(Math.Abs(number) < ExactBelow))
        {
            Utf8Formatter.TryFormat(number, text, out var plain);
            return plain;
        }

        var scaled = (long)Math.Round(number * Scale);
        var length = 0;
        if (scaled < 0)
        {
            text[length++] = (byte)'-';
            scaled = -scaled;
        }

        var (whole, fraction) = Math.DivRem(scaled, (long)Scale);
        Utf8Formatter.TryFormat(whole, text[length..], out var written);
        length += written;
        if (fraction == 0)
            return length;
        text[length++] = (byte)'.';
        var digits = text.Slice(length, 9);
        var kept = 0;
        for (var i = 8; i >= 0; i--)
        {
            (fraction, var digit) = Math.DivRem(fraction, 10);
            digits[i] = (byte)('0' + digit);
            if (digit != 0 && kept == 0)
                kept = i + 1;
        }

        return length + kept;
    }
}
