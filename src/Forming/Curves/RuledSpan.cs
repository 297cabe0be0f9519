using Forming.Numerics;

namespace Forming.Curves;

/// <summary>The strip half-way along the rulings of a tapered panel, square to them, on its mid surface.</summary>
/// <remarks>The parameter is linear in the tangent angle of both end curves.</remarks>
internal sealed record RuledSpan : BendSpan
{
    private const int Samples = 128;

    /// <summary>Curvatures that differ by less are equal.</summary>
    private const double Rounding = 1e-9;

    /// <summary>What differs by less, as a share, is even.</summary>
    private const double Even = 1e-12;

    private readonly RuledPanel _panel;
    private readonly double _tightest;
    private readonly double _gentlest;

    private RuledSpan(RuledPanel panel, double[] curvatures, Angle turn)
        : base(turn, 0)
    {
        _panel = panel;
        MeasuredLengthMm = Width(panel).Integral().At(panel.Sweep);
        InnerPeaks = [.. Peaks(curvatures)];
        _tightest = 1 / curvatures.Concat(InnerPeaks.Select(CurvatureAt)).Max();
        _gentlest = 1 / curvatures.Min();
    }

    /// <inheritdoc/>
    public override IReadOnlyList<double> InnerPeaks { get; }

    /// <inheritdoc/>
    protected override double MeasuredLengthMm { get; }

    /// <inheritdoc/>
    protected override double MeasuredTightestRadiusMm => _tightest;

    /// <inheritdoc/>
    protected override double MeasuredGentlestRadiusMm => _gentlest;

    /// <summary>The strip of a panel; an arc where it is bent evenly, as on a right cone.</summary>
    /// <param name="panel">The panel.</param>
    public static BendSpan Of(RuledPanel panel)
    {
        var curvatures = new double[Samples + 1];
        double narrowest = double.PositiveInfinity, widest = 0;
        for (var i = 0; i <= Samples; i++)
        {
            var ruling = panel.At(panel.Sweep * i / Samples);
            curvatures[i] = ruling.NormalRate / ruling.MiddleWidth;
            (narrowest, widest) = (Math.Min(narrowest, ruling.MiddleWidth), Math.Max(widest, ruling.MiddleWidth));
        }

        var isEven = curvatures.Max() - curvatures.Min() <= Even * curvatures.Max() && widest - narrowest <= Even * widest;
        if (isEven)
        {
            var ruling = panel.At(0);
            var measured = (ruling.NearRadius + ruling.FarRadius) / 2 * Math.Sin(ruling.EdgeAngle) / ruling.NormalRate;
            return new ArcSpan(measured, new(ruling.NormalRate * panel.Sweep), panel.OffsetMm);
        }

        return new RuledSpan(panel, curvatures, new(panel.SeriesOf(at => panel.At(at).NormalRate).Integral().At(panel.Sweep)));
    }

    /// <summary>Width of the strip along the sweep, from the first ruling [mm per rad].</summary>
    /// <param name="panel">The panel.</param>
    public static Series Width(RuledPanel panel) => panel.SeriesOf(turn => panel.At(turn).MiddleWidth);

    /// <inheritdoc/>
    protected override SpanRates MeasuredRatesAt(double u)
    {
        var ruling = _panel.At(u * _panel.Sweep);
        return new(ruling.MiddleWidth * _panel.Sweep, ruling.NormalRate / ruling.MiddleWidth);
    }

    private double CurvatureAt(double u) => MeasuredRatesAt(u).Curvature;

    // Where the curvature turns from growing to falling: bracketed by the samples, then narrowed.
    private IEnumerable<double> Peaks(double[] curvatures)
    {
        for (var i = 1; i < Samples; i++)
        {
            double before = curvatures[i - 1], here = curvatures[i], after = curvatures[i + 1];
            if (!(here >= before && here >= after) || here - Math.Min(before, after) <= Rounding * here)
                continue;
            yield return GoldenSection.Peak(CurvatureAt, (i - 1.0) / Samples, (i + 1.0) / Samples);
        }
    }
}
