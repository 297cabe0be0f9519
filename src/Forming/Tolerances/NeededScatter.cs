using Forming.Layout;

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
    /// <param name="form">The planned form.</param>
    /// <param name="accuracy">Its bias and mark scatter count; its scatter is what is asked for.</param>
    /// <param name="wanted">The tolerance.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static NeededScatter For(
        FoldedPolygon form, FoldAccuracy accuracy, WantedTolerance wanted, CancellationToken cancellation = default)
    {
        var n = form.Folds;
        var closing = (wanted.Closing.Radians - (n * Math.Abs(accuracy.Bias.Radians))) / (wanted.Coverage * Math.Sqrt(n));
        var (folds, marks, lean) = ErrorPropagation.Influences(form);
        var room = (wanted.EndMm - Math.Abs(accuracy.Bias.Radians) * lean.Length) / wanted.Coverage;
        var left = (room * room) - (accuracy.MarkScatterMm * accuracy.MarkScatterMm * marks.LargestMm2);
        var end = room > 0 && left > 0 ? Math.Sqrt(left / folds.LargestMm2) : 0;
        return new(new(Math.Max(0, closing)), new(end), new(Exact(form, accuracy, wanted, end, cancellation)));
    }

    private static double Exact(
        FoldedPolygon form, FoldAccuracy accuracy, WantedTolerance wanted, double guess, CancellationToken cancellation)
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

        bool Meets(double scatter) =>
            ErrorPropagation.Exact(form, accuracy with { Scatter = new(scatter) }, cancellation).ReachMm(wanted.Coverage) <= wanted.EndMm;
    }
}
