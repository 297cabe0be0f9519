namespace Forming.Curves;

/// <summary>Curvature linear in the length, length <c>2Φ/(k0 + k1)</c>; either end may be flat.</summary>
/// <param name="StartCurvature">k0 on the measured face [1/mm], at least 0.</param>
/// <param name="EndCurvature">k1 on the measured face [1/mm], at least 0, not both 0.</param>
/// <param name="Sweep">Turned angle Φ, &gt; 0.</param>
/// <param name="OffsetMm">Distance from the measured to the described face [mm].</param>
/// <remarks>
/// The parameter is linear in the root of the curvature, because near a flat end the forming curvature starts like that root:
/// everything stays smooth in it.
/// </remarks>
public sealed record ClothoidSpan(double StartCurvature, double EndCurvature, Angle Sweep, double OffsetMm)
    : BendSpan(Sweep, OffsetMm)
{
    /// <inheritdoc/>
    protected override double MeasuredLengthMm => 2 * Sweep.Radians / (StartCurvature + EndCurvature);

    /// <inheritdoc/>
    protected override double MeasuredTightestRadiusMm => 1 / Math.Max(StartCurvature, EndCurvature);

    /// <inheritdoc/>
    protected override double MeasuredGentlestRadiusMm => 1 / Math.Min(StartCurvature, EndCurvature);

    // Along the length the square of the curvature grows evenly with the turned angle.
    /// <inheritdoc/>
    protected override double MeasuredRadiusAtTurn(double turn)
    {
        var share = turn / Sweep.Radians;
        return 1 / Math.Sqrt(((1 - share) * StartCurvature * StartCurvature) + (share * EndCurvature * EndCurvature));
    }

    /// <inheritdoc/>
    protected override SpanRates MeasuredRatesAt(double u)
    {
        double start = Math.Sqrt(StartCurvature), end = Math.Sqrt(EndCurvature);
        var root = start + (u * (end - start));
        return new(2 * root * MeasuredLengthMm / (start + end), root * root);
    }
}
