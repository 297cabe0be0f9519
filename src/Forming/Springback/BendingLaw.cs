using Forming.Materials;

namespace Forming.Springback;

/// <summary>Moment and curvature of a wide sheet in pure bending, and how it springs back.</summary>
/// <remarks>
/// Plane strain, <c>E' = E/(1 - v²)</c>, <c>Y' = 2Y/√3</c>: source key <c>marciniak-duncan-hu</c>, eq. 6.10. Past yield the stress is
/// <c>Y' (1 + p/e0)^n</c> with the plastic strain p. Everything is a closed form in the skin's plastic strain, so that is the unknown
/// that is solved for. Inside, strains are in units of the yield strain <c>ey = Y'/E'</c>, curvatures of the yield curvature and
/// moments of the first-yield moment: u = 1 and mu = 1 at first yield.
/// </remarks>
public sealed class BendingLaw
{
    private readonly Across _across;
    private readonly double _hardening;
    private readonly double _beta; // e0/ey

    private BendingLaw(BendingLaw other, FlowCurve flow)
    {
        Flow = flow;
        _across = other._across;
        ThicknessMm = other.ThicknessMm;
        PlaneModulusMpa = other.PlaneModulusMpa;
        PlaneYieldMpa = other.PlaneYieldMpa;
        YieldCurvature = other.YieldCurvature;
        Stiffness = other.Stiffness;
        FirstYieldMoment = other.FirstYieldMoment;
        _hardening = flow.Hardening;
        _beta = Beta(flow, _across, PlaneModulusMpa, PlaneYieldMpa);
    }

    private BendingLaw(BendingLaw other, double strength)
    {
        _across = other._across;
        Flow = other.Flow with { YieldMpa = strength * other.Flow.YieldMpa };
        ThicknessMm = other.ThicknessMm;
        PlaneModulusMpa = other.PlaneModulusMpa;
        PlaneYieldMpa = strength * other.PlaneYieldMpa;
        YieldCurvature = strength * other.YieldCurvature;
        Stiffness = other.Stiffness;
        FirstYieldMoment = strength * other.FirstYieldMoment;
        _hardening = other._hardening;
        _beta = other._beta / strength;
    }

    private BendingLaw(Sheet sheet, FlowCurve flow, double yieldMpa, Across across)
    {
        var (material, square) = (sheet.Material, sheet.Material.PoissonRatio * sheet.Material.PoissonRatio);
        Flow = flow;
        _across = across;
        ThicknessMm = sheet.ThicknessMm;
        PlaneModulusMpa = material.YoungsModulusMpa * (1 - (across.PlaneStress * square)) / (1 - square);
        PlaneYieldMpa = across.Constraint * yieldMpa;
        YieldCurvature = 2 * PlaneYieldMpa / (PlaneModulusMpa * ThicknessMm);
        Stiffness = PlaneModulusMpa * ThicknessMm * ThicknessMm * ThicknessMm / 12;
        FirstYieldMoment = PlaneYieldMpa * ThicknessMm * ThicknessMm / 6;
        _hardening = flow.Hardening;
        _beta = Beta(flow, across, PlaneModulusMpa, PlaneYieldMpa);
    }

    /// <summary>The flow curve in use.</summary>
    public FlowCurve Flow { get; }

    /// <summary>Thickness [mm].</summary>
    public double ThicknessMm { get; }

    /// <summary>E' [MPa]; of a narrow strip down to E.</summary>
    public double PlaneModulusMpa { get; }

    /// <summary>Y' [MPa]; of a narrow strip down to Y.</summary>
    public double PlaneYieldMpa { get; }

    /// <summary>Curvature at first yield, <c>2Y'/(E't)</c> [1/mm]; eq. 6.19.</summary>
    public double YieldCurvature { get; }

    /// <summary>Bending stiffness E'I per width [N·mm²/mm].</summary>
    public double Stiffness { get; }

    /// <summary>Moment at first yield, <c>Y't²/6</c> per width [N·mm/mm]; eq. 6.18.</summary>
    public double FirstYieldMoment { get; }

    /// <summary>The law of a sheet.</summary>
    /// <param name="sheet">Material and thickness.</param>
    public static BendingLaw Of(Sheet sheet) => new(sheet, FlowCurve.Of(sheet.Material), sheet.Material.YieldMpa, Across.Wide);

