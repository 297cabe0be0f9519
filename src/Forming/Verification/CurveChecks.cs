using Forming.Contact;
using Forming.Curves;
using Forming.Facets;
using Forming.Folds;
using Forming.Materials;
using Forming.Springback;

namespace Forming.Verification;

/// <summary>Places, lengths and radii of every law, and facets around an arc, against published and computed tables.</summary>
internal static class CurveChecks
{
    private const double Scale = 100; // tables of unit curves, taken to the size of a panel

    /// <summary>How far a place may be off on a curve of that size [mm].</summary>
    private const double PlaceMm = 3e-8;

    /// <summary>The tables.</summary>
    public static IEnumerable<CheckTable> Tables() =>
    [
        CheckTable.Read("involute-places", "Involute law: radius linear in the turned angle", "radius from 50 mm, growing by 20 mm a radian; turned {degrees}°", Involute),
        CheckTable.Read("circle-involute", "Involute of a circle", "unit circle, t = {t}", CircleInvolute),
        CheckTable.Read("clothoid-a100", "Clothoid law: curvature linear in the length", "clothoid of parameter 100 mm, {s} mm from its flat end", Clothoid),
        CheckTable.Read("abramowitz-stegun-table-7-7", "Fresnel integrals, as the places of a clothoid", "t = {t}", Fresnel),
        CheckTable.Read("logarithmic-spiral", "Logarithmic law", "r = e^(0.2 θ), θ = {theta}", Logarithmic),
        CheckTable.Read("elliptic-integrals", "Complete elliptic integral of the second kind, as a quarter of an ellipse", "m = {m}", EllipticIntegral),
        CheckTable.Read("ellipse-perimeters", "Perimeter of an ellipse", "semi-axes {a} and {b}", Perimeter),
        CheckTable.Read("tangent-polygons", "Facets around an arc, between its chords and its tangent polygon", "radius {radius} mm, a fold every {degrees}°", TangentPolygon),
    ];

    private static CheckValue[] Involute(PrintedRow row)
    {
        var place = new Lazy<ContactPoint>(() => TracedCurve
            .Of(new ProgressiveCurve(50, 50 + (20 * Math.PI), Angle.FromDegrees(180), ProgressiveLaw.Involute))
            .At(CurveMeasure.TurnedAngle, Angle.FromDegrees(row["degrees"]).Radians));
        return
        [
            row.Within("x", "x", "mm", PlaceMm, () => place.Value.Position.X),
            row.Within("y", "y", "mm", PlaceMm, () => place.Value.Position.Y),
            row.Within("s", "length", "mm", 2e-8, () => place.Value.MidMm),
            row.Within("radius", "radius", "mm", 1e-6, () => 1 / place.Value.FinishedCurvature),
        ];
    }

    // The involute starts with no radius at all, which no sheet takes: it is joined at t = 1.
    private static CheckValue[] CircleInvolute(PrintedRow row)
    {
        var place = new Lazy<ContactPoint>(() => TracedCurve
            .Of(new ProgressiveCurve(Scale, 2 * Math.PI * Scale, new((2 * Math.PI) - 1), ProgressiveLaw.Involute))
            .At(CurveMeasure.TurnedAngle, row["t"] - 1));
        var start = new Point(Math.Cos(1) + Math.Sin(1), Math.Sin(1) - Math.Cos(1));
        Point Place() => start + InFrame(place.Value.Position, 1);
        return
        [
            row.Within("x", "x from the circle's centre", "", PlaceMm / Scale, () => Place().X),
            row.Within("y", "y from the circle's centre", "", PlaceMm / Scale, () => Place().Y),
            row.Within("s", "length", "", 2e-8 / Scale, () => (place.Value.MidMm / Scale) + 0.5),
        ];
    }

    private static CheckValue[] Clothoid(PrintedRow row)
    {
        var place = new Lazy<ContactPoint>(() => TracedCurve
            .Of(new ProgressiveCurve(null, 50, new(2), ProgressiveLaw.Clothoid))
            .At(CurveMeasure.MidLength, row["s"]));
        return
        [
            row.Within("radius", "radius", "mm", 1e-6, () => 1 / place.Value.FinishedCurvature),
            row.Within("degrees", "turned angle", "°", 1e-6, () => new Angle(place.Value.Turn).Degrees),
            row.Within("x", "x", "mm", PlaceMm, () => place.Value.Position.X),
            row.Within("y", "y", "mm", PlaceMm, () => place.Value.Position.Y),
        ];
    }

    // kappa = s/A²: at t = 3 the clothoid has turned 9 pi/2 on a length of 3 A sqrt(pi).
    private static CheckValue[] Fresnel(PrintedRow row)
    {
        var unit = Scale * Math.Sqrt(Math.PI);
        var place = new Lazy<Point>(() => TracedCurve
            .Of(new ProgressiveCurve(null, Scale * Scale / (3 * unit), new(4.5 * Math.PI), ProgressiveLaw.Clothoid))
            .At(CurveMeasure.MidLength, row["t"] * unit).Position);
        return
        [
            row.Within("c", "C(t)", "", PlaceMm / unit, () => place.Value.X / unit),
            row.Within("s", "S(t)", "", PlaceMm / unit, () => place.Value.Y / unit),
        ];
    }

