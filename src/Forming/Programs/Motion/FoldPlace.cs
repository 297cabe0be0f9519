using Forming.Programs.Brakes;

namespace Forming.Programs.Motion;

/// <summary>A third of a fold's length; what lies past an end counts to that end.</summary>
public enum FoldPlace
{
    /// <summary>At the near end.</summary>
    Near,

    /// <summary>In the middle.</summary>
    Middle,

    /// <summary>At the far end.</summary>
    Far,
}

/// <summary>What thirds of a fold are called.</summary>
public static class FoldPlaceWords
{
    /// <summary>The word for it, in files and on sheets.</summary>
    /// <param name="place">The place.</param>
    public static string Word(this FoldPlace place) => place switch
    {
        FoldPlace.Near => "near",
        FoldPlace.Far => "far",
        _ => "middle",
    };
}

/// <summary>Finds where along its fold a taper comes nearest to something.</summary>
internal static class NearestPlace
{
    private const int Samples = 32;

    /// <summary>The third of a fold's length in which a place lies.</summary>
    /// <param name="along">From the near end [mm].</param>
    /// <param name="lengthMm">Length of the fold [mm].</param>
    public static FoldPlace Of(double along, double lengthMm) => (3 * along / lengthMm) switch
    {
        < 1 => FoldPlace.Near,
        > 2 => FoldPlace.Far,
        _ => FoldPlace.Middle,
    };

    /// <summary>The nearest place of one side to some jaws.</summary>
    /// <param name="side">The side.</param>
    /// <param name="placed">[n] its points where they lie [mm].</param>
    /// <param name="jaws">The jaws.</param>
    /// <param name="counts">Which stretches count.</param>
    /// <returns>Distance of the mid surface, and its place from the fold's near end [mm].</returns>
    public static (double Mm, double Along) To(PartSide side, Point[] placed, IReadOnlyList<Jaw> jaws, Func<Stretch, bool> counts)
    {
        var least = (Mm: double.PositiveInfinity, Along: 0.0);
        foreach (var stretch in side.Beyond)
        {
            if (!counts(stretch))
                continue;
            var (from, to) = (placed[stretch.From], placed[stretch.To]);
            var (begin, end) = (AlongOf(stretch.From), AlongOf(stretch.To));
            foreach (var jaw in jaws)
            {
                if (!(Distance.To(from, to, jaw, least.Mm) < least.Mm))
                    continue;
                for (var i = 0; i <= Samples; i++)
                {
                    var share = (double)i / Samples;
                    var point = from + (share * (to - from));
                    var distance = Distance.To(point, point, jaw, least.Mm);
                    if (distance < least.Mm)
                        least = (distance, begin + (share * (end - begin)));
                }
            }
        }

        return least;

        double AlongOf(int point)
        {
            var line = side.InSpace!.Lines[point / 2];
            return point % 2 == 0 ? line.Near.Z : line.Far.Z;
        }
    }
}
