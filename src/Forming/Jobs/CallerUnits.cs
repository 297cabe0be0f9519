namespace Forming.Jobs;

/// <summary>The units a caller states a job in, so that a change to it is rounded as the caller would.</summary>
public sealed record CallerUnits
{
    private readonly double _lengthMm;
    private readonly double _forceN;
    private readonly double _stressMpa;

    private CallerUnits(double lengthMm, double forceN, double stressMpa) =>
        (_lengthMm, _forceN, _stressMpa) = (lengthMm, forceN, stressMpa);

    /// <summary>Millimetres, newtons, megapascals.</summary>
    public static CallerUnits Mm { get; } = new(1, 1, 1);

    /// <summary>Inches, pounds-force, psi; exact by definition.</summary>
    public static CallerUnits Inch { get; } = new(
        UnitFactors.InchMm, UnitFactors.PoundForceN, UnitFactors.PoundForceN / (UnitFactors.InchMm * UnitFactors.InchMm));

    /// <summary>Whether lengths are in inches.</summary>
    public bool IsInch => _lengthMm > 1;

    /// <summary>A length [mm].</summary>
    /// <param name="length">The length in the caller's unit.</param>
    public double ToMm(double length) => length * _lengthMm;

    /// <summary>A length in the caller's unit.</summary>
    /// <param name="mm">The length [mm].</param>
    public double FromMm(double mm) => mm / _lengthMm;

    /// <summary>A force [N].</summary>
    /// <param name="force">The force in the caller's unit.</param>
    public double ToN(double force) => force * _forceN;

    /// <summary>A force in the caller's unit.</summary>
    /// <param name="newtons">The force [N].</param>
    public double FromN(double newtons) => newtons / _forceN;

    /// <summary>A stress [MPa].</summary>
    /// <param name="stress">The stress in the caller's unit.</param>
    public double ToMpa(double stress) => stress * _stressMpa;

    /// <summary>A stress in the caller's unit.</summary>
    /// <param name="mpa">The stress [MPa].</param>
    public double FromMpa(double mpa) => mpa / _stressMpa;
}
