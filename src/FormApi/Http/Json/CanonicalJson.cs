using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace FormApi.Http.Json;

/// <summary>JSON in the one spelling of RFC 8785: sorted names, no space, numbers as ECMAScript writes them.</summary>
internal static class CanonicalJson
{
    // What few objects exceed.
    private const int UsualFields = 32;

    /// <summary>Writes a document in its canonical spelling.</summary>
    /// <param name="utf8">The document.</param>
    /// <param name="output">Destination.</param>
    public static void Write(ReadOnlySpan<byte> utf8, IBufferWriter<byte> output)
    {
        var reader = new Utf8JsonReader(utf8);
        reader.Read();
        Write(ref reader, utf8, output);
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
        return e < 0
            ? shortest
            : Place(shortest[..e], int.Parse(shortest.AsSpan(e + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture));
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

    // The reader is on the first token of a value and is left on its last.
    private static void Write(ref Utf8JsonReader reader, ReadOnlySpan<byte> document, IBufferWriter<byte> output)
    {
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                WriteObject(ref reader, document, output);
                break;
            case JsonTokenType.StartArray:
                WriteArray(ref reader, document, output);
                break;
            case JsonTokenType.String:
                WriteText(ref reader, output);
                break;
            case JsonTokenType.Number:
                WriteNumber(reader.GetDouble(), output);
                break;
            default:
                output.Write(reader.ValueSpan);
                break;
        }
    }

    private static void WriteObject(ref Utf8JsonReader reader, ReadOnlySpan<byte> document, IBufferWriter<byte> output)
    {
        var fields = ArrayPool<Field>.Shared.Rent(UsualFields);
        var count = 0;
        while (reader.Read() && reader.TokenType != JsonTokenType.EndObject)
        {
            var name = new Piece((int)reader.TokenStartIndex, reader.ValueSpan.Length + 2);
            var escaped = reader.ValueIsEscaped;
            var sortsAsBytes = !escaped && SortsAsBytes(reader.ValueSpan);
            reader.Read();
            var valueAt = (int)reader.TokenStartIndex;
            reader.Skip();
            if (count == fields.Length)
                fields = Grow(fields);
            fields[count++] = new(name, escaped, sortsAsBytes, new(valueAt, (int)reader.BytesConsumed - valueAt));
        }

        Sort(fields.AsSpan(0, count), document);
        Put(output, (byte)'{');
        for (var i = 0; i < count; i++)
        {
            if (i > 0)
                Put(output, (byte)',');
            if (fields[i].IsEscaped)
                WriteText(fields[i].NameIn(document), output);
            else
                output.Write(fields[i].Name.In(document));
            Put(output, (byte)':');
            WriteValue(fields[i].Value.In(document), output);
        }

        Put(output, (byte)'}');
        ArrayPool<Field>.Shared.Return(fields);
    }

    private static Field[] Grow(Field[] fields)
    {
        var larger = ArrayPool<Field>.Shared.Rent(fields.Length * 2);
        fields.CopyTo(larger, 0);
        ArrayPool<Field>.Shared.Return(fields);
        return larger;
    }

    // Most values of a request are plain; only the others need a reader of their own.
    private static void WriteValue(ReadOnlySpan<byte> value, IBufferWriter<byte> output)
    {
        if (value[0] is (byte)'t' or (byte)'f' or (byte)'n')
            output.Write(value);
        else
            Write(value, output);
    }

    // By UTF-16 units, as the RFC asks; few fields, so by insertion.
    private static void Sort(Span<Field> fields, ReadOnlySpan<byte> document)
    {
        for (var i = 1; i < fields.Length; i++)
        {
            var field = fields[i];
            var place = i;
            while (place > 0 && Compare(fields[place - 1], field, document) > 0)
            {
                fields[place] = fields[place - 1];
                place--;
            }

            fields[place] = field;
        }
    }

    private static int Compare(in Field a, in Field b, ReadOnlySpan<byte> document) =>
        a.SortsAsBytes && b.SortsAsBytes
            ? a.Name.In(document).SequenceCompareTo(b.Name.In(document))
            : string.CompareOrdinal(a.NameIn(document), b.NameIn(document));

    // The quotes go along: a quote sorts before every character that a name may hold unescaped, but for the two below it.
    private static bool SortsAsBytes(ReadOnlySpan<byte> name) => Ascii.IsValid(name) && !name.ContainsAny((byte)' ', (byte)'!');

    private static void WriteArray(ref Utf8JsonReader reader, ReadOnlySpan<byte> document, IBufferWriter<byte> output)
    {
        Put(output, (byte)'[');
        for (var first = true; reader.Read() && reader.TokenType != JsonTokenType.EndArray; first = false)
        {
            if (!first)
                Put(output, (byte)',');
            Write(ref reader, document, output);
        }

        Put(output, (byte)']');
    }

    private static void WriteNumber(double number, IBufferWriter<byte> output)
    {
        // Most numbers of a request are short decimals, which both spell alike.
        var span = output.GetSpan(NumberText.Longest);
        if (NumberText.IsExact(number))
            output.Advance(NumberText.Write(number, span));
        else
            output.Write(Encoding.ASCII.GetBytes(Number(number)));
    }

    private static void WriteText(ref Utf8JsonReader reader, IBufferWriter<byte> output)
    {
        if (reader.ValueIsEscaped)
        {
            WriteText(reader.GetString()!, output);
            return;
        }

        // Without escapes the text holds nothing that needs one.
        Put(output, (byte)'"');
        output.Write(reader.ValueSpan);
        Put(output, (byte)'"');
    }

    // The RFC escapes quote, backslash and control characters only.
    private static void WriteText(string text, IBufferWriter<byte> output)
    {
        Put(output, (byte)'"');
        foreach (var rune in text.EnumerateRunes())
            WriteRune(rune, output);
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

    /// <summary>A piece of the document.</summary>
    private readonly record struct Piece(int At, int Length)
    {
        public ReadOnlySpan<byte> In(ReadOnlySpan<byte> document) => document.Slice(At, Length);
    }

    /// <summary>A field of an object, by its place in the document; the name with its quotes.</summary>
    private readonly record struct Field(Piece Name, bool IsEscaped, bool SortsAsBytes, Piece Value)
    {
        public string NameIn(ReadOnlySpan<byte> document)
        {
            var reader = new Utf8JsonReader(Name.In(document));
            reader.Read();
            return reader.GetString()!;
        }
    }
}
