namespace Forming.Layout;

/// <summary>What a tape is divided in.</summary>
public enum TapeUnit
{
    /// <summary>Millimetres.</summary>
    Mm,

    /// <summary>Inches.</summary>
    Inch,
}
