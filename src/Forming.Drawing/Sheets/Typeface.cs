using System.Buffers.Binary;
using System.Collections.Frozen;

namespace Forming.Drawing.Sheets;

/// <summary>The type on a sheet: embedded in a PDF, measured for every layout.</summary>
/// <remarks>Liberation Sans: SIL Open Font License 1.1, see Fonts/LICENSE.txt; as wide as the sans serif most systems have.</remarks>
internal sealed class Typeface
{
    private readonly FrozenDictionary<char, double> _advances;
    private readonly FrozenSet<char> _glyphs;
    private readonly double _widest;

    private Typeface(string name)
    {
        using var stream = typeof(Typeface).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The font {name} is not in the assembly.");
        Bytes = new byte[stream.Length];
        stream.ReadExactly(Bytes);
        var glyphs = new HashSet<char>();
        _advances = Advances(Bytes, glyphs).ToFrozenDictionary();
        _glyphs = glyphs.ToFrozenSet();
        _widest = 1;
    }

    /// <summary>Regular.</summary>
    public static Typeface Regular { get; } = new("LiberationSans-Regular.ttf");

    /// <summary>Bold.</summary>
    public static Typeface Bold { get; } = new("LiberationSans-Bold.ttf");

    /// <summary>The font file.</summary>
    public byte[] Bytes { get; }

    /// <summary>Regular or bold.</summary>
    /// <param name="isBold">Whether bold.</param>
    public static Typeface Of(bool isBold) => isBold ? Bold : Regular;

    /// <summary>Whether the font has a shape for a character.</summary>
    /// <param name="character">The character.</param>
    public bool Has(char character) => _glyphs.Contains(character);

    /// <summary>Width of a line of text.</summary>
    /// <param name="text">The text; a character that the font lacks counts as wide as it is high.</param>
    /// <param name="size">Size of the type.</param>
    /// <returns>Width in the unit of the size.</returns>
    public double Width(ReadOnlySpan<char> text, double size)
    {
        double sum = 0;
        foreach (var character in text)
            sum += _advances.TryGetValue(character, out var advance) ? advance : _widest;
        return sum * size;
    }

    // OpenType: table directory, then 'head' (units per em), 'hhea' (number of advances), 'hmtx' (advances), 'cmap' format 4.
    private static Dictionary<char, double> Advances(ReadOnlySpan<byte> font, HashSet<char> glyphs)
    {
        var unitsPerEm = (double)U16(font, Table(font, "head"u8) + 18);
        var advanceCount = U16(font, Table(font, "hhea"u8) + 34);
        var metrics = Table(font, "hmtx"u8);
        var advances = new Dictionary<char, double>();
        var map = CharacterMap(font);
        var segments = U16(font, map + 6) / 2;
        int ends = map + 14, starts = ends + (2 * segments) + 2, deltas = starts + (2 * segments), offsets = deltas + (2 * segments);
        for (var i = 0; i < segments; i++)
        {
            int end = U16(font, ends + (2 * i)), delta = U16(font, deltas + (2 * i)), offset = U16(font, offsets + (2 * i));
            for (int code = U16(font, starts + (2 * i)), first = code; code <= end && code < char.MaxValue; code++)
            {
                var glyph = offset == 0 ? code : U16(font, offsets + (2 * i) + offset + (2 * (code - first)));
                glyph = (glyph + delta) & 0xFFFF;
                // Glyph 0 stands for every character that the font lacks.
                if (glyph != 0)
                    glyphs.Add((char)code);
                advances[(char)code] = U16(font, metrics + (4 * Math.Min(glyph, advanceCount - 1))) / unitsPerEm;
            }
        }

        return advances;
    }

    private static int CharacterMap(ReadOnlySpan<byte> font)
    {
        var tables = Table(font, "cmap"u8);
        for (var i = 0; i < U16(font, tables + 2); i++)
        {
            var map = tables + (int)BinaryPrimitives.ReadUInt32BigEndian(font[(tables + 8 + (8 * i))..]);
            if (U16(font, map) == 4)
                return map;
        }

        throw new InvalidOperationException("The font has no character map of format 4.");
    }

    private static int Table(ReadOnlySpan<byte> font, ReadOnlySpan<byte> tag)
    {
        for (var i = 0; i < U16(font, 4); i++)
        {
            var entry = font.Slice(12 + (16 * i), 16);
            if (entry[..4].SequenceEqual(tag))
                return (int)BinaryPrimitives.ReadUInt32BigEndian(entry[8..]);
        }

        throw new InvalidOperationException("The font lacks a table.");
    }

    private static int U16(ReadOnlySpan<byte> font, int at) => BinaryPrimitives.ReadUInt16BigEndian(font[at..]);
}
