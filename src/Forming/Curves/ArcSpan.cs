namespace Forming.Curves;

/// <summary>Constant radius: <c>rho = R</c>, length <c>R Φ</c>.</summary>
/// <param name="RadiusMm">Radius on the measured face [mm], &gt; 0.</param>
/// <param name="Sweep">Turned angle, &gt; 0.</param>
/// <param name="OffsetMm">Distance from the measured to the described face [mm].</param>
public sealed record ArcSpan(double RadiusMm, Angle Sweep, double OffsetMm) : BendSpan(Sweep, OffsetMm)
{
    /// <inheritdoc/>
    protected override double MeasuredLengthMm => RadiusMm * Sweep.Radians;

    /// <inheritdoc/>
    protected override double MeasuredTightestRadiusMm => RadiusMm;

    /// <inheritdoc/>
    protected override double MeasuredGentlestRadiusMm => RadiusMm;

    /// <inheritdoc/>
    protected override SpanRates MeasuredRatesAt(double u) => new(RadiusMm * Sweep.Radians, 1 / RadiusMm);
}
