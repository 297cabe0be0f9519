using Forming.Curves;
using Forming.Numerics;

namespace Forming.Tapers;

/// <summary>The tapered panel on the form: the same sheet and rulings, its normal turning g times as fast.</summary>
/// <remarks>
/// One frame along phi, started on the finished lead-in: <c>e' = -eta' m</c>, <c>m' = eta' e - g lam N</c>, <c>N' = g lam m</c>,
/// <c>X' = rho0 cos w e + n0 m</c>, far point <c>X + L e</c>, all on the mid surface. With g = 1 it returns the finished panel.
/// </remarks>
internal sealed class FormedPanel
{
    private const int StepsPerNode = 24;

    private readonly Series[] _frame; // e, m, N, X: three components each

    private FormedPanel(RuledPanel panel, Series factor, Series normalRate, Series headingRate, EndTurns ends)
    {
        Panel = panel;
        Ends = ends;
        Factor = factor;
        NormalRate = normalRate;
        Turn = normalRate.Integral();
        NearWidth = panel.SeriesOf(turn => panel.At(turn).NearWidth).Integral();
        FarWidth = panel.SeriesOf(turn => panel.At(turn).FarWidth).Integral();
        _frame = Integrated(panel, normalRate, headingRate, ends);
    }

    /// <summary>The finished panel.</summary>
    public RuledPanel Panel { get; }

    /// <summary>g along the sweep.</summary>
    public Series Factor { get; }

    /// <summary>g lam along the sweep.</summary>
    public Series NormalRate { get; }

    /// <summary>Turn of the sheet's normal on the form, from the lead-in [rad].</summary>
    public Series Turn { get; }

    /// <summary>Width square to the rulings along the near end, from the first ruling [mm].</summary>
    public Series NearWidth { get; }

    /// <summary>The same along the far end [mm].</summary>
    public Series FarWidth { get; }

    /// <summary>Turn of the normal over the whole sweep [rad].</summary>
    public double TotalTurn => Turn.At(Panel.Sweep);

    /// <summary>What the folds at the end rulings turn beside.</summary>
    public EndTurns Ends { get; }

    /// <summary>Turn of the normal from the lead-in to the lead-out [rad].</summary>
    public double TurnBetweenLeads => Ends.Start + TotalTurn + Ends.End;

    /// <summary>The lead-in's triad at the first ruling.</summary>
    public Triad LeadIn => TriadAt(0).Turned(new(Ends.Start, 0, 0));

    /// <summary>The lead-out's triad at the last ruling.</summary>
    public Triad LeadOut => TriadAt(Panel.Sweep).Turned(new(-Ends.End, 0, 0));

    /// <summary>The panel on the form.</summary>
    /// <param name="panel">The finished panel.</param>
    /// <param name="factor">g of a ruling.</param>
    /// <param name="ends">What the folds at the end rulings turn beside.</param>
    public static FormedPanel Solve(RuledPanel panel, Func<Ruling, double> factor, EndTurns ends = default)
    {
        var g = panel.SeriesOf(turn => factor(panel.At(turn)));
        var normalRate = panel.SeriesOf(turn => g.At(turn) * panel.At(turn).NormalRate);
        var headingRate = panel.SeriesOf(turn => panel.At(turn).HeadingRate);
        return new(panel, g, normalRate, headingRate, ends);
    }

    /// <summary>Turn of the normal over the whole sweep, without the frame [rad].</summary>
    /// <param name="panel">The finished panel.</param>
    /// <param name="factor">g of a ruling.</param>
    public static double TurnOf(RuledPanel panel, Func<Ruling, double> factor) => panel.SeriesOf(turn =>
    {
        var ruling = panel.At(turn);
        return factor(ruling) * ruling.NormalRate;
    }).Integral().At(panel.Sweep);

    /// <summary>The sheet's triad at a ruling.</summary>
    /// <param name="turn">Tangent angle of the ruling [rad].</param>
    public Triad TriadAt(double turn) => new(At(0, turn), At(3, turn), At(6, turn));

    /// <summary>Near end of a ruling, on the mid surface [mm].</summary>
    /// <param name="turn">Tangent angle of the ruling [rad].</param>
    public Point3 NearAt(double turn) => At(9, turn);

    private Point3 At(int first, double turn) => new(_frame[first].At(turn), _frame[first + 1].At(turn), _frame[first + 2].At(turn));

    private static Series[] Integrated(RuledPanel panel, Series normalRate, Series headingRate, EndTurns ends)
    {
        var nodes = Chebyshev.Nodes(panel.Terms); // from the end down to 0
        var triads = new Triad[nodes.Length];
        var start = panel.At(0);
        triads[^1] = StartOn(start).Turned(new(-ends.Start, 0, 0));
        for (var i = nodes.Length - 2; i >= 0; i--)
            triads[i] = Advanced(triads[i + 1], nodes[i + 1] * panel.Sweep, nodes[i] * panel.Sweep);

        var values = new double[12][];
        for (var k = 0; k < values.Length; k++)
            values[k] = new double[nodes.Length];
        for (var i = 0; i < nodes.Length; i++)
        {
            var ruling = panel.At(nodes[i] * panel.Sweep);
            var rate = triads[i].Vector(ruling.NearRadius * Math.Cos(ruling.EdgeAngle), ruling.NearWidth, 0);
            Store(0, i, triads[i].E);
            Store(3, i, triads[i].M);
            Store(6, i, triads[i].N);
            Store(9, i, rate);
        }

        var series = Array.ConvertAll(values, row => new Series(Chebyshev.Fit(row, out _, 0), panel.Sweep));
        var origin = panel.OffsetMm * triads[^1].N;
        series[9] = From(origin.X, series[9].Integral());
        series[10] = From(origin.Y, series[10].Integral());
        series[11] = From(origin.Z, series[11].Integral());
        return series;

        void Store(int first, int i, Point3 vector) =>
            (values[first][i], values[first + 1][i], values[first + 2][i]) = (vector.X, vector.Y, vector.Z);

        static Series From(double value, Series integral)
        {
            integral.Coefficients[0] += value;
            return integral;
        }

        // Fourth-order Magnus steps: each an exact rotation, so the triad stays orthogonal.
        Triad Advanced(Triad triad, double from, double to)
        {
            var step = (to - from) / StepsPerNode;
            var gauss = step * Math.Sqrt(3) / 6;
            for (var i = 0; i < StepsPerNode; i++)
            {
                var middle = from + ((i + 0.5) * step);
                var first = RateAt(middle - gauss);
                var second = RateAt(middle + gauss);
                triad = triad.Turned((step / 2 * (first + second)) + (step * step * Math.Sqrt(3) / 12 * first.Cross(second)));
            }

            return triad;
        }

        // The rotation vector of e' = -eta' m, m' = eta' e - g lam N, N' = g lam m in the triad's own, left-handed components.
        Point3 RateAt(double turn) => new(-normalRate.At(turn), 0, -headingRate.At(turn));
    }

    private static Triad StartOn(Ruling ruling)
    {
        var (sinW, cosW) = Math.SinCos(ruling.EdgeAngle);
        var (sinP, cosP) = Math.SinCos(ruling.Slope);
        Point3 t = new(1, 0, 0), b = new(0, sinP, cosP);
        return new((cosW * t) + (sinW * b), (sinW * t) - (cosW * b), new(0, -cosP, sinP));
    }
}

/// <summary>How far the sheet's normal turns at a tapered form's end rulings, beside its turn along the curve.</summary>
/// <param name="Start">At the first one [rad].</param>
/// <param name="End">At the last one [rad].</param>
internal readonly record struct EndTurns(double Start, double End);
