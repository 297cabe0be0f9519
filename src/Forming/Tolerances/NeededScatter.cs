namespace Forming.Tolerances;

/// <summary>
/// The scatter of a fold angle that a wanted tolerance leaves room for; 0 where the bias, or bias and marks, break it alone.
/// </summary>
/// <param name="Closing">For the closing angle.</param>
/// <param name="End">For the end, first order; not shown to be on the safe side.</param>
/// <param name="EndExact">For the end by the exact form.</param>
public sealed record NeededScatter(Angle Closing, Angle End, Angle EndExact)
{
    // Finer than any stop; beyond this a fold is no longer made to a plan.
    private static readonly double Largest = Angle.FromDegrees(45).Radians;
    private const int Halvings = 30;

    /// <summary>Works the values out.</summary>
    /// <param name="form">What errors add up to on the planned form.</param>
    /// <param name="accuracy">Its bias and mark scatter count; its scatter is what is asked for.</param>
    /// <param name="wanted">The tolerance.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    internal static NeededScatter For(
        ErrorSums form, FoldAccuracy accuracy, WantedTolerance wanted, CancellationToken cancellation = default)
    {
        var turn = form.Closing;
        var closing = Within(wanted.Closing.Radians - Math.Abs(turn.Bias(accuracy).Radians), turn.Marks, turn.Squares);
        var end = form.Ends.Min(influence => Within(
            wanted.EndMm - (Math.Abs(accuracy.Bias.Radians) * influence.Lean.Length),
            influence.Marks.LargestMm2,
            influence.Folds.LargestMm2));
        return new(new(closing), new(end), new(Exact(form, accuracy, wanted, end, cancellation)));

        // What bias and marks leave room for.
        double Within(double room, double marks, double folds)
        {
            var deviation = room / wanted.Coverage;
            var left = (deviation * deviation) - (accuracy.MarkScatterMm * accuracy.MarkScatterMm * marks);
            return deviation > 0 && left > 0 ? Math.Sqrt(left / folds) : 0;
        }
    }

    private static double Exact(
        ErrorSums form, FoldAccuracy accuracy, WantedTolerance wanted, double guess, CancellationToken cancellation)
    {
        if (!Meets(0))
            return 0;
        double low = 0, high = Math.Clamp(2 * guess, 1e-6, Largest);
        while (Meets(high))
        {
            if (high >= Largest)
                return Largest;
            (low, high) = (high, Math.Min(Largest, 2 * high));
        }

        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Meets(middle) ? (middle, high) : (low, middle);
        }

        return low;

        bool Meets(double scatter) => form.Exact(accuracy with { Scatter = new(scatter) }, cancellation)
            .All(end => end.ReachMm(wanted.Coverage) <= wanted.EndMm);
    }
}
