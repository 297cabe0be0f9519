namespace Forming;

/// <summary>What an inch, a pound and a pound-force are: exact by definition, and written nowhere else.</summary>
public static class UnitFactors
{
    /// <summary>The international inch [mm].</summary>
    public const double InchMm = 25.4;

    /// <summary>The pound [kg].</summary>
    public const double PoundKg = 0.45359237;

    /// <summary>The pound-force under standard gravity [N].</summary>
    public const double PoundForceN = 4.4482216152605;
}
