using System.Globalization;
using System.Xml.Linq;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Tests;

/// <summary>The box that a line of text fills on a sheet, with room for a screen whose type runs wider than ours.</summary>
internal sealed record TextBox(string Text, double Left, double Top, double Right, double Bottom)
{
    private const double Wider = 1.04;

    public static TextBox Of(XElement text)
    {
        var size = Number(text, "font-size");
        var width = Wider * Typeface.Of((string?)text.Attribute("font-weight") == "bold").Width(text.Value, size);
        double x = Number(text, "x"), y = Number(text, "y");
        var left = (string?)text.Attribute("text-anchor") switch { "end" => x - width, "middle" => x - (width / 2), _ => x };
        return new(text.Value, left, y - (0.72 * size), left + width, y + (0.21 * size));
    }

    public bool Overlaps(TextBox other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    private static double Number(XElement element, string name) =>
        double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