    /// <summary>The law of a sheet with a measured effective yield stress; its hardening keeps its shape.</summary>
    /// <param name="sheet">Material and thickness.</param>
    /// <param name="yieldMpa">Effective yield stress [MPa], &gt; 0.</param>
    public static BendingLaw WithYield(Sheet sheet, double yieldMpa) => new(sheet, FlowCurve.Of(sheet.Material), yieldMpa, Across.Wide);

    /// <summary>The law of a strip whose edges curl against the bend, so that it lies between plane stress and plane strain.</summary>
    /// <param name="sheet">Material and thickness.</param>
    /// <param name="planeStress">
    /// Share of plane stress: 0, a wide sheet, has E' and Y'; 1, a narrow strip, E and Y; <see cref="StripWidth.PlaneStress"/> between.
    /// </param>
    public static BendingLaw OfStrip(Sheet sheet, double planeStress) =>
        new(sheet, FlowCurve.Of(sheet.Material), sheet.Material.YieldMpa, Across.Of(planeStress));

    /// <summary>The same law with the whole flow curve scaled: Y and K by one factor, eps0 and n as they are.</summary>
    /// <param name="factor">The factor, &gt; 0.</param>
    public BendingLaw Stronger(double factor) => new(this, factor);

    /// <summary>The same law with another exponent n, through the same yield stress at the same eps0.</summary>
    /// <param name="factor">On the exponent, &gt; 0.</param>
    public BendingLaw Hardened(double factor) => new(this, Flow with { Hardening = factor * Flow.Hardening });

    /// <summary>The same law with a straight flow curve past yield.</summary>
    /// <param name="slopeMpa">Slope of the flow curve in tension [MPa], &gt; 0.</param>
    public BendingLaw WithLinearHardening(double slopeMpa)
    {
        var yieldMpa = _across.Freedom * PlaneYieldMpa;
        return new(this, new FlowCurve(yieldMpa, 1, yieldMpa / slopeMpa, Flow.Origin));
    }

    /// <summary>The state at a curvature under load, loaded for the first time.</summary>
    /// <param name="curvature">Mid-surface curvature [1/mm], at least 0.</param>
    public BentState At(double curvature)
    {
        var u = curvature / YieldCurvature;
        return u <= 1
            ? new(curvature, Stiffness * curvature, Stiffness, Stiffness * curvature * curvature / 2, false)
            : StateAt(SkinStrainAt(u));
    }

    /// <summary>Curvature left when the load is let go: <c>kappa - M/(E'I)</c>; eq. 6.20.</summary>
    /// <param name="curvature">Mid-surface curvature under load [1/mm], at least 0.</param>
    /// <returns>Released curvature [1/mm]; 0 where the sheet stayed elastic.</returns>
    public double Release(double curvature)
    {
        var state = At(curvature);
        return state.IsPlastic ? curvature - (state.MomentPerWidth / Stiffness) : 0;
    }

    /// <summary>The state under load that springs back to a wanted curvature.</summary>
    /// <param name="finishedCurvature">Wanted curvature [1/mm], at least 0; towards 0 the answer goes to the yield curvature.</param>
    /// <remarks>For n = 0 this inverts the closed form <c>Ri/Rf = 4x³ - 3x + 1</c>: source key <c>gardiner-1957</c>.</remarks>
    public BentState LoadedFor(double finishedCurvature)
    {
        var wanted = finishedCurvature / YieldCurvature;
        if (wanted <= 0)
            return StateAt(0);

        // Value and slope share one power, so they are iterated together here and not through a general root finder.
        // The slope vanishes at q = 0, where this never starts; the function is convex, so steps from the right cannot overshoot.
        var low = 0.0;
        var q = wanted + Math.Min(0.5, Math.Sqrt(2 * wanted / 3));
        for (var i = 0; i < 100; i++)
        {
            var p = PowersAt(q);
            var excess = p.U - p.Mu - wanted;
            if (excess < 0)
                low = q;
            var next = q - (excess / (p.DuDq * (1 - p.DmuDu)));
            if (!(next > low))
                next = (low + q) / 2;
            var step = Math.Abs(next - q);
            q = next;
            if (step <= 1e-14 * q)
                break;
        }

        return StateAt(q);
    }

