using Forming.Drawing.Sheets;

namespace Forming.Drawing.Pdf;

/// <summary>One page: what is drawn, in mm of paper.</summary>
/// <param name="Items">What is drawn.</param>
/// <param name="LineScale">Line widths over those of a sheet.</param>
internal sealed record PdfPageLayout(IReadOnlyList<SheetItem> Items, double LineScale = 1);
