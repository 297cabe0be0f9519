using Forming.Numerics;
using Forming.Results;

namespace Forming.Curves;

/// <summary>The finished tapered panel: the only developable sheet through both end curves, ruled at equal tangent angles.</summary>
/// <remarks>
/// With q from near to far point in plan, t the tangent, n the normal to the left, H the distance of the end planes:
/// <c>u = q·t, v = q·n, B = √(v² + H²), L = √(u² + B²), sin w = B/L, sin p = v/B, lam = cos p/sin w, eta' = -(rho1 - rho0) sin w/L</c>.
/// The mid surface lies d off the measured face, square to the sheet: <c>n0 = rho0 sin w + d lam</c>, <c>r0 = n0/lam</c>.
/// </remarks>
internal sealed class RuledPanel
{
    private readonly BendSpan _near;
    private readonly BendSpan _far;
    private readonly Series _nearX;
    private readonly Series _nearY;
    private readonly Series _farX;
    private readonly Series _farY;
    private readonly Point _farStart;

    private RuledPanel(BendSpan near, BendSpan far, Point farStart, double height, double offset, int terms)
    {
        _near = near;
        _far = far;
        _farStart = farStart;
        Sweep = near.Sweep.Radians;
        HeightMm = height;
        OffsetMm = offset;
        Terms = terms;
        (_nearX, _nearY) = PositionOf(near, terms);
        (_farX, _farY) = PositionOf(far, terms);
    }

    /// <summary>Sweep of both curves [rad].</summary>
    public double Sweep { get; }

    /// <summary>Distance between the end planes [mm].</summary>
    public double HeightMm { get; }

    /// <summary>d, from the measured face to the mid surface, towards the outside [mm].</summary>
    public double OffsetMm { get; }

    /// <summary>Terms with which a series along the sweep is resolved.</summary>
    public int Terms { get; }

    /// <summary>The finished panel of a taper.</summary>
    /// <param name="taper">The taper.</param>
    /// <param name="surface">The face on which both curves were measured.</param>
    /// <param name="thickness">The panel's thickness [mm].</param>
    /// <exception cref="NoSolutionException">
    /// <c>taper.sweeps-differ</c>, <c>taper.end-curve</c>, <c>taper.rulings-cross</c>, <c>curve.too-tight</c>, <c>curve.too-slender</c>.
    /// </exception>
    public static RuledPanel Of(TaperCurve taper, Surface surface, double thickness)
    {
        FlatEnds.Refuse(taper);
        var near = CurveSpans.TaperEnd(taper.Near, "panel.curve.near");
        var far = CurveSpans.TaperEnd(taper.Far, "panel.curve.far");
        if (Math.Abs((near.Sweep - far.Sweep).Radians) > 1e-9)
        {
            throw new NoSolutionException(
                "taper.sweeps-differ",
                "panel.curve.far",
                $"the near curve turns {Figure.Angle(near.Sweep.Radians)}, the far one {Figure.Angle(far.Sweep.Radians)}",
                $"the same sweep at both ends");
        }

        var offset = surface.InsideOfMidMm(thickness);
        var start = taper.Placement switch
        {
            TaperPlacement.Concentric => new Point(0, near.RadiusAtTurn(0) - far.RadiusAtTurn(0)),
            TaperPlacement.Flush => Point.Origin,
            _ => taper.Offset,
        };
        var panel = new RuledPanel(near, far, start, taper.LengthMm, offset, TermsFor(near, far));
        panel.CheckRulings(thickness);
        return panel;
    }

    /// <summary>The ruling at a tangent angle.</summary>
    /// <param name="turn">The angle, 0 to the sweep [rad].</param>
    public Ruling At(double turn)
    {
        var tangent = Point.Along(turn);
        var q = PlanFar(turn) - PlanNear(turn);
        double u = q.Dot(tangent), v = q.Dot(tangent.Left());
        var b = Math.Sqrt((v * v) + (HeightMm * HeightMm));
        var length = Math.Sqrt((u * u) + (b * b));
        var sin = b / length;
        var rate = HeightMm / b / sin;
        double rho0 = _near.RadiusAtTurn(turn), rho1 = _far.RadiusAtTurn(turn);
        return new(
            turn,
            u,
            length,
            Math.Atan2(b, u),
            Math.Atan2(v, HeightMm),
            rate,
            -(rho1 - rho0) * sin / length,
            rho0,
            rho1,
            (rho0 * sin) + (OffsetMm * rate),
            (rho1 * sin) + (OffsetMm * rate));
    }