    // The spiral's own heading at theta = 0 makes an angle of atan(1/b) with the radius.
    private static CheckValue[] Logarithmic(PrintedRow row)
    {
        var start = Math.Sqrt(1.04) * Scale;
        var place = new Lazy<ContactPoint>(() => TracedCurve
            .Of(new ProgressiveCurve(start, Math.Exp(0.4 * Math.PI) * start, new(2 * Math.PI), ProgressiveLaw.Logarithmic))
            .At(CurveMeasure.TurnedAngle, row["theta"]));
        Point Place() => new Point(1, 0) + InFrame(place.Value.Position, Math.Atan(5));
        return
        [
            row.Within("r", "distance from the pole", "", PlaceMm / Scale, () => Place().Length),
            row.Within("theta", "polar angle, turns aside", "rad", PlaceMm / Scale / row["r"], () =>
                row["theta"] + Math.IEEERemainder(Math.Atan2(Place().Y, Place().X) - row["theta"], 2 * Math.PI)),
            row.Within("radius", "radius of curvature", "", 1e-7 / Scale, () => 1 / place.Value.FinishedCurvature / Scale),
            row.Within("s", "length", "", 1e-7 / Scale, () => place.Value.MidMm / Scale),
        ];
    }

    private static CheckValue[] EllipticIntegral(PrintedRow row)
    {
        var b = Scale * Math.Sqrt(1 - row["m"]);
        return
        [
            row.Near("e", "E(m)", "", 1e-11, () => Length(new EllipseCurve(Scale, b, Angle.Zero, Angle.FromDegrees(90))) / Scale),
            row.Check(
                "e-turned", "E(m), axes exchanged", "", row["e"], 1e-11 * row["e"],
                () => Length(new EllipseCurve(b, Scale, Angle.Zero, Angle.FromDegrees(90))) / Scale),
        ];
    }

    private static CheckValue[] Perimeter(PrintedRow row)
    {
        double From(double degrees) =>
            Length(
                new EllipseCurve(row["a"] * Scale, row["b"] * Scale, Angle.FromDegrees(degrees), Angle.FromDegrees(360 + degrees))) / Scale;
        return
        [
            row.Near("perimeter", "perimeter", "", 1e-10, () => From(0)),
            row.Check("perimeter-turned", "perimeter, begun 37° earlier", "", row["perimeter"], 1e-10 * row["perimeter"], () => From(-37)),
        ];
    }

    // Folds half as round as the arc: the facets are half of the way from the chords of the arc to the flats of its tangent polygon,
    // (rho - p) 2 sin(a/2) + p 2 tan(a/2), and their mold lines half as far outside it as the polygon's ridges.
    private static CheckValue[] TangentPolygon(PrintedRow row)
    {
        var radius = row["radius"];
        var step = Angle.FromDegrees(row["degrees"]).Radians;
        var fold = new FoldShape(radius / 4, radius / 4, 0.5);
        var places = new Lazy<ContactPoint[]>(() =>
        {
            var run = TracedCurve.Of(new ArcCurve(radius, new(4 * step)));
            return [.. Enumerable.Range(0, 5).Select(j => run.At(CurveMeasure.TurnedAngle, j * step))];
        });
        var polygon = new Lazy<FormPolygon>(() => FormPolygon.Through(places.Value, 0, 4 * step, fold));
        return
        [
            row.Within("flat", "flat of the tangent polygon, from facets half of the way to it", "mm", 2e-6, () =>
                (2 * polygon.Value.Facets[1]) - (2 * radius * Math.Sin(step / 2))),
            row.Within("ridge", "ridge outside the arc, from mold lines half as far out", "mm", 2e-6, () =>
            {
                var outside = fold.OuterRadiusMm / Math.Cos(polygon.Value.Angles[2] / 2) * Point.Along(2 * step).Left();
                return 2 * ((polygon.Value.Centres[2] - outside - new Point(0, radius)).Length - radius);
            }),
            row.Within("arc", "arc from fold to fold", "mm", 1e-6, () => places.Value[1].MidMm),
        ];
    }

    // Curves start at (0, 0) heading +x; a table's own curve heads elsewhere.
    private static Point InFrame(Point place, double heading) =>
        1 / Scale * ((place.X * Point.Along(heading)) + (place.Y * Point.Along(heading).Left()));

    private static double Length(PanelCurve curve) => FinishedCurve.On(curve, Surface.Mid, TracedCurve.FilmMm).LengthMm;
}

/// <summary>A finished curve by itself.</summary>
internal static class TracedCurve
{
    /// <summary>A panel so thin that its mid surface is the curve itself [mm].</summary>
    public const double FilmMm = 1e-9;

    /// <summary>The curve as a sheet without thickness to speak of, which does not spring back.</summary>
    /// <param name="curve">The curve.</param>
    public static CurvedRun Of(PanelCurve curve)
    {
        var law = BendingLaw.Of(new Sheet(TextbookMetal.Perfect(70e3, 0.33, 100), FilmMm));
        return ContactCurve.Solve(FinishedCurve.On(curve, Surface.Mid, FilmMm), new(law, MeasuredFactor: 1), FilmMm).Runs[0];
    }
}