    private static double Beta(FlowCurve flow, Across across, double modulusMpa, double yieldMpa) =>
        across.Freedom * flow.Prestrain * modulusMpa / yieldMpa;

    private double SkinStrainAt(double u)
    {
        if (_hardening == 0)
            return u - 1;
        var q = u - 1;
        for (var i = 0; i < 100; i++)
        {
            var w = 1 + (q / _beta);
            var s = Math.Pow(w, _hardening);
            var step = (s + q - u) / (1 + (_hardening * s / (w * _beta)));
            var next = q - step;
            q = next > 0 ? next : q / 2;
            if (Math.Abs(step) <= 1e-15 * q)
                break;
        }

        return q;
    }

    private BentState StateAt(double q)
    {
        var p = PowersAt(q);
        return new(
            p.U * YieldCurvature,
            p.Mu * FirstYieldMoment,
            p.DmuDu * Stiffness,
            ((3 * ((p.S * p.S / 2) + p.Flow)) - (p.U * p.Mu)) * FirstYieldMoment * YieldCurvature,
            true);
    }

    // M = (2/kappa²) [ s³/(3E'²) + (p s² + J2)/(2E') + J1 ], W = t U(skin) - kappa M, in the units named above.
    private Powers PowersAt(double q)
    {
        double s = 1, j2 = q, j1 = q * q / 2, flow = q, slope = 0;
        if (_hardening > 0)
        {
            var n = _hardening;
            var x = q / _beta;
            var w = 1 + x;
            s = Math.Pow(w, n);
            slope = n * s / (w * _beta);
            if (x < 1e-3)
            {
                // The differences below lose their digits here; four terms of the binomial series keep them.
                j2 = q * (1 + (n * x * (1 + (((2 * n) - 1) / 3 * x * (1 + (((2 * n) - 2) / 4 * x))))));
                flow = q * (1 + (n * x * (0.5 + ((n - 1) * x * ((1.0 / 6) + ((n - 2) / 24 * x))))));
            }
            else
            {
                j2 = _beta * ((w * s * s) - 1) / ((2 * n) + 1);
                flow = _beta * ((w * s) - 1) / (n + 1);
            }

            // The moment's own difference loses twice as many, so its series goes on for longer.
            j1 = x < 0.02
                ? q * q * (0.5 + (n * x * ((1.0 / 3) + ((n - 1) * x * (0.125 + ((n - 2) * x * ((1.0 / 30)
                    + ((n - 3) * x * ((1.0 / 144) + ((n - 4) * x * ((1.0 / 840) + ((n - 5) * x / 5760))))))))))))
                : _beta * _beta * ((((w * w * s) - 1) / (n + 2)) - (((w * s) - 1) / (n + 1)));
        }

        var u = s + q;
        var mu = 3 * ((s * s * s / 3) + (((q * s * s) + j2) / 2) + j1) / (u * u);
        return new(u, mu, ((3 * s) - (2 * mu)) / u, 1 + slope, s, flow);
    }

    // What holds the sheet across the bend: yield there over yield in tension, and the inverse, which goes with strains.
    private readonly record struct Across(double PlaneStress, double Constraint, double Freedom)
    {
        public static Across Wide { get; } = new(0, 2 / Math.Sqrt(3), Math.Sqrt(3) / 2);

        public static Across Of(double planeStress)
        {
            var constraint = planeStress + ((1 - planeStress) * Wide.Constraint);
            return planeStress == 0 ? Wide : new(planeStress, constraint, 1 / constraint);
        }
    }

    private readonly record struct Powers(double U, double Mu, double DmuDu, double DuDq, double S, double Flow);
}

/// <summary>A wide sheet bent past yield, or not, by pure bending.</summary>
/// <param name="Curvature">Curvature of the mid surface under load [1/mm].</param>
/// <param name="MomentPerWidth">Bending moment [N·mm/mm].</param>
/// <param name="TangentStiffness">Growth of the moment with the curvature [N·mm²/mm].</param>
/// <param name="WorkPerArea">Work done, the integral of the moment over the curvature [N/mm].</param>
/// <param name="IsPlastic">Whether the skin has yielded.</param>
public readonly record struct BentState(
    double Curvature, double MomentPerWidth, double TangentStiffness, double WorkPerArea, bool IsPlastic);
