namespace Forming.Drawing.Sheets;

/// <summary>One line of text.</summary>
/// <param name="At">Its anchor on the baseline [mm].</param>
/// <param name="Text">The text.</param>
/// <param name="SizeMm">Size of the type [mm].</param>
/// <param name="Anchor">Which point of it lies at the anchor.</param>
/// <param name="IsBold">Whether it is bold.</param>
/// <param name="Tone">Its tone.</param>
/// <param name="TurnDegrees">Turned about the anchor, clockwise as seen [°].</param>
/// <param name="Station">Number of the station that it names, or null.</param>
internal sealed record Label(
    Point At,
    string Text,
    double SizeMm,
    Anchor Anchor = Anchor.Start,
    bool IsBold = false,
    Tone Tone = Tone.Ink,
    double TurnDegrees = 0,
    int? Station = null) : SheetItem
{
    /// <summary>Width of the text [mm].</summary>
    public double WidthMm => Typeface.Of(IsBold).Width(Text, SizeMm);

    /// <summary>The level box round it; of turned text, about its anchor [mm].</summary>
    /// <param name="air">Room on every side [mm].</param>
    public (Point Least, Point Most) Box(double air)
    {
        var left = Anchor switch { Anchor.End => -WidthMm, Anchor.Middle => -WidthMm / 2, _ => 0 };
        double right = left + WidthMm, top = -0.72 * SizeMm, bottom = 0.21 * SizeMm;
        Point[] corners = [new(left, top), new(right, top), new(left, bottom), new(right, bottom)];
        var along = Point.Along(Angle.FromDegrees(TurnDegrees).Radians);
        Point[] turned = [.. corners.Select(corner => At + corner.TurnedTo(along))];
        return (
            new(turned.Min(corner => corner.X) - air, turned.Min(corner => corner.Y) - air),
            new(turned.Max(corner => corner.X) + air, turned.Max(corner => corner.Y) + air));
    }

    /// <inheritdoc/>
    public override SheetItem Moved(Point by) => this with { At = At + by };

    /// <inheritdoc/>
    public override SheetItem Scaled(double factor) => this with { At = factor * At, SizeMm = factor * SizeMm };
}

/// <summary>Which point of a line of text its place names.</summary>
internal enum Anchor
{
    /// <summary>Its left end.</summary>
    Start,

    /// <summary>Its middle.</summary>
    Middle,

    /// <summary>Its right end.</summary>
    End,
}
