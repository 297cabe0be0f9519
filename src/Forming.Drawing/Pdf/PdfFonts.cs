using Forming.Drawing.Sheets;
using PdfSharp.Fonts;

namespace Forming.Drawing.Pdf;

/// <summary>Gives PDFsharp the fonts of this assembly: a server has none of its own.</summary>
internal sealed class PdfFonts : IFontResolver
{
    /// <summary>Name of the only family.</summary>
    public const string Family = "Liberation Sans";

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) =>
        familyName == Family ? new(bold ? "bold" : "regular") : null;

    /// <inheritdoc/>
    public byte[]? GetFont(string faceName) => Typeface.Of(faceName == "bold").Bytes;
}
