namespace Forming.Curves;

/// <summary>How a span grows with its own parameter, which runs from 0 to 1.</summary>
/// <param name="Length">ds/du [mm], at least 0.</param>
/// <param name="Curvature">Curvature [1/mm], at least 0.</param>
public readonly record struct SpanRates(double Length, double Curvature)
{
    /// <summary>dphi/du [rad].</summary>
    public double Turn => Length * Curvature;

    /// <summary>The rates on a parallel curve: <c>rho + d</c> at the same tangent angle.</summary>
    /// <param name="offsetMm">Distance d towards the outside [mm].</param>
    public SpanRates Offset(double offsetMm)
    {
        var stretch = 1 + (offsetMm * Curvature);
        return new(Length * stretch, Curvature / stretch);
    }
}
