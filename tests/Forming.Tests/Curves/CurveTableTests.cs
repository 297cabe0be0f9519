using Forming.Contact;
using Forming.Curves;
using Forming.Facets;
using Forming.Layout;

namespace Forming.Tests.Curves;

/// <summary>Places, lengths and radii of every law against published and computed tables.</summary>
public class CurveTableTests
{
    private const double Scale = 100; // tables of unit curves, taken to the size of a panel

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

    [Theory]
    [Published("involute-places.csv")]
    public void A_radius_that_grows_evenly_with_the_turn_runs_through_the_involutes_places(
        double degrees, double x, double y, double s, double radius)
    {
        var curve = Workshop.Progressive(50, 50 + (20 * Math.PI), 180, ProgressiveLaw.Involute);
        var place = Workshop.Traced(curve).At(Measure.TurnedAngle, degrees * Workshop.Degree);
        At(x, y, place.Position);
        Workshop.Within(2e-8, s, place.MidMm);
        Workshop.Within(1e-6, radius, 1 / place.FinishedCurvature);
    }

    // The involute starts with no radius at all, which no sheet takes: it is joined at t = 1.
    [Theory]
    [Published("circle-involute.csv")]
    public void The_involute_of_a_circle_is_such_a_curve(double t, double x, double y, double s)
    {
        var curve = new ProgressiveCurve(Scale, 2 * Math.PI * Scale, new(2 * Math.PI - 1), ProgressiveLaw.Involute);
        var place = Workshop.Traced(curve).At(Measure.TurnedAngle, t - 1);
        double startX = Math.Cos(1) + Math.Sin(1), startY = Math.Sin(1) - Math.Cos(1);
        var along = Point.Along(1);
        var from = new Point(x - startX, y - startY);
        At(Scale * from.Dot(along), Scale * from.Dot(along.Left()), place.Position);
        Workshop.Within(2e-8, Scale * (s - 0.5), place.MidMm);
    }

    [Theory]
    [Published("clothoid-a100.csv")]
    public void A_curvature_that_grows_evenly_from_flat_runs_through_the_clothoids_places(
        double s, double radius, double degrees, double x, double y)
    {
        var curve = new ProgressiveCurve(null, 50, new(2), ProgressiveLaw.Clothoid);
        var place = Workshop.Traced(curve).At(Measure.MidLength, s);
        At(x, y, place.Position);
        Workshop.Within(1e-6, radius, 1 / place.FinishedCurvature);
        Workshop.Within(1e-6, degrees, place.Turn / Workshop.Degree);
    }

    // kappa = s/A²: at t = 3 the clothoid has turned 9 pi/2 on a length of 3 A sqrt(pi).
    [Theory]
    [Published("abramowitz-stegun-table-7-7.csv")]
    public void The_clothoid_is_that_of_the_Fresnel_tables(double t, double c, double s)
    {
        var unit = Scale * Math.Sqrt(Math.PI);
        var curve = new ProgressiveCurve(null, Scale * Scale / (3 * unit), new(4.5 * Math.PI), ProgressiveLaw.Clothoid);
        var run = Workshop.Traced(curve);
        Workshop.Near(3 * unit, run.MidMm, 1e-12);
        At(unit * c, unit * s, run.At(Measure.MidLength, t * unit).Position);
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

    [Theory]
    [Published("logarithmic-spiral.csv")]
    public void A_radius_that_grows_by_the_same_share_each_degree_is_the_logarithmic_spiral(double theta, double r, double radius, double s)
    {
        var start = Math.Sqrt(1.04) * Scale;
        var curve = new ProgressiveCurve(start, Math.Exp(0.4 * Math.PI) * start, new(2 * Math.PI), ProgressiveLaw.Logarithmic);
        var place = Workshop.Traced(curve).At(Measure.TurnedAngle, theta);
        Workshop.Within(1e-7, Scale * s, place.MidMm);
        Workshop.Within(1e-7, Scale * radius, 1 / place.FinishedCurvature);
        // The spiral's own heading at theta = 0 makes an angle of atan(1/b) with the radius.
        var heading = Math.Atan(5);
        var from = (r * Point.Along(theta)) - new Point(1, 0);
        At(Scale * from.Dot(Point.Along(heading)), Scale * from.Dot(Point.Along(heading).Left()), place.Position);
    }

    [Theory]
    [Published("elliptic-integrals.csv")]
    public void A_quarter_of_an_ellipse_is_as_long_as_the_elliptic_integral(double m, double e)
    {
        var b = Scale * Math.Sqrt(1 - m);
        Workshop.Near(Scale * e, Length(Quarter(Scale, b)), 1e-11);
        Workshop.Near(Scale * e, Length(Quarter(b, Scale)), 1e-11);
    }

    [Theory]
    [Published("ellipse-perimeters.csv")]
    public void An_ellipse_is_as_long_as_its_perimeter(double a, double b, double perimeter)
    {
        Workshop.Near(Scale * perimeter, Length(new EllipseCurve(a * Scale, b * Scale, Angle.Zero, Angle.FromDegrees(360))), 1e-10);
        Workshop.Near(Scale * perimeter, Length(new EllipseCurve(a * Scale, b * Scale, Angle.FromDegrees(-37), Angle.FromDegrees(323))), 1e-10);
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

    // Folds half as round as the arc: the facets are half of the way from the chords of the arc to the flats of its tangent polygon,
    // (rho - p) 2 sin(a/2) + p 2 tan(a/2), and their mold lines half as far outside it as the polygon's ridges.
    [Theory]
    [Published("tangent-polygons.csv")]
    public void Facets_around_an_arc_lie_between_its_chords_and_its_tangent_polygon(
        double radius, double degrees, double flat, double ridge, double arc)
    {
        var step = degrees * Workshop.Degree;
        var run = Workshop.Traced(Workshop.Arc(radius, 4 * degrees));
        var fold = new FoldShape(radius / 4, radius / 4, 0.5);
        ContactPoint[] places = [.. Enumerable.Range(0, 5).Select(j => run.At(Measure.TurnedAngle, j * step))];
        var polygon = FormPolygon.Through(places, 0, 4 * step, fold);
        Workshop.Within(1e-6, arc, places[1].MidMm);
        Workshop.Within(1e-6, ((2 * radius * Math.Sin(step / 2)) + flat) / 2, polygon.Facets[1]);
        var moldLine = polygon.Centres[2] - (fold.OuterRadiusMm / Math.Cos(polygon.Angles[2] / 2) * Point.Along(2 * step).Left());
        Workshop.Within(1e-6, radius + (ridge / 2), (moldLine - new Point(0, radius)).Length);
    }

    private static EllipseCurve Quarter(double x, double y) => new(x, y, Angle.Zero, Angle.FromDegrees(90));

    private static double Length(PanelCurve curve) => FinishedCurve.On(curve, Surface.Mid, 1e-9).LengthMm;

    private static void At(double x, double y, Point place)
    {
        Workshop.Within(3e-8, x, place.X);
        Workshop.Within(3e-8, y, place.Y);
    }
}
