namespace Forming.Drawing;

/// <summary>Paper that a PDF is laid out for, upright.</summary>
public enum PaperSize
{
    /// <summary>210 × 297 mm.</summary>
    A4,

    /// <summary>8 1/2 × 11 in.</summary>
    Letter,
}
