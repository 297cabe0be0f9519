namespace Forming.Curves;

/// <summary>One piece of a curve along which the curvature is smooth.</summary>
public abstract record CurveSpan
{
    /// <summary>Length [mm], &gt; 0.</summary>
    public abstract double LengthMm { get; }
}
