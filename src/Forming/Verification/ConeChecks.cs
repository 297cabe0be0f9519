using Forming.Curves;
using Forming.Tapers;

namespace Forming.Verification;

/// <summary>A taper between two arcs about one axis against the flat pattern of a right cone.</summary>
internal static class ConeChecks
{
    private const int Places = 16;

    /// <summary>The tables.</summary>
    public static IEnumerable<CheckTable> Tables() =>
    [
        CheckTable.Read("frustum-sectors", "Flat pattern of a frustum of a right cone", "radii {near} and {far} mm, height {height} mm", Frustum),
    ];

    // Half a turn of the frustum on its mid surface, in a sheet thin enough not to matter. Its rulings' flat lines meet in the apex,
    // the edges are arcs about it: the place that is furthest off is taken for all.
    private static CheckValue[] Frustum(PrintedRow row)
    {
        var formed = new Lazy<FormedPanel>(() => FormedPanel.Solve(
            RuledPanel.Of(
                new TaperCurve(Half(row["near"]), Half(row["far"]), row["height"], TaperPlacement.Concentric, default), Surface.Mid, 1e-3),
            _ => 1));
        var flat = new Lazy<FlatPanel>(() => new(formed.Value));
        return
        [
            row.Within("slant", "slant length", "mm", 5e-7, () => formed.Value.Panel.At(1).Length),
            row.Within("inner", "radius of the near edge in the flat", "mm", 5e-6, () => Furthest(flat.Value, flat.Value.NearAt, row["inner"])),
            row.Within("outer", "radius of the far edge in the flat", "mm", 5e-6, () => Furthest(flat.Value, flat.Value.FarAt, row["outer"])),
            row.Within("sector", "angle of the flat sector, whole turn", "°", 1e-5, () => 2 * new Angle(Math.Abs(Turned(flat.Value))).Degrees),
            row.Within("area", "area of half a turn", "mm²", 5e-7 * row["area"], () => flat.Value.CurvedAreaMm2),
        ];
    }

    private static ArcCurve Half(double radius) => new(radius, Angle.FromDegrees(180));

    private static double Turned(FlatPanel flat)
    {
        Point first = flat.FarAt(0) - flat.NearAt(0), last = flat.FarAt(Math.PI) - flat.NearAt(Math.PI);
        return Math.Atan2(first.Cross(last), first.Dot(last));
    }

    private static double Furthest(FlatPanel flat, Func<double, Point> edge, double expected)
    {
        Point from = flat.NearAt(0), along = flat.FarAt(0) - from, other = flat.NearAt(Math.PI), across = flat.FarAt(Math.PI) - other;
        var apex = from + ((other - from).Cross(across) / along.Cross(across) * along);
        return Enumerable.Range(0, Places + 1)
            .Select(i => (edge(Math.PI * i / Places) - apex).Length)
            .MaxBy(radius => Math.Abs(radius - expected));
    }
}
