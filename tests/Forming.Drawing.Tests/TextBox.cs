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

    /// <summary>Asserts that no text lies on another and that none leaves the sheet.</summary>
    /// <param name="root">The sheet.</param>
    /// <param name="texts">Its lines of text.</param>
    public static void AssertApart(XElement root, IEnumerable<XElement> texts)
    {
        var sheet = root.Attribute("viewBox")!.Value.Split(' ').Select(part => double.Parse(part, CultureInfo.InvariantCulture)).ToArray();
        var boxes = texts.Select(Of).ToArray();
        Assert.All(boxes, box => Assert.True(box.Left >= sheet[0] && box.Right <= sheet[0] + sheet[2] && box.Bottom <= sheet[1] + sheet[3], box.ToString()));
        for (var i = 0; i < boxes.Length; i++)
        {
            // Words only where they are needed: there are many pairs.
            if (Array.FindIndex(boxes, i + 1, boxes[i].Overlaps) is >= 0 and var j)
                Assert.Fail($"{boxes[i]} on {boxes[j]}");
        }
    }

    private static double Number(XElement element, string name) =>
        double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
