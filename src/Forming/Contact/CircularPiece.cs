using Forming.Springback;

namespace Forming.Contact;

/// <summary>A bend of constant radius, in closed form.</summary>
/// <param name="mid">Mid-surface length [mm].</param>
/// <param name="finishedCurvature">Wanted mid-surface curvature [1/mm].</param>
/// <param name="state">The panel's state under load.</param>
/// <param name="thickness">The panel's thickness [mm].</param>
internal sealed class CircularPiece(double mid, double finishedCurvature, BentState state, double thickness) : ContactPiece
{
    private readonly double _contactRadius = (1 / state.Curvature) - (thickness / 2);

    public override double Turn { get; } = state.Curvature * mid;

    public override double Mid => mid;

    public override PieceGrowth At(double u)
    {
        var turn = u * Turn;
        var (sin, cos) = Math.SinCos(turn);
        return new(turn, u * mid, new(_contactRadius * sin, _contactRadius * (1 - cos)));
    }

    public override double ParameterAt(CurveMeasure measure, double value) => value / Total(measure);

    public override double FinishedCurvatureAt(double u) => finishedCurvature;

    public override BentState StateAt(double u) => state;
}
