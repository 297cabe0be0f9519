namespace Forming.Contact;

/// <summary>A running measure along a curve: so much per turned angle and so much per mid-surface length.</summary>
/// <param name="PerTurn">Growth per turned angle under load [per rad].</param>
/// <param name="PerMid">Growth per mid-surface length [per mm].</param>
public readonly record struct Measure(double PerTurn, double PerMid)
{
    /// <summary>The turned angle under load [rad].</summary>
    public static Measure TurnedAngle { get; } = new(1, 0);

    /// <summary>The mid-surface length of the panel [mm].</summary>
    public static Measure MidLength { get; } = new(0, 1);

    /// <summary>The length of a parallel curve [mm].</summary>
    /// <param name="inwardMm">Its distance from the panel's mid surface towards the inside [mm].</param>
    public static Measure ParallelLength(double inwardMm) => new(-inwardMm, 1);

    /// <summary>The measure of a stretch.</summary>
    /// <param name="turn">Its turned angle under load [rad].</param>
    /// <param name="mid">Its mid-surface length [mm].</param>
    public double Of(double turn, double mid) => (PerTurn * turn) + (PerMid * mid);
}
