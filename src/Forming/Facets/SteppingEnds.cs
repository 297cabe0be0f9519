namespace Forming.Facets;

/// <summary>How the first and last fold sit at the ends of a curve.</summary>
public enum SteppingEnds
{
    /// <summary>A fold of about half the angle at each tangent point; the flats are tangent to the curve.</summary>
    Half,

    /// <summary>All folds alike, half a step in from the tangent points; the flats lie a little inside.</summary>
    Full,
}
