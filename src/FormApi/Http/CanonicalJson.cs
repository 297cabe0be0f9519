using System.Buffers;
using System.Buffers.Text;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace FormApi.Http;

/// <summary>JSON in the one spelling of RFC 8785: sorted names, no space, numbers as ECMAScript writes them.</summary>
internal static class CanonicalJson
{
    /// <summary>Writes a document in its canonical spelling.</summary>
    /// <param name="utf8">The document.</param>
    /// <param name="output">Where to.</param>
    public static void Write(ReadOnlyMemory<byte> utf8, IBufferWriter<byte> output)
    {
        using var document = JsonDocument.Parse(utf8);
        Write(document.RootElement, output);
    }

    /// <summary>A number as ECMAScript writes it.</summary>
    /// <param name="number">The number, finite.</param>
    public static string Number(double number)
    {
        if (number == 0)
            return "0";
        // The shortest digits that read back as the same number; ECMAScript only places point and exponent differently.
        var shortest = number.ToString("R", CultureInfo.InvariantCulture);
        var e = shortest.IndexOf('E', StringComparison.Ordinal);
        return e < 0 ? shortest : Place(shortest[..e], int.Parse(shortest.AsSpan(e + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture));
    }

    private static string Place(string mantissa, int exponent)
    {
        var sign = mantissa[0] == '-' ? "-" : "";
        var digits = mantissa[sign.Length..].Replace(".", "", StringComparison.Ordinal);
        return sign + exponent switch
        {
            >= 21 or < -6 => digits[..1] + (digits.Length > 1 ? "." + digits[1..] : "") + (exponent < 0 ? "e-" : "e+")
                + Math.Abs(exponent).ToString(CultureInfo.InvariantCulture),
            < 0 => "0." + new string('0', -exponent - 1) + digits,
            _ when digits.Length <= exponent + 1 => digits.PadRight(exponent + 1, '0'),
            _ => digits[..(exponent + 1)] + "." + digits[(exponent + 1)..],
        };
    }

    private static void Write(JsonElement element, IBufferWriter<byte> output)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                WriteObject(element, output);
                break;
            case JsonValueKind.Array:
                WriteArray(element, output);
                break;
            case JsonValueKind.String:
                WriteText(element.GetString()!, output);
                break;
            case JsonValueKind.Number:
                WriteNumber(element.GetDouble(), output);
                break;
            case JsonValueKind.True:
                output.Write("true"u8);
                break;
            case JsonValueKind.False:
                output.Write("false"u8);
                break;
            default:
                output.Write("null"u8);
                break;
        }
    }

    private static void WriteObject(JsonElement element, IBufferWriter<byte> output)
    {
        var properties = new List<(string Name, JsonElement Value)>(16);
        foreach (var property in element.EnumerateObject())
            properties.Add((property.Name, property.Value));
        // Ordinal order compares UTF-16 units, as the RFC asks.
        properties.Sort(static (a, b) => string.CompareOrdinal(a.Name, b.Name));
        var separator = (byte)'{';
        foreach (var (name, value) in properties)
        {
            Put(output, separator);
            WriteText(name, output);
            Put(output, (byte)':');
            Write(value, output);
            separator = (byte)',';
        }

        output.Write(properties.Count == 0 ? "{}"u8 : "}"u8);
    }

    private static void WriteArray(JsonElement element, IBufferWriter<byte> output)
    {
        var separator = (byte)'[';
        foreach (var item in element.EnumerateArray())
        {
            Put(output, separator);
            Write(item, output);
            separator = (byte)',';
        }

        output.Write(separator == '[' ? "[]"u8 : "]"u8);
    }

    private static void WriteNumber(double number, IBufferWriter<byte> output)
    {
        // Most numbers of a request are short decimals, which both spell alike.
        var magnitude = Math.Abs(number);
        var span = output.GetSpan(32);
        if (magnitude is >= 1e-4 and < 1e15 && Utf8Formatter.TryFormat(number, span, out var written))
            output.Advance(written);
        else
            output.Write(Encoding.ASCII.GetBytes(Number(number)));
    }

    // The RFC escapes quote, backslash and control characters only.
    private static void WriteText(string text, IBufferWriter<byte> output)
    {
        Put(output, (byte)'"');
        var plain = true;
        foreach (var c in text)
            plain &= c >= ' ' && c != '"' && c != '\\';
        if (plain)
        {
            Encoding.UTF8.GetBytes(text, output);
        }
        else
        {
            foreach (var rune in text.EnumerateRunes())
                WriteRune(rune, output);
        }

        Put(output, (byte)'"');
    }

    private static void WriteRune(Rune rune, IBufferWriter<byte> output)
    {
        ReadOnlySpan<byte> escape = rune.Value switch
        {
            '"' => "\\\""u8,
            '\\' => "\\\\"u8,
            '\b' => "\\b"u8,
            '\t' => "\\t"u8,
            '\n' => "\\n"u8,
            '\f' => "\\f"u8,
            '\r' => "\\r"u8,
            _ => default,
        };
        if (!escape.IsEmpty)
            output.Write(escape);
        else if (rune.Value < ' ')
            output.Write(Encoding.ASCII.GetBytes($"\\u{rune.Value:x4}"));
        else
            output.Advance(rune.EncodeToUtf8(output.GetSpan(4)));
    }

    private static void Put(IBufferWriter<byte> output, byte value)
    {
        output.GetSpan(1)[0] = value;
        output.Advance(1);
    }
}
