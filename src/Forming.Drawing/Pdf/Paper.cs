namespace Forming.Drawing.Pdf;

/// <summary>Measures of a page [mm].</summary>
/// <param name="Width">Width of the paper [mm].</param>
/// <param name="Height">Height of the paper [mm].</param>
internal readonly record struct Paper(double Width, double Height)
{
    /// <summary>Paper that no printer prints to the edge of [mm].</summary>
    public const double Margin = 10;

    /// <summary>Room for the line at the foot [mm].</summary>
    public const double Foot = 6;

    /// <summary>Width that is drawn on [mm].</summary>
    public double InnerWidth => Width - (2 * Margin);

    /// <summary>Height that is drawn on, the foot left out [mm].</summary>
    public double InnerHeight => Height - (2 * Margin) - Foot;

    /// <summary>The paper on its side.</summary>
    public Paper Turned => new(Height, Width);

    /// <summary>The measures of a paper.</summary>
    /// <param name="size">The paper.</param>
    public static Paper Of(PaperSize size) => size == PaperSize.Letter ? new(215.9, 279.4) : new(210, 297);
}
