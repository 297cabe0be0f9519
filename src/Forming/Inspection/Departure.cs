namespace Forming.Inspection;

/// <summary>Where a form leaves its wanted curve.</summary>
/// <param name="Facet">Number of the fold before the first facet whose far end is past tolerance, from 1; the last is the lead-out.</param>
/// <param name="ByMm">How far its far end lies off, square to the planned facet [mm]: positive inside the curve, folded too tight; negative outside.</param>
public sealed record Departure(int Facet, double ByMm)
{
    /// <summary>Whether it lies inside the wanted curve.</summary>
    public bool IsInside => ByMm > 0;
}
