using System.Globalization;
using Forming.Layout;
using Forming.Results;

namespace Forming.Drawing;

/// <summary>How values are written on a drawing, in one unit of length.</summary>
/// <param name="units">The unit.</param>
/// <param name="tape">The tape that a person lays lengths out with.</param>
internal sealed class Readout(LengthUnit units, Tape tape)
{
    /// <summary>Finest fraction that a thickness, a radius or a die is named by [1/in].</summary>
    private const double Fractions = 64;

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

    /// <summary>A length with its unit, without idle zeros; what is a sixty-fourth of an inch reads as a fraction.</summary>
    /// <param name="mm">The length [mm].</param>
    public string LengthWithUnit(double mm) => $"{Named(mm)} {LengthName}";

    /// <summary>A length as a drawing names it, without unit and idle zeros; a sixty-fourth of an inch reads as a fraction.</summary>
    /// <param name="mm">The length [mm].</param>
    public string Named(double mm)
    {
        var value = InUnit(mm);
        if (units != LengthUnit.In)
            return Short(value, 2);
        return Math.Abs((value * Fractions) - Math.Round(value * Fractions)) < 1e-6
            ? TapeReading.Of(mm, new(LengthUnit.In, 1 / Fractions)).Text
            : Short(value, Math.Abs(value) < 0.1 ? 4 : 3);
    }

    /// <summary>Name of the unit that lengths are laid out in.</summary>
    public string TapeName => tape.Unit == LengthUnit.In ? "in" : "mm";

    /// <summary>Whether lengths are laid out to the tape's own step; else to hundredths of a mm.</summary>
    public bool IsToTheTape => tape.Unit == LengthUnit.In;

    /// <summary>A length as a person lays it out: as an inch tape reads, or to hundredths of a mm.</summary>
    /// <param name="mm">The length [mm].</param>
    public string LaidOut(double mm) => IsToTheTape ? TapeReading.Of(mm, tape).Text : Fixed(mm, 2);

    /// <summary>The same rounded to the tape's step, whatever its unit.</summary>
    /// <param name="mm">The length [mm].</param>
    public string OnTape(double mm) => TapeReading.Of(mm, tape).Text;

    /// <summary>A length as a person lays it out, with its unit and without idle zeros.</summary>
    /// <param name="mm">The length [mm].</param>
    public string LaidOutWithUnit(double mm) => $"{(IsToTheTape ? LaidOut(mm) : Short(mm, 2))} {TapeName}";

    /// <summary>The size of a blank, such as <c>317.50 × 600 mm</c>.</summary>
    /// <param name="lengthMm">First length [mm].</param>
    /// <param name="widthMm">Second length [mm].</param>
    public string Size(double lengthMm, double widthMm) => $"{LaidOut(lengthMm)} × {LaidOutWithUnit(widthMm)}";

    /// <summary>A mass with its unit; a light one keeps two digits.</summary>
    /// <param name="kg">The mass [kg].</param>
    public string Mass(double kg)
    {
        var (value, name) = units == LengthUnit.In ? (kg / UnitFactors.PoundKg, "lb") : (kg, "kg");
        return $"{(value >= 0.1 ? Short(value, 2) : TwoDigits(value))} {name}";
    }

    /// <summary>An angle with its sign for degrees, without idle zeros.</summary>
    /// <param name="angle">The angle.</param>
    public static string NamedDegrees(Angle angle) => Short(angle.Degrees, 2) + "°";

    /// <summary>An angle with its sign for degrees.</summary>
    /// <param name="angle">The angle.</param>
    public static string Degrees(Angle angle) => Fixed(angle.Degrees, 2) + "°";

    /// <summary>An angle with its sign, also where it is positive.</summary>
    /// <param name="angle">The angle.</param>
    public static string SignedDegrees(Angle angle) => (Math.Round(angle.Degrees, 2) > 0 ? "+" : "") + Degrees(angle);

    /// <summary>An angle with its sign for degrees; a dash where there is none.</summary>
    /// <param name="angle">The angle, or null.</param>
    public static string Degrees(Angle? angle) => angle is { } known ? Degrees(known) : "–";

    // Two digits, however small.
    private static string TwoDigits(double value)
    {
        if (Finite.Of(value) <= 0)
            return "0";
        var step = Math.Pow(10, Math.Floor(Math.Log10(value)) - 1);
        return (Math.Round(value / step) * step).ToString("0.############", CultureInfo.InvariantCulture);
    }

    private static string Fixed(double value, int decimals) =>
        (Math.Round(Finite.Of(value), decimals) + 0.0).ToString("F" + decimals, CultureInfo.InvariantCulture);

    private static string Short(double value, int decimals) =>
        (Math.Round(Finite.Of(value), decimals) + 0.0).ToString("0.####", CultureInfo.InvariantCulture);
}
