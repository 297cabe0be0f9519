namespace Forming.Estimates;

/// <summary>Unit of an assumed figure.</summary>
public enum RateUnit
{
    /// <summary>A plain count or share.</summary>
    None,

    /// <summary>Minutes of one person.</summary>
    Minutes,

    /// <summary>Minutes of one person for a metre.</summary>
    MinutesPerMetre,

    /// <summary>Money for an hour.</summary>
    MoneyPerHour,

    /// <summary>Money for a kilogram.</summary>
    MoneyPerKg,
}
