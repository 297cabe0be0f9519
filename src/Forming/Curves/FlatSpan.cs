namespace Forming.Curves;

/// <summary>A flat.</summary>
/// <param name="Millimetres">Length [mm], &gt; 0.</param>
public sealed record FlatSpan(double Millimetres) : CurveSpan
{
    /// <inheritdoc/>
    public override double LengthMm => Millimetres;
}
