using System.Globalization;
using Forming.Drawing.Blocks;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Svg;

/// <summary>A page that a browser prints a picture on, as wide as the picture; its cuts fall between blocks.</summary>
/// <param name="Size">Name of the paper in CSS.</param>
/// <param name="Width">Width of the paper [mm].</param>
/// <param name="Height">Its height [mm].</param>
internal readonly record struct PrintedPage(string Size, double Width, double Height)
{
    private const double Margin = 10;

    /// <summary>Room above and below what is drawn on a page; the pictures' own margin [mm of the sheet].</summary>
    private const double Room = 5;

    /// <summary>The paper that goes with a unit of length.</summary>
    /// <param name="units">The unit.</param>
    public static PrintedPage Of(LengthUnit units) =>
        units == LengthUnit.In ? new("letter", 215.9, 279.4) : new("A4", 210, 297);

    /// <summary>The rule that gives a browser this paper and no other margins.</summary>
    public string Rule => string.Create(CultureInfo.InvariantCulture, $"@page{{size:{Size};margin:{Margin}mm}}");

    /// <summary>What may be drawn on a page, from top to bottom [mm of the sheet].</summary>
    public double InnerHeight => Pitch - (2 * Room);

    private double Pitch => (Height - (2 * Margin)) * (Page.Width + (2 * Room)) / (Width - (2 * Margin));

    /// <summary>Pages one below the other, each where the paper begins; the last no longer than what is on it.</summary>
    /// <param name="pages">The pages.</param>
    public Block Joined(IReadOnlyList<Block> pages)
    {
        var sketch = new Sketch();
        double top = 0, bottom = 0;
        foreach (var page in pages)
        {
            sketch.Add(page.Items, new(0, top));
            bottom = top + page.HeightMm;
            // A block higher than a page runs over as many as it takes.
            top += Pitch * Math.Max(1, Math.Ceiling((page.HeightMm + (2 * Room)) / Pitch));
        }

        return new(bottom, sketch.Items);
    }
}
