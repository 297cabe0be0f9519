using MathNet.Numerics.RootFinding;

namespace Forming.Curves;

/// <summary>Strips of a tapered panel square to its rulings, against the one half-way along them.</summary>
/// <remarks>On a ruling the width grows evenly from one end to the other, and so does the bending radius.</remarks>
public sealed class RuledStrips
{
    /// <summary>A panel whose ends differ by more than this is looked at in <see cref="Steep"/> places.</summary>
    private const double MostForThree = 2;

    /// <summary>Widths that differ by less, as a share, are alike.</summary>
    private const double Alike = 1e-12;

    private static readonly double[] Only = [0.5];

    private static readonly double[] Usual = [0, 0.5, 1];

    // Both ends and the inner places of the five-point Gauss-Lobatto rule.
    private static readonly double[] Steep = [0, 0.1726731646460114, 0.5, 0.8273268353539886, 1];

    private readonly RuledPanel _panel;
    private readonly Numerics.Series _near;
    private readonly Numerics.Series _middle;

    private RuledStrips(RuledPanel panel)
    {
        _panel = panel;
        _near = panel.SeriesOf(turn => panel.At(turn).NearWidth).Integral();
        _middle = RuledSpan.Width(panel).Integral();
        LengthMm = _middle.At(panel.Sweep);
        (Narrowest, Widest) = WidthsOf(panel);
        Places = PlacesOf(panel);
    }

    private static (double Narrowest, double Widest) WidthsOf(RuledPanel panel)
    {
        double narrowest = 1, widest = 1;
        const int samples = 32;
        for (var i = 0; i <= samples; i++)
        {
            var ruling = panel.At(panel.Sweep * i / samples);
            foreach (var width in (Span<double>)[ruling.NearWidth, ruling.FarWidth])
            {
                narrowest = Math.Min(narrowest, width / ruling.MiddleWidth);
                widest = Math.Max(widest, width / ruling.MiddleWidth);
            }
        }

        return (narrowest, widest);
    }

    /// <summary>Mid-surface length of the middle strip [mm].</summary>
    public double LengthMm { get; }

    /// <summary>Where the strips lie along the rulings, near end 0, far end 1; the middle one is half-way in the list too.</summary>
    public IReadOnlyList<double> Places { get; }

    /// <summary>Least width of a strip against the middle one, at most 1.</summary>
    public double Narrowest { get; }

    /// <summary>Largest width of a strip against the middle one, at least 1.</summary>
    public double Widest { get; }

    /// <summary>Where strips of a panel should lie, near end 0, far end 1; one where all are alike.</summary>
    /// <param name="panel">The panel.</param>
    internal static IReadOnlyList<double> PlacesOf(RuledPanel panel)
    {
        var (narrowest, widest) = WidthsOf(panel);
        if (widest - narrowest <= Alike)
            return Only;
        return widest > MostForThree * narrowest ? Steep : Usual;
    }

    /// <summary>The middle strip of a panel.</summary>
    /// <param name="panel">The panel.</param>
    internal static FinishedCurve MiddleOf(RuledPanel panel) => new([RuledSpan.Of(panel)], null) { Strips = new(panel) };

    /// <summary>Width of a strip over that of the middle one, between two places of the middle one.</summary>
    /// <param name="place">Where the strip lies, 0 to 1.</param>
    /// <param name="fromMm">Place along the middle strip from the curve's start [mm]; past an end the strips go on as there.</param>
    /// <param name="toMm">The other place [mm], beyond it.</param>
    public double WidthBetween(double place, double fromMm, double toMm)
    {
        double from = TurnAt(fromMm), to = TurnAt(toMm);
        double near;
        if (to - from > 1e-9)
        {
            near = (_near.At(to) - _near.At(from)) / (_middle.At(to) - _middle.At(from));
        }
        else
        {
            var ruling = _panel.At(from);
            near = ruling.NearWidth / ruling.MiddleWidth;
        }

        return near + (2 * (1 - near) * place);
    }

    /// <summary>Tangent angle of the ruling at a place of the middle strip.</summary>
    /// <param name="midMm">The place, from the curve's start [mm].</param>
    /// <returns>The angle [rad], 0 to the sweep.</returns>
    public double TurnAt(double midMm)
    {
        // So near to an end the series' own rounding leaves no root between.
        var nearly = 1e-12 * LengthMm;
        if (midMm <= nearly)
            return 0;
        return midMm >= LengthMm - nearly
            ? _panel.Sweep
            : Brent.FindRoot(turn => _middle.At(turn) - midMm, 0, _panel.Sweep, 1e-13 * _panel.Sweep, 200);
    }

    /// <summary>Place of a ruling along the middle strip [mm].</summary>
    /// <param name="turn">Its tangent angle [rad].</param>
    public double MidAt(double turn) => _middle.At(turn);
}
