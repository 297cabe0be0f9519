using Forming.Springback;

namespace Forming.Prediction;

/// <summary>Moment against curvature on first loading, tabulated; the closed form is exact but takes a Newton iteration.</summary>
/// <remarks>Cubic Hermite over ln kappa. Beyond the curvature of a fold the sheet lies on it, and only its stiffness is left.</remarks>
internal sealed class MomentTable
{
    private const int Cells = 200;

    private readonly double[] moment = new double[Cells + 1];
    private readonly double[] slope = new double[Cells + 1]; // dM/d(ln kappa) × cell
    private readonly double lowLog;
    private readonly double cell;

    /// <summary>Tabulates a law.</summary>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="mostCurvature">Curvature of the mid surface lying on a fold [1/mm].</param>
    public MomentTable(BendingLaw law, double mostCurvature)
    {
        Stiffness = law.Stiffness;
        YieldCurvature = law.YieldCurvature;
        MostCurvature = Math.Max(mostCurvature, YieldCurvature * 1.01);
        lowLog = Math.Log(YieldCurvature);
        cell = (Math.Log(MostCurvature) - lowLog) / Cells;
        for (var i = 0; i <= Cells; i++)
        {
            var state = law.At(Math.Exp(lowLog + (i * cell)));
            moment[i] = state.MomentPerWidth;
            slope[i] = state.TangentStiffness * state.Curvature * cell;
        }
    }

    /// <summary>E'I per width [N·mm²/mm].</summary>
    public double Stiffness { get; }

    /// <summary>Curvature at first yield [1/mm].</summary>
    public double YieldCurvature { get; }

    /// <summary>Curvature of the sheet lying on a fold [1/mm].</summary>
    public double MostCurvature { get; }

    /// <summary>Moment and its growth with the curvature.</summary>
    /// <param name="curvature">Curvature under load [1/mm], at least as much as ever before.</param>
    /// <param name="growth">dM/dkappa [N·mm²/mm].</param>
    public double At(double curvature, out double growth)
    {
        if (curvature <= YieldCurvature)
        {
            growth = Stiffness;
            return Stiffness * curvature;
        }

        if (curvature >= MostCurvature)
        {
            growth = Stiffness;
            return moment[Cells] + (Stiffness * (curvature - MostCurvature));
        }

        var at = (Math.Log(curvature) - lowLog) / cell;
        var i = Math.Min((int)at, Cells - 1);
        double x = at - i, rise = moment[i + 1] - moment[i];
        double a = slope[i] - rise, b = rise - slope[i + 1];
        growth = (rise + ((1 - (2 * x)) * ((a * (1 - x)) + (b * x))) + (x * (1 - x) * (b - a))) / (cell * curvature);
        return moment[i] + (x * rise) + (x * (1 - x) * ((a * (1 - x)) + (b * x)));
    }
}
