namespace Forming.Curves;

/// <summary>How the radius goes from one end of a progressive bend to the other.</summary>
public enum ProgressiveLaw
{
    /// <summary>Radius linear in the turned angle.</summary>
    Involute,

    /// <summary>Curvature linear in the length; one end may be flat.</summary>
    Clothoid,

    /// <summary>Radius exponential in the turned angle.</summary>
    Logarithmic,
}
