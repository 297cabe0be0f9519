using System.Globalization;
using Forming.Drawing.Sheets;

namespace Forming.Drawing;

/// <summary>What the caller says of a job for its sheets; nothing here is made up, and nothing is calculated with.</summary>
/// <param name="Title">What the sheet is of, or null.</param>
/// <param name="Part">Name or number of the part, or null.</param>
/// <param name="DrawingNumber">Number of the drawing, or null.</param>
/// <param name="Customer">The customer, or null.</param>
/// <param name="Order">The order, or null.</param>
/// <param name="Revision">The revision, or null.</param>
/// <param name="Date">The date as the caller writes it, or null.</param>
public sealed record TitleBlock(
    string? Title = null,
    string? Part = null,
    string? DrawingNumber = null,
    string? Customer = null,
    string? Order = null,
    string? Revision = null,
    string? Date = null)
{
    /// <summary>What was given beside the title, in the order in which it is drawn.</summary>
    internal IEnumerable<(string Name, string Value)> Fields()
    {
        (string Name, string? Value)[] all =
        [
            ("part", Part),
            ("drawing no.", DrawingNumber),
            ("revision", Revision),
            ("customer", Customer),
            ("order", Order),
            ("date", Date),
        ];
        return all.Where(field => field.Value is not null).Select(field => (field.Name, field.Value!));
    }

    /// <summary>What was given beside the title, in a line after other words; nothing where nothing was.</summary>
    /// <param name="given">What was given, or null.</param>
    internal static string After(TitleBlock? given) =>
        string.Concat((given?.Fields() ?? []).Select(field => $", {field.Name} {field.Value}"));

    /// <summary>The first character that sheets cannot show as it was meant, or null.</summary>
    /// <param name="text">The text.</param>
    /// <remarks>
    /// The typefaces of the sheets lack it, it has no shape of its own, or it runs from right to left, which a PDF is not laid out for.
    /// </remarks>
    public static string? NotShown(string text)
    {
        foreach (var rune in text.EnumerateRunes())
        {
            if (!rune.IsBmp || !IsShown((char)rune.Value))
                return rune.ToString();
        }

        return null;
    }

    private static bool IsShown(char character) =>
        HasShape(character) && Typeface.Regular.Has(character) && Typeface.Bold.Has(character);

    private static bool HasShape(char character) =>
        character is ' ' or > ' ' and not (>= '\u0590' and <= '\u08FF') and not (>= '\uFB1D' and <= '\uFEFF')
        && char.GetUnicodeCategory(character) is not (UnicodeCategory.Control
            or UnicodeCategory.Format
            or UnicodeCategory.LineSeparator
            or UnicodeCategory.ParagraphSeparator
            or UnicodeCategory.NonSpacingMark
            or UnicodeCategory.EnclosingMark
            or UnicodeCategory.PrivateUse
            or UnicodeCategory.OtherNotAssigned);
}
