using MathNet.Numerics.Statistics;

namespace Forming.Prediction;

/// <summary>Divides the panel into elements, from the clamp to the hand: finer where the bend gathers, at the folds.</summary>
internal static class StripMesh
{
    /// <summary>Elements of a usual facet: six keep its ripple within a tenth of the limit of many.</summary>
    private const int PerFacet = 6;

    private const int MostPerFacet = 24;

    /// <summary>How much shorter the elements at the folds are than those between them.</summary>
    private const double Gathering = 0.5;

    private const double LeverGrowth = 1.35;

    /// <summary>Divides a strip.</summary>
    /// <param name="circles">The folds.</param>
    /// <param name="setup">Clamp and hand.</param>
    /// <returns>[n] lengths of the elements [mm].</returns>
    public static double[] Lengths(FoldCircles circles, WrapSetup setup)
    {
        var lengths = new List<double>();
        var usual = circles.Spans.Median();
        if (setup.ClampGapMm > 0)
            Even(lengths, setup.ClampGapMm, (int)Math.Clamp(Math.Ceiling(PerFacet * setup.ClampGapMm / usual), 2, MostPerFacet));
        for (var j = 0; j + 1 < circles.Spans.Length; j++)
        {
            var count = PerFacet * Math.Sqrt(circles.Spans[j] / usual);
            Gathered(lengths, circles.Spans[j], (int)Math.Clamp(Math.Round(count), PerFacet, MostPerFacet));
        }

        Growing(lengths, circles.Spans[^1] / PerFacet, setup.LeverMm);
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
    private static void Growing(List<double> lengths, double first, double length)
    {
        var start = lengths.Count;
        double sum = 0, step = first;
        while (sum < length)
        {
            lengths.Add(step);
            sum += step;
            if (lengths.Count - start >= PerFacet + 2)
                step *= LeverGrowth;
        }

        for (var i = start; i < lengths.Count; i++)
            lengths[i] *= length / sum;
    }
}