    /// <summary>Point of the near curve [mm].</summary>
    /// <param name="turn">Tangent angle [rad].</param>
    public Point PlanNear(double turn) => new(_nearX.At(turn), _nearY.At(turn));

    /// <summary>Point of the far curve, in plan [mm].</summary>
    /// <param name="turn">Tangent angle [rad].</param>
    public Point PlanFar(double turn) => _farStart + new Point(_farX.At(turn), _farY.At(turn));

    /// <summary>A function along the sweep as a series.</summary>
    /// <param name="function">The function of the tangent angle.</param>
    public Series SeriesOf(Func<double, double> function)
    {
        var values = Array.ConvertAll(Chebyshev.Nodes(Terms), node => function(node * Sweep));
        return new(Chebyshev.Fit(values, out _, 0), Sweep);
    }

    private static (Series X, Series Y) PositionOf(BendSpan bend, int terms)
    {
        var sweep = bend.Sweep.Radians;
        var nodes = Chebyshev.Nodes(terms);
        var x = Array.ConvertAll(nodes, node => bend.RadiusAtTurn(node * sweep) * Math.Cos(node * sweep));
        var y = Array.ConvertAll(nodes, node => bend.RadiusAtTurn(node * sweep) * Math.Sin(node * sweep));
        return (new Series(Chebyshev.Fit(x, out _, 0), sweep).Integral(), new Series(Chebyshev.Fit(y, out _, 0), sweep).Integral());
    }

    private static int TermsFor(BendSpan near, BendSpan far)
    {
        const double nothing = 1e-14;
        for (var terms = 32; terms <= 512; terms *= 2)
        {
            var nodes = Chebyshev.Nodes(terms);
            Chebyshev.Fit(Array.ConvertAll(nodes, node => near.RadiusAtTurn(node * near.Sweep.Radians)), out var isNear, nothing);
            Chebyshev.Fit(Array.ConvertAll(nodes, node => far.RadiusAtTurn(node * far.Sweep.Radians)), out var isFar, nothing);
            if (isNear && isFar)
                return Math.Max(64, terms);
        }

        throw new NoSolutionException(
            "curve.too-slender", "panel.curve", $"an end curve changes its radius too sharply for a taper", $"a rounder ellipse or a gentler progression");
    }

    // Rulings that meet inside the panel leave no width at the place where they do.
    private void CheckRulings(double thickness)
    {
        const int samples = 128;
        double meetsAt = double.PositiveInfinity, tightest = double.PositiveInfinity;
        for (var i = 0; i <= samples; i++)
        {
            var ruling = At(Sweep * i / samples);
            var narrowest = Math.Min(ruling.NearWidth, ruling.FarWidth);
            if (narrowest <= 0)
                meetsAt = Math.Min(meetsAt, HeightMm * Math.Clamp(ruling.NearWidth / (ruling.NearWidth - ruling.FarWidth), 0, 1));
            tightest = Math.Min(tightest, Math.Min(ruling.NearBendRadius, ruling.FarBendRadius));
        }

        if (double.IsFinite(meetsAt))
        {
            throw new NoSolutionException(
                "taper.rulings-cross",
                "panel.curve.length",
                $"the rulings meet {Figure.Length(meetsAt)} from the near end, inside the panel's {Figure.Length(HeightMm)}",
                $"a length short of where they meet, or a larger radius at the narrow end");
        }

        var least = 0.7 * thickness;
        if (!(tightest >= least))
        {
            throw new NoSolutionException(
                "curve.too-tight",
                "panel.curve",
                $"the inside bending radius goes down to {Figure.Length(tightest - (thickness / 2))} in a sheet of {Figure.Length(thickness)}",
                $"an inside radius of at least {Figure.Length(least - (thickness / 2))} everywhere");
        }
    }
}
