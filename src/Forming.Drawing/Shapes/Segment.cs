namespace Forming.Drawing.Shapes;

/// <summary>A straight line across a blank.</summary>
/// <param name="Start">End at the edge of lesser y [mm].</param>
/// <param name="End">End at the edge of greater y [mm].</param>
internal readonly record struct Segment(Point Start, Point End)
{
    /// <summary>The line a little further along the blank.</summary>
    /// <param name="by">How far, square to the line [mm].</param>
    public Segment Moved(double by)
    {
        var across = End - Start;
        var shift = by / across.Length * new Point(across.Y, -across.X);
        return new(Start + shift, End + shift);
    }

    /// <summary>How far another line, nearly parallel, lies along the blank from this one's start [mm].</summary>
    /// <param name="other">The other line.</param>
    public double DistanceTo(Segment other)
    {
        var across = End - Start;
        return (other.Start - Start).Dot(new(across.Y, -across.X)) / across.Length;
    }

    /// <summary>Where the line, drawn on, has a given y.</summary>
    /// <param name="y">The y [mm].</param>
    /// <returns>Its x there [mm].</returns>
    public double CrossingAt(double y) => Start.X + ((End.X - Start.X) * (y - Start.Y) / (End.Y - Start.Y));

    /// <summary>The line on a blank turned over about the middle of its width.</summary>
    /// <param name="widthMm">Width of the blank [mm].</param>
    public Segment TurnedOver(double widthMm) => new(new(End.X, widthMm - End.Y), new(Start.X, widthMm - Start.Y));
}
