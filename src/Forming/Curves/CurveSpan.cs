namespace Forming.Curves;

/// <summary>One piece of a curve along which the curvature is smooth.</summary>
public abstract record CurveSpan
{
    /// <summary>Length [mm], &gt; 0.</summary>
    public abstract double LengthMm { get; }
}

/// <summary>A flat.</summary>
/// <param name="Millimetres">Length [mm], &gt; 0.</param>
public sealed record FlatSpan(double Millimetres) : CurveSpan
{
    /// <inheritdoc/>
    public override double LengthMm => Millimetres;
}

/// <summary>A bend that turns left all the way.</summary>
/// <param name="Sweep">Turned angle, &gt; 0.</param>
/// <param name="OffsetMm">Distance from the face it was measured on to the one it describes, positive to the outside [mm].</param>
public abstract record BendSpan(Angle Sweep, double OffsetMm) : CurveSpan
{
    /// <inheritdoc/>
    public sealed override double LengthMm => MeasuredLengthMm + (OffsetMm * Sweep.Radians);

    /// <summary>Smallest radius on the described face [mm].</summary>
    public double TightestRadiusMm => MeasuredTightestRadiusMm + OffsetMm;

    /// <summary>Largest radius on the described face [mm]; infinite at a flat end.</summary>
    public double GentlestRadiusMm => MeasuredGentlestRadiusMm + OffsetMm;

    /// <summary>Places between the ends at which the curvature is largest, in the span's parameter, 0 to 1.</summary>
    public virtual IReadOnlyList<double> InnerPeaks => [];

    /// <summary>Length on the measured face [mm].</summary>
    protected abstract double MeasuredLengthMm { get; }

    /// <summary>Smallest radius on the measured face [mm].</summary>
    protected abstract double MeasuredTightestRadiusMm { get; }

    /// <summary>Largest radius on the measured face [mm].</summary>
    protected abstract double MeasuredGentlestRadiusMm { get; }

    /// <summary>The rates on the described face.</summary>
    /// <param name="u">The span's parameter, 0 to 1.</param>
    public SpanRates RatesAt(double u) => MeasuredRatesAt(u).Offset(OffsetMm);

    /// <summary>Radius on the described face where the tangent has turned by an angle.</summary>
    /// <param name="turn">The angle, 0 to the sweep [rad].</param>
    /// <returns>Radius [mm]; infinite at a flat end.</returns>
    public double RadiusAtTurn(double turn) => MeasuredRadiusAtTurn(turn) + OffsetMm;

    /// <summary>Radius on the measured face where the tangent has turned by an angle.</summary>
    /// <param name="turn">The angle, 0 to the sweep [rad].</param>
    protected virtual double MeasuredRadiusAtTurn(double turn) => 1 / MeasuredRatesAt(turn / Sweep.Radians).Curvature;

    /// <summary>The rates on the measured face.</summary>
    /// <param name="u">The span's parameter, 0 to 1.</param>
    protected abstract SpanRates MeasuredRatesAt(double u);
}

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

/// <summary>Radius exponential in the turned angle: <c>rho = R0 (R1/R0)^(phi/Φ)</c>, length <c>Φ (R1 - R0)/ln(R1/R0)</c>.</summary>
/// <param name="StartRadiusMm">R0 on the measured face [mm], &gt; 0.</param>
/// <param name="EndRadiusMm">R1 on the measured face [mm], &gt; 0, different from R0.</param>
/// <param name="Sweep">Turned angle Φ, &gt; 0.</param>
/// <param name="OffsetMm">Distance from the measured to the described face [mm].</param>
public sealed record LogarithmicSpan(double StartRadiusMm, double EndRadiusMm, Angle Sweep, double OffsetMm)
    : BendSpan(Sweep, OffsetMm)
{
    /// <inheritdoc/>
    protected override double MeasuredLengthMm =>
        Sweep.Radians * (EndRadiusMm - StartRadiusMm) / Math.Log(EndRadiusMm / StartRadiusMm);

    /// <inheritdoc/>
    protected override double MeasuredTightestRadiusMm => Math.Min(StartRadiusMm, EndRadiusMm);

    /// <inheritdoc/>
    protected override double MeasuredGentlestRadiusMm => Math.Max(StartRadiusMm, EndRadiusMm);

    /// <inheritdoc/>
    protected override SpanRates MeasuredRatesAt(double u)
    {
        var radius = StartRadiusMm * Math.Pow(EndRadiusMm / StartRadiusMm, u);
        return new(Sweep.Radians * radius, 1 / radius);
    }
}
