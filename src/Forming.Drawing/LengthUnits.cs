namespace Forming.Drawing;

/// <summary>The unit of every length on a drawing or in a file.</summary>
public enum LengthUnits
{
    /// <summary>Millimetres.</summary>
    Millimetre,

    /// <summary>Inches.</summary>
    Inch,
}
