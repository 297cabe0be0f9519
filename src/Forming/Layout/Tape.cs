using System.Globalization;

namespace Forming.Layout;

/// <summary>The tape that marks are read on.</summary>
/// <param name="Unit">What it is divided in.</param>
/// <param name="Resolution">Its smallest step in its own unit, &gt; 0: 0.015625 is 1/64 in.</param>
public sealed record Tape(LengthUnit Unit, double Resolution)
{
    /// <summary>Length of the tape's unit [mm].</summary>
    public double UnitMm => Unit == LengthUnit.In ? UnitFactors.InchMm : 1;

    /// <summary>Smallest step [mm].</summary>
    public double ResolutionMm => Resolution * UnitMm;
}

/// <summary>A length as it is read on a tape.</summary>
/// <param name="Mm">The rounded length [mm], signed.</param>
/// <param name="Text">As it reads on the tape, without the unit: <c>12 7/16</c>, <c>-3 1/2</c>, <c>317.5</c>.</param>
public readonly record struct TapeReading(double Mm, string Text)
{
    /// <summary>Rounds a length from the datum to the tape's nearest step; midway goes to the even step.</summary>
    /// <param name="mm">The length [mm], signed.</param>
    /// <param name="tape">The tape.</param>
    public static TapeReading Of(double mm, Tape tape)
    {
        var steps = Math.Round(mm / tape.ResolutionMm, MidpointRounding.ToEven) + 0.0; // no minus zero
        var inUnits = steps * tape.Resolution;
        return new(
            inUnits * tape.UnitMm, tape.Unit == LengthUnit.In && IsBinaryFraction(tape.Resolution) ? InchFraction.Of(inUnits) : Decimal(inUnits));
    }

    private static bool IsBinaryFraction(double resolution) =>
        resolution < 1 && Math.Round(resolution * InchFraction.Finest) == resolution * InchFraction.Finest;

    private static string Decimal(double value)
    {
        var rounded = Math.Round(value, 6);
        return Math.Abs(rounded) < 1e-4
            ? (rounded == 0 ? 0 : rounded).ToString("0.######", CultureInfo.InvariantCulture)
            : rounded.ToString(CultureInfo.InvariantCulture);
    }
}
