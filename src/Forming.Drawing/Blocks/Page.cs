namespace Forming.Drawing.Blocks;

/// <summary>Measures that every part of the sheet shares [mm].</summary>
internal static class Page
{
    /// <summary>Width of everything drawn: on a phone a line of text is then still a twentieth of it high.</summary>
    public const double Width = 150;

    /// <summary>Type of headings.</summary>
    public const double Heading = 3.8;

    /// <summary>Type of values.</summary>
    public const double Text = 3;

    /// <summary>Type of names of drawings, and of long text.</summary>
    public const double Small = 2.5;

    /// <summary>Distance of lines of long text.</summary>
    public const double SmallLine = 3.3;

    /// <summary>Distance of rows.</summary>
    public const double Row = 3.9;
}
