using Forming.Drawing.Shapes;
using Forming.Drawing.Sheets;

namespace Forming.Drawing.Blocks;

/// <summary>Whether there is room for a text beside what was drawn.</summary>
internal static class FreeRoom
{
    private const double Air = 0.6;

    /// <summary>The first of some texts that lies on nothing, or else the first.</summary>
    /// <param name="sketch">What was drawn.</param>
    /// <param name="right">How far to the right they may reach [mm].</param>
    /// <param name="places">The texts at the places they may have, best first.</param>
    /// <param name="label">The text of a place.</param>
    /// <typeparam name="TPlace">Type of a place.</typeparam>
    public static TPlace Best<TPlace>(Sketch sketch, double right, IReadOnlyList<TPlace> places, Func<TPlace, Label> label)
    {
        var free = places.Where(place => IsFree(sketch, right, label(place))).ToArray();
        return free.Length > 0 ? free[0] : places[0];
    }

    private static bool IsFree(Sketch sketch, double right, Label label)
    {
        var (least, most) = label.Box(Air);
        if (least.X < 0 || most.X > right || least.Y < 0)
            return false;
        return sketch.Items.All(item => item switch
        {
            Label other => other.Box(0) is var (from, to) && (from.X > most.X || to.X < least.X || from.Y > most.Y || to.Y < least.Y),
            Stroke stroke => Pieces(stroke).All(piece => Clip.Inside(piece, least, most) is null),
            _ => true,
        });
    }

    private static IEnumerable<Segment> Pieces(Stroke stroke)
    {
        for (var i = 1; i < stroke.Points.Count; i++)
            yield return new(stroke.Points[i - 1], stroke.Points[i]);
        if (stroke.IsClosed)
            yield return new(stroke.Points[^1], stroke.Points[0]);
    }
}
