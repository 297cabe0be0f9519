namespace Forming.Curves;

/// <summary>Radius linear in the turned angle: <c>rho = R0 + (R1 - R0) phi/Φ</c>, length <c>Φ (R0 + R1)/2</c>.</summary>
/// <param name="StartRadiusMm">R0 on the measured face [mm], &gt; 0.</param>
/// <param name="EndRadiusMm">R1 on the measured face [mm], &gt; 0.</param>
/// <param name="Sweep">Turned angle Φ, &gt; 0.</param>
/// <param name="OffsetMm">Distance from the measured to the described face [mm].</param>
public sealed record InvoluteSpan(double StartRadiusMm, double EndRadiusMm, Angle Sweep, double OffsetMm)
    : BendSpan(Sweep, OffsetMm)
{
    /// <inheritdoc/>
    protected override double MeasuredLengthMm => Sweep.Radians * (StartRadiusMm + EndRadiusMm) / 2;

    /// <inheritdoc/>
    protected override double MeasuredTightestRadiusMm => Math.Min(StartRadiusMm, EndRadiusMm);

    /// <inheritdoc/>
    protected override double MeasuredGentlestRadiusMm => Math.Max(StartRadiusMm, EndRadiusMm);

    /// <inheritdoc/>
    protected override SpanRates MeasuredRatesAt(double u)
    {
        var radius = StartRadiusMm + (u * (EndRadiusMm - StartRadiusMm));
        return new(Sweep.Radians * radius, 1 / radius);
    }
}
