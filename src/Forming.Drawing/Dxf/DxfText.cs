using System.Globalization;
using System.Text;
using Forming.Results;

namespace Forming.Drawing.Dxf;

/// <summary>A drawing interchange file of release 2000 (AC1015), the oldest that states its units: tag and value, line by line.</summary>
/// <param name="firstHandle">The first handle that it gives out.</param>
internal sealed class DxfText(int firstHandle)
{
    /// <summary>Above every handle.</summary>
    public const string Seed = "FFFFFF";

    private readonly StringBuilder _text = new(32 * 1024);
    private int _handle = firstHandle;

    /// <summary>Writes a tag with a word or a line of text.</summary>
    /// <param name="tag">Group code.</param>
    /// <param name="value">Value.</param>
    public DxfText Add(int tag, string value)
    {
        _text.Append(CultureInfo.InvariantCulture, $"{tag,3}\r\n").Append(value).Append("\r\n");
        return this;
    }

    /// <summary>Writes a tag with a whole number.</summary>
    /// <param name="tag">Group code.</param>
    /// <param name="value">Value.</param>
    public DxfText Add(int tag, int value) => Add(tag, value.ToString(CultureInfo.InvariantCulture));

    /// <summary>Writes a tag with a number: nine decimals, as the answer gives them.</summary>
    /// <param name="tag">Group code.</param>
    /// <param name="value">Value.</param>
    public DxfText Add(int tag, double value) =>
        Add(tag, (Math.Round(Finite.Of(value), 9) + 0.0).ToString("0.0########", CultureInfo.InvariantCulture));

    /// <summary>Writes a point at z = 0.</summary>
    /// <param name="tag">Group code of its x.</param>
    /// <param name="point">The point.</param>
    public DxfText Add(int tag, Point point) => Add(tag, point.X).Add(tag + 10, point.Y).Add(tag + 20, 0.0);

    /// <summary>Writes text that a person reads: one line, characters past ASCII by their code point.</summary>
    /// <param name="tag">Group code.</param>
    /// <param name="text">The text.</param>
    public DxfText AddWords(int tag, string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var character in text)
        {
            if (character is >= ' ' and <= '~')
                plain.Append(character);
            else if (character == '°')
                plain.Append("%%d");
            else if (char.IsControl(character))
                plain.Append(' ');
            else
                plain.Append(CultureInfo.InvariantCulture, $"\\U+{(int)character:X4}");
        }

        return Add(tag, plain.ToString());
    }

    /// <summary>Writes the next free handle.</summary>
    public DxfText AddHandle() => Add(5, (_handle++).ToString("X", CultureInfo.InvariantCulture));

    /// <inheritdoc/>
    public override string ToString() => _text.ToString();
}
