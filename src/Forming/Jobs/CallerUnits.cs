namespace Forming.Jobs;

/// <summary>The units a caller states a job in, so that a change to it is rounded as the caller would.</summary>
public sealed record CallerUnits
{
    private readonly double lengthMm;
    private readonly double forceN;
    private readonly double stressMpa;

    private CallerUnits(double lengthMm, double forceN, double stressMpa) => (this.lengthMm, this.forceN, this.stressMpa) = (lengthMm, forceN, stressMpa);

    /// <summary>Millimetres, newtons, megapascals.</summary>
    public static CallerUnits Mm { get; } = new(1, 1, 1);

    /// <summary>Inches, pounds-force, psi; exact by definition.</summary>
    public static CallerUnits Inch { get; } = new(25.4, 4.4482216152605, 4.4482216152605 / (25.4 * 25.4));

    /// <summary>Whether lengths are in inches.</summary>
    public bool IsInch => lengthMm > 1;

    /// <summary>A length [mm].</summary>
    /// <param name="length">The length in the caller's unit.</param>
    public double ToMm(double length) => length * lengthMm;

    /// <summary>A length in the caller's unit.</summary>
    /// <param name="mm">The length [mm].</param>
    public double FromMm(double mm) => mm / lengthMm;

    /// <summary>A force [N].</summary>
    /// <param name="force">The force in the caller's unit.</param>
    public double ToN(double force) => force * forceN;

    /// <summary>A force in the caller's unit.</summary>
    /// <param name="newtons">The force [N].</param>
    public double FromN(double newtons) => newtons / forceN;

    /// <summary>A stress [MPa].</summary>
    /// <param name="stress">The stress in the caller's unit.</param>
    public double ToMpa(double stress) => stress * stressMpa;

    /// <summary>A stress in the caller's unit.</summary>
    /// <param name="mpa">The stress [MPa].</param>
    public double FromMpa(double mpa) => mpa / stressMpa;
}
