using Forming.Curves;

namespace Forming.Tests.Curves;

/// <summary>Curves against their own geometry; their printed tables are checks of the engine (<see cref="Forming.Verification.CheckTables"/>).</summary>
public class CurveGeometryTests
{
    [Theory]
    [InlineData(50, 15)]
    [InlineData(100, 90)]
    [InlineData(75, 340)]
    public void An_arc_runs_round_its_circle(double radius, double degrees)
    {
        var sweep = degrees * Workshop.Degree;
        var end = Workshop.Traced(Workshop.Arc(radius, degrees)).End;
        At(radius * Math.Sin(sweep), radius * (1 - Math.Cos(sweep)), end.Position);
        Workshop.Near(radius * sweep, end.MidMm, 1e-12);
    }

    // kappa = s/A²: at 9 pi/2 the clothoid of parameter A has a length of 3 A sqrt(pi).
    [Fact]
    public void A_clothoid_is_as_long_as_its_parameter_says()
    {
        var unit = 100 * Math.Sqrt(Math.PI);
        var run = Workshop.Traced(new ProgressiveCurve(null, 100 * 100 / (3 * unit), new(4.5 * Math.PI), ProgressiveLaw.Clothoid));
        Workshop.Near(3 * unit, run.MidMm, 1e-12);
    }

    [Fact]
    public void A_clothoid_that_ends_flat_is_the_same_clothoid_backwards()
    {
        var run = Workshop.Traced(new ProgressiveCurve(50, null, new(2), ProgressiveLaw.Clothoid));
        var forwards = Workshop.Traced(new ProgressiveCurve(null, 50, new(2), ProgressiveLaw.Clothoid)).End;
        Workshop.Within(1e-9, forwards.Position.Length, run.End.Position.Length);
        Workshop.Near(forwards.MidMm, run.End.MidMm, 1e-12);
        // Seen from its flat end the curve is the mirror image: the chord makes the same angle with the flat.
        var chordAgainstFlat = Math.Atan2(forwards.Position.Y, forwards.Position.X);
        var chord = Math.Atan2(run.End.Position.Y, run.End.Position.X);
        Workshop.Within(1e-12, chordAgainstFlat, 2 - chord);
    }

    [Fact]
    public void A_quarter_ellipse_ends_one_semi_axis_on_and_one_across()
    {
        // From the normal along x (heading +y, at (a, 0)) to the normal along y (at (0, b)): b ahead, a to the left.
        var end = Workshop.Traced(Quarter(90, 40)).End;
        At(40, 90, end.Position);
        var span = (EllipseSpan)FinishedCurve.On(Quarter(90, 40), Surface.Mid, 1).Spans[0];
        Workshop.Near(40 * 40 / 90.0, span.TightestRadiusMm, 1e-12);
        Workshop.Near(90 * 90 / 40.0, span.GentlestRadiusMm, 1e-12);
    }

    private static EllipseCurve Quarter(double x, double y) => new(x, y, Angle.Zero, Angle.FromDegrees(90));

    private static void At(double x, double y, Point place)
    {
        Workshop.Within(3e-8, x, place.X);
        Workshop.Within(3e-8, y, place.Y);
    }
}
