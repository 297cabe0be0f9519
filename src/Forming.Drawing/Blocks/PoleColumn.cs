using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>A column of figures beside a blank.</summary>
/// <param name="Heading">What it holds.</param>
/// <param name="AtMm">Where its text is anchored [mm].</param>
/// <param name="Anchor">How.</param>
/// <param name="IsBold">Whether it is bold.</param>
/// <param name="SizeMm">Size of the type [mm].</param>
internal sealed record PoleColumn(string Heading, double AtMm, Anchor Anchor = Anchor.End, bool IsBold = false, double SizeMm = Page.Text);
