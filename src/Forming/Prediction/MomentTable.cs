using Forming.Springback;

namespace Forming.Prediction;

/// <summary>Moment against curvature on first loading, tabulated; the closed form is exact but takes a Newton iteration.</summary>
/// <remarks>
/// Cubic Hermite in cells of equal width within each doubling of the curvature, so that the number's own bits are the cell's number.
/// Beyond the curvature of a fold the sheet lies on it, and only its stiffness is left.
/// </remarks>
internal sealed class MomentTable
{
    private const int CellBits = 4; // 16 cells a doubling
    private const int Shift = 52 - CellBits;

    private static readonly long First = BitConverter.DoubleToInt64Bits(1) >> Shift;

    private readonly double[] _moment;
    private readonly double[] _growth; // dM/dkappa
    private readonly double _mostMoment;

    /// <summary>Tabulates a law.</summary>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="mostCurvature">Curvature of the mid surface lying on a fold [1/mm].</param>
    public MomentTable(BendingLaw law, double mostCurvature)
    {
        Stiffness = law.Stiffness;
        YieldCurvature = law.YieldCurvature;
        MostCurvature = Math.Max(mostCurvature, YieldCurvature * 1.01);
        _mostMoment = law.At(MostCurvature).MomentPerWidth;
        var cells = CellOf(MostCurvature / YieldCurvature) + 1;
        (_moment, _growth) = (new double[cells + 1], new double[cells + 1]);
        for (var i = 0; i <= cells; i++)
        {
            var state = law.At(StartOf(i) * YieldCurvature);
            _moment[i] = state.MomentPerWidth;
            _growth[i] = i == 0 ? Stiffness : state.TangentStiffness;
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
    /// <param name="rate">dM/dkappa [N·mm²/mm].</param>
    public double At(double curvature, out double rate)
    {
        if (curvature <= YieldCurvature)
        {
            rate = Stiffness;
            return Stiffness * curvature;
        }

        if (curvature >= MostCurvature)
        {
            rate = Stiffness;
            return _mostMoment + (Stiffness * (curvature - MostCurvature));
        }

        var u = curvature / YieldCurvature;
        var i = CellOf(u);
        var start = StartOf(i);
        var width = StartOf(i + 1) - start;
        double x = (u - start) / width, rise = _moment[i + 1] - _moment[i], cell = width * YieldCurvature;
        double a = (_growth[i] * cell) - rise, b = rise - (_growth[i + 1] * cell);
        rate = (rise + ((1 - (2 * x)) * ((a * (1 - x)) + (b * x))) + (x * (1 - x) * (b - a))) / cell;
        return _moment[i] + (x * rise) + (x * (1 - x) * ((a * (1 - x)) + (b * x)));
    }

    private static int CellOf(double u) => (int)((BitConverter.DoubleToInt64Bits(u) >> Shift) - First);

    private static double StartOf(int cell) => BitConverter.Int64BitsToDouble((cell + First) << Shift);
}
