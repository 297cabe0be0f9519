namespace Forming.Drawing.Sheets;

/// <summary>Spreads labels that would lie on one another, each as near to its own place as the others allow.</summary>
internal static class LabelSpacing
{
    /// <summary>Places with at least a given distance between neighbours and the least sum of squared shifts.</summary>
    /// <param name="wanted">[n] wanted places, rising.</param>
    /// <param name="pitch">Least distance between neighbours.</param>
    /// <param name="least">No place is less than this, as far as there is room.</param>
    /// <param name="most">No place is more than this, as far as there is room.</param>
    /// <returns>[n] places, rising.</returns>
    /// <remarks>Isotonic regression by pooling neighbours: with the pitch taken out, places must only not fall.</remarks>
    public static double[] Apart(IReadOnlyList<double> wanted, double pitch, double least, double most)
    {
        var pools = new Stack<(double Mean, int Count)>();
        for (var i = 0; i < wanted.Count; i++)
        {
            var pool = (Mean: wanted[i] - (i * pitch), Count: 1);
            while (pools.TryPeek(out var before) && before.Mean > pool.Mean)
            {
                pools.Pop();
                pool = (((before.Mean * before.Count) + (pool.Mean * pool.Count)) / (before.Count + pool.Count), before.Count + pool.Count);
            }

            pools.Push(pool);
        }

        var highest = Math.Max(least, most - ((wanted.Count - 1) * pitch));
        var places = new List<double>(wanted.Count);
        foreach (var (mean, count) in pools.Reverse())
        {
            for (var i = 0; i < count; i++)
                places.Add(Math.Clamp(mean, least, highest) + (places.Count * pitch));
        }

        return [.. places];
    }
}
