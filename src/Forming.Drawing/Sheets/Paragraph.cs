namespace Forming.Drawing.Sheets;

/// <summary>Breaks text into lines.</summary>
internal static class Paragraph
{
    /// <summary>Room kept for a screen whose type runs a little wider than ours.</summary>
    private const double Allowance = 1.04;

    /// <summary>Breaks at spaces, and inside a word only where it is wider than the line.</summary>
    /// <param name="text">The text.</param>
    /// <param name="widthMm">Width of the line [mm].</param>
    /// <param name="sizeMm">Size of the type [mm].</param>
    /// <param name="isBold">Whether it is bold.</param>
    public static IReadOnlyList<string> Lines(string text, double widthMm, double sizeMm, bool isBold = false)
    {
        var face = Typeface.Of(isBold);
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split([' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries))
        {
            var rest = word;
            var longer = line.Length == 0 ? rest : $"{line} {rest}";
            if (Fits(longer))
            {
                line = longer;
                continue;
            }

            if (line.Length > 0)
                lines.Add(line);
            while (!Fits(rest))
            {
                var length = rest.Length - 1;
                while (length > 1 && !Fits(rest[..length]))
                    length--;
                lines.Add(rest[..length]);
                rest = rest[length..];
            }

            line = rest;
        }

        lines.Add(line);
        return lines;

        bool Fits(string part) => part.Length <= 1 || face.Width(part, sizeMm) * Allowance <= widthMm;
    }

    /// <summary>One line, cut with an ellipsis where it does not fit.</summary>
    /// <param name="text">The text.</param>
    /// <param name="widthMm">Width of the line [mm].</param>
    /// <param name="sizeMm">Size of the type [mm].</param>
    /// <param name="isBold">Whether it is bold.</param>
    public static string OneLine(string text, double widthMm, double sizeMm, bool isBold = false)
    {
        var face = Typeface.Of(isBold);
        if (face.Width(text, sizeMm) * Allowance <= widthMm)
            return text;
        var length = text.Length;
        while (length > 0 && face.Width(text.AsSpan(0, length), sizeMm) * Allowance + sizeMm > widthMm)
            length--;
        return text[..length].TrimEnd() + "…";
    }
}
