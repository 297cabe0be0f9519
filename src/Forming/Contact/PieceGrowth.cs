namespace Forming.Contact;

/// <summary>What has grown since the start of a piece.</summary>
/// <param name="Turn">Turned angle under load [rad].</param>
/// <param name="Mid">Mid-surface length [mm].</param>
/// <param name="Position">Place on the contact curve in the piece's own frame [mm].</param>
internal readonly record struct PieceGrowth(double Turn, double Mid, Point Position);
