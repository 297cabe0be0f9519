namespace Forming.Contact;

/// <summary>Where a stretch of the contact curve begins or ends.</summary>
/// <param name="Turn">Tangent angle under load [rad].</param>
/// <param name="MidMm">Place along the panel's mid surface from the start of the curve [mm].</param>
/// <param name="Position">Place in section [mm].</param>
public readonly record struct ContactFrame(double Turn, double MidMm, Point Position)
{
    internal ContactFrame Then(PieceGrowth growth)
    {
        var heading = Point.Along(Turn);
        return new(
            Turn + growth.Turn,
            MidMm + growth.Mid,
            Position + (growth.Position.X * heading) + (growth.Position.Y * heading.Left()));
    }

    internal ContactFrame ThenFlat(double length) =>
        this with { MidMm = MidMm + length, Position = Position + (length * Point.Along(Turn)) };
}
