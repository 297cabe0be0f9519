namespace Forming.Curves;

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
