using Forming.Blanks;

namespace Forming.Estimates;

/// <summary>Lengths of edges of a flat blank.</summary>
internal static class BlankEdges
{
    /// <summary>All round [mm].</summary>
    /// <param name="blank">The blank.</param>
    public static double RoundMm(Blank blank)
    {
        var outline = blank.Outline;
        double sum = 0;
        for (var i = 1; i < outline.Count; i++)
            sum += (outline[i] - outline[i - 1]).Length;
        return sum;
    }

    /// <summary>Both edges along the folds, where a panel is trimmed [mm].</summary>
    /// <param name="blank">The blank; its outline runs along the near edge and comes back along the far one, point for point.</param>
    public static double EndsMm(Blank blank)
    {
        var outline = blank.Outline;
        var half = (outline.Count - 1) / 2;
        return (outline[0] - outline[^2]).Length + (outline[half - 1] - outline[half]).Length;
    }
}
