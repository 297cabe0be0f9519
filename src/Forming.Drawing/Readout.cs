using System.Globalization;
using Forming.Results;

namespace Forming.Drawing;

/// <summary>How values are written on a drawing, in one unit of length.</summary>
/// <param name="units">The unit.</param>
internal sealed class Readout(LengthUnit units)
{
    /// <summary>The unit of length.</summary>
    public LengthUnit Units => units;

    /// <summary>Name of the unit of length.</summary>
    public string LengthName => units == LengthUnit.In ? "in" : "mm";

    /// <summary>Length of the unit [mm].</summary>
    public double UnitMm => units == LengthUnit.In ? UnitFactors.InchMm : 1;

    /// <summary>A length in the unit.</summary>
    /// <param name="mm">The length [mm].</param>
    public double InUnit(double mm) => mm / UnitMm;

    /// <summary>Name of the unit of force.</summary>
    public string ForceName => units == LengthUnit.In ? "lbf" : "N";

    /// <summary>Name of the unit of a whole moment.</summary>
    public string TorqueName => units == LengthUnit.In ? "lbf·in" : "N·mm";

    private double ForceN => units == LengthUnit.In ? UnitFactors.PoundForceN : 1;

    /// <summary>A force in its unit.</summary>
    /// <param name="newtons">The force [N].</param>
    public double ForceInUnit(double newtons) => newtons / ForceN;

    /// <summary>A whole moment in its unit.</summary>
    /// <param name="newtonMm">The moment [N·mm].</param>
    public double TorqueInUnit(double newtonMm) => newtonMm / (ForceN * UnitMm);

    /// <summary>A length as the bench reads it: hundredths of a mm or thousandths of an inch.</summary>
    /// <param name="mm">The length [mm].</param>
    public string Length(double mm) => Fixed(InUnit(mm), units == LengthUnit.In ? 3 : 2);

    /// <summary>A length that is not sure: whole millimetres or hundredths of an inch.</summary>
    /// <param name="mm">The length [mm].</param>
    public string RoughLength(double mm) => Fixed(InUnit(mm), units == LengthUnit.In ? 2 : 0);

    /// <summary>An angle that is not sure, with its sign for degrees: whole ones.</summary>
    /// <param name="radians">The angle [rad].</param>
    public static string RoughDegrees(double radians) => Fixed(new Angle(radians).Degrees, 0) + "°";

    /// <summary>A length with its unit, without idle zeros.</summary>
    /// <param name="mm">The length [mm].</param>
    public string LengthWithUnit(double mm) => $"{Short(InUnit(mm), units == LengthUnit.In ? 3 : 2)} {LengthName}";

    /// <summary>Two lengths with their unit, such as <c>317.5 × 600 mm</c>.</summary>
    /// <param name="lengthMm">First length [mm].</param>
    /// <param name="widthMm">Second length [mm].</param>
    public string Size(double lengthMm, double widthMm) => $"{Length(lengthMm)} × {LengthWithUnit(widthMm)}";

    /// <summary>A mass with its unit.</summary>
    /// <param name="kg">The mass [kg].</param>
    public string Mass(double kg) => units == LengthUnit.In ? $"{Short(kg / UnitFactors.PoundKg, 2)} lb" : $"{Short(kg, 2)} kg";

    /// <summary>An angle with its sign for degrees.</summary>
    /// <param name="angle">The angle.</param>
    public static string Degrees(Angle angle) => Fixed(angle.Degrees, 2) + "°";

    /// <summary>An angle with its sign, also where it is positive.</summary>
    /// <param name="angle">The angle.</param>
    public static string SignedDegrees(Angle angle) => (Math.Round(angle.Degrees, 2) > 0 ? "+" : "") + Degrees(angle);

    /// <summary>An angle with its sign for degrees; a dash where there is none.</summary>
    /// <param name="angle">The angle, or null.</param>
    public static string Degrees(Angle? angle) => angle is { } known ? Degrees(known) : "–";

    private static string Fixed(double value, int decimals) =>
        (Math.Round(Finite.Of(value), decimals) + 0.0).ToString("F" + decimals, CultureInfo.InvariantCulture);

    private static string Short(double value, int decimals) =>
        (Math.Round(Finite.Of(value), decimals) + 0.0).ToString("0.###", CultureInfo.InvariantCulture);
}
