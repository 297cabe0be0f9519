using MathNet.Numerics.Statistics;

namespace Forming.Prediction;

/// <summary>Divides the panel into elements, from the clamp to the hand: finer where the bend gathers, at the folds.</summary>
internal static class StripMesh
{
    private const int MostPerFacet = 24;

    /// <summary>How much shorter the elements at the folds are than those between them.</summary>
    private const double Gathering = 0.5;

    private const double LeverGrowth = 1.35;

    /// <summary>Divides a strip.</summary>
    /// <param name="circles">The folds.</param>
    /// <param name="setup">Clamp and hand.</param>
    /// <param name="perFacet">Elements of a usual facet.</param>
    /// <returns>[n] lengths of the elements [mm].</returns>
    public static double[] Lengths(FoldCircles circles, WrapSetup setup, int perFacet)
    {
        var lengths = new List<double>();
        var usual = circles.Spans.Median();
        if (setup.ClampGapMm > 0)
            Even(lengths, setup.ClampGapMm, (int)Math.Clamp(Math.Ceiling(perFacet * setup.ClampGapMm / usual), 2, MostPerFacet));
        for (var j = 0; j + 1 < circles.Spans.Length; j++)
        {
            var count = perFacet * Math.Sqrt(circles.Spans[j] / usual);
            Gathered(lengths, circles.Spans[j], (int)Math.Clamp(Math.Round(count), perFacet, MostPerFacet));
        }

        Growing(lengths, circles.Spans[^1] / perFacet, setup.LeverMm, perFacet + 2);
        return [.. lengths];
    }

    private static void Even(List<double> lengths, double length, int count)
    {
        for (var i = 0; i < count; i++)
            lengths.Add(length / count);
    }

    private static void Gathered(List<double> lengths, double length, int count)
    {
        for (var i = 0; i < count; i++)
            lengths.Add(length * (Share(i + 1) - Share(i)));

        double Share(int i)
        {
            var x = (double)i / count;
            return x - (Gathering * Math.Sin(2 * Math.PI * x) / (2 * Math.PI));
        }
    }

    // The bend runs one facet on beyond the last fold; from there the sheet is nearly straight.
    private static void Growing(List<double> lengths, double first, double length, int even)
    {
        var start = lengths.Count;
        double sum = 0, step = first;
        while (sum < length)
        {
            lengths.Add(step);
            sum += step;
            if (lengths.Count - start >= even)
                step *= LeverGrowth;
        }

        for (var i = start; i < lengths.Count; i++)
            lengths[i] *= length / sum;
    }
}
