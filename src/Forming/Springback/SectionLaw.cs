using Forming.Materials;

namespace Forming.Springback;

/// <summary>Moment against curvature of a wide sheet, with the stress across the bend worked out instead of taken as fully built up.</summary>
/// <remarks>
/// Plane strain along the folds, plane stress through the thickness, von Mises, isotropic hardening by the sheet's flow curve. Every
/// fibre is strained in proportion, so one curve of stress over strain serves all of them and <c>M = 2/kappa² ∫ stress e de</c> up to the
/// skin's strain. The sheet yields at <c>Y/√(1 - v + v²)</c>, before the <c>2Y/√3</c> of <see cref="BendingLaw"/>, and nears that law a
/// few yield curvatures on.
/// </remarks>
public sealed class SectionLaw
{
    /// <summary>Steps of the strain, each by the same ratio.</summary>
    private const double Ratio = 1.02;

    private readonly FlowCurve _flow;
    private readonly double _modulus;
    private readonly double _poisson;
    private readonly double[] _strains;
    private readonly double[] _stresses;
    private readonly double[] _integrals; // of stress times strain up to each strain

    private SectionLaw(Sheet sheet, FlowCurve flow, double mostStrain)
    {
        _flow = flow;
        ThicknessMm = sheet.ThicknessMm;
        (_modulus, _poisson) = (sheet.Material.YoungsModulusMpa, sheet.Material.PoissonRatio);
        PlaneModulusMpa = _modulus / (1 - (_poisson * _poisson));
        YieldStrain = flow.YieldMpa / (PlaneModulusMpa * Math.Sqrt(1 - _poisson + (_poisson * _poisson)));
        var steps = Math.Max(1, (int)Math.Ceiling(Math.Log(mostStrain / YieldStrain) / Math.Log(Ratio)));
        (_strains, _stresses, _integrals) = (new double[steps + 1], new double[steps + 1], new double[steps + 1]);
        _strains[0] = YieldStrain;
        var fibre = new Fibre(PlaneModulusMpa * YieldStrain, _poisson * PlaneModulusMpa * YieldStrain, 0);
        _stresses[0] = fibre.Along;
        _integrals[0] = PlaneModulusMpa * YieldStrain * YieldStrain * YieldStrain / 3;
        for (var i = 0; i < steps; i++)
        {
            _strains[i + 1] = _strains[i] * Ratio;
            (fibre, var work) = Stretched(fibre, _strains[i], _strains[i + 1] - _strains[i]);
            _stresses[i + 1] = fibre.Along;
            _integrals[i + 1] = _integrals[i] + work;
        }
    }

    /// <summary>Thickness [mm].</summary>
    public double ThicknessMm { get; }

    /// <summary>E' [MPa].</summary>
    public double PlaneModulusMpa { get; }

    /// <summary>Strain of a fibre at first yield.</summary>
    public double YieldStrain { get; }

    /// <summary>Curvature at first yield [1/mm].</summary>
    public double YieldCurvature => 2 * YieldStrain / ThicknessMm;

    /// <summary>The law of a sheet.</summary>
    /// <param name="sheet">Material and thickness.</param>
    /// <param name="flow">Its flow curve.</param>
    /// <param name="mostCurvature">Largest curvature that will be asked for [1/mm].</param>
    public static SectionLaw Of(Sheet sheet, FlowCurve flow, double mostCurvature) => new(sheet, flow, mostCurvature * sheet.ThicknessMm / 2);

    /// <summary>Moment at a curvature, loaded for the first time.</summary>
    /// <param name="curvature">Mid-surface curvature [1/mm], from 0 to the largest.</param>
    /// <param name="rate">dM/dkappa [N·mm²/mm].</param>
    /// <returns>Moment [N·mm/mm].</returns>
    public double MomentAt(double curvature, out double rate)
    {
        var half = ThicknessMm / 2;
        var skin = curvature * half;
        if (skin <= YieldStrain)
        {
            rate = PlaneModulusMpa * ThicknessMm * ThicknessMm * ThicknessMm / 12;
            return rate * curvature;
        }

        var i = Math.Min(_strains.Length - 2, (int)(Math.Log(skin / YieldStrain) / Math.Log(Ratio)));
        var x = (skin - _strains[i]) / (_strains[i + 1] - _strains[i]);
        var stress = _stresses[i] + (x * (_stresses[i + 1] - _stresses[i]));
        // Between the steps the stress runs straight, so its integral is a cubic.
        var (e, s) = (_strains[i], _stresses[i]);
        var slope = (_stresses[i + 1] - _stresses[i]) / (_strains[i + 1] - _strains[i]);
        var by = skin - e;
        var integral = _integrals[i] + (by * ((e * s) + (by * (((s + (slope * e)) / 2) + (by * slope / 3)))));
        var moment = 2 * integral / (curvature * curvature);
        rate = ((2 * stress * skin * half / curvature) - (2 * moment)) / curvature;
        return moment;
    }

    // Runge-Kutta of fourth order in stress and plastic strain; the integral by Simpson's rule on the way.
    private (Fibre Fibre, double Integral) Stretched(Fibre from, double strain, double by)
    {
        var k1 = Rate(from);
        var k2 = Rate(from.Plus(k1, by / 2));
        var k3 = Rate(from.Plus(k2, by / 2));
        var k4 = Rate(from.Plus(k3, by));
        var to = from.Plus(k1, by / 6).Plus(k2, by / 3).Plus(k3, by / 3).Plus(k4, by / 6);
        // Half-way by the cubic through both ends and their slopes.
        var middle = ((from.Along + to.Along) / 2) + (by * (k1.Along - Rate(to).Along) / 8);
        return (to, by / 6 * ((from.Along * strain) + (4 * middle * (strain + (by / 2))) + (to.Along * (strain + by))));
    }

    private Fibre Rate(Fibre at)
    {
        var equivalent = Math.Sqrt((at.Along * at.Along) - (at.Along * at.Across) + (at.Across * at.Across));
        double along = ((2 * at.Along) - at.Across) / (2 * equivalent), across = ((2 * at.Across) - at.Along) / (2 * equivalent);
        var hardening = _flow.Hardening == 0
            ? 0
            : _flow.Hardening * _flow.YieldMpa / _flow.Prestrain * Math.Pow(1 + (at.Plastic / _flow.Prestrain), _flow.Hardening - 1);
        double pushAlong = PlaneModulusMpa * (along + (_poisson * across)), pushAcross = PlaneModulusMpa * ((_poisson * along) + across);
        var plastic = pushAlong / ((along * pushAlong) + (across * pushAcross) + hardening);
        return new(PlaneModulusMpa - (plastic * pushAlong), (_poisson * PlaneModulusMpa) - (plastic * pushAcross), plastic);
    }

    /// <summary>Stress along the bend and across it [MPa], and the plastic strain so far; or the rates of all three.</summary>
    private readonly record struct Fibre(double Along, double Across, double Plastic)
    {
        public Fibre Plus(Fibre rate, double by) => new(Along + (by * rate.Along), Across + (by * rate.Across), Plastic + (by * rate.Plastic));
    }
}
