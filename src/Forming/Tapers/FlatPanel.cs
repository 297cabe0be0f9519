using Forming.Numerics;

namespace Forming.Tapers;

/// <summary>The tapered panel laid out flat: its mid surface, exactly developed.</summary>
/// <remarks>
/// <c>P' = rho0 cos w (cos eta, sin eta) + n0 (sin eta, -cos eta)</c> along the near edge, eta(0) = w(0), the far edge at
/// <c>P + L (cos eta, sin eta)</c>. Leads run on along the edges, their width square to the end rulings.
/// </remarks>
internal sealed class FlatPanel
{
    private readonly FormedPanel _formed;
    private readonly Series _heading;
    private readonly Series _x;
    private readonly Series _y;
    private readonly double _startHeading;

    /// <summary>Develops a panel.</summary>
    /// <param name="formed">The panel; flat, it is the same before and after forming.</param>
    public FlatPanel(FormedPanel formed)
    {
        _formed = formed;
        var panel = formed.Panel;
        _startHeading = panel.At(0).EdgeAngle;
        _heading = panel.SeriesOf(turn => panel.At(turn).HeadingRate).Integral();
        _x = panel.SeriesOf(turn => RateAt(turn).X).Integral();
        _y = panel.SeriesOf(turn => RateAt(turn).Y).Integral();
    }

    /// <summary>Area of the curved part [mm²]: <c>∫ L (n0 + n1)/2 dphi</c>.</summary>
    public double CurvedAreaMm2 => _formed.Panel.SeriesOf(turn =>
    {
        var ruling = _formed.Panel.At(turn);
        return ruling.Length * (ruling.NearWidth + ruling.FarWidth) / 2;
    }).Integral().At(_formed.Panel.Sweep);

    /// <summary>Near end of a ruling on the flat [mm].</summary>
    /// <param name="turn">Tangent angle of the ruling [rad].</param>
    public Point NearAt(double turn) => new(_x.At(turn), _y.At(turn));

    /// <summary>Far end of a ruling on the flat [mm].</summary>
    /// <param name="turn">Tangent angle of the ruling [rad].</param>
    public Point FarAt(double turn) => NearAt(turn) + (_formed.Panel.At(turn).Length * Point.Along(HeadingAt(turn)));

    /// <summary>Along the edges, onwards, on the flat.</summary>
    /// <param name="turn">Tangent angle of the ruling [rad].</param>
    public Point EdgeAt(double turn)
    {
        var (sin, cos) = Math.SinCos(_formed.Panel.At(turn).EdgeAngle);
        var along = Point.Along(HeadingAt(turn));
        return (cos * along) - (sin * along.Left());
    }

    /// <summary>Length along the edges of a lead of a given width square to its ruling [mm].</summary>
    /// <param name="turn">Tangent angle of the ruling [rad].</param>
    /// <param name="widthMm">Its width [mm].</param>
    public double LeadRun(double turn, double widthMm) => widthMm / Math.Sin(_formed.Panel.At(turn).EdgeAngle);

    private double HeadingAt(double turn) => _startHeading + _heading.At(turn);

    private Point RateAt(double turn)
    {
        var ruling = _formed.Panel.At(turn);
        var along = Point.Along(HeadingAt(turn));
        return (ruling.NearRadius * Math.Cos(ruling.EdgeAngle) * along) - (ruling.NearWidth * along.Left());
    }
}
