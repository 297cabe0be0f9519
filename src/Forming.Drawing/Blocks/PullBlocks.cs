using System.Globalization;
using Forming.Drawing.Sheets;
using Forming.Results;

namespace Forming.Drawing.Blocks;

/// <summary>The card for the pull: how far the hand has turned the sheet, and how hard it pulls, as the panel reaches each fold.</summary>
internal static class PullBlocks
{
    private static readonly PoleColumn[] Columns =
        [new("fold", 12), new("sheet's end at", 45, IsBold: true), new("hand force", 80)];

    /// <summary>Draws the card; nothing where no pull was simulated.</summary>
    /// <param name="job">The job.</param>
    public static IEnumerable<Block> Of(DrawingJob job)
    {
        if (job.Plan.Panel.Prediction is not { } prediction)
            return [];
        var rows = prediction.Steps.Select(step => (IReadOnlyList<string>)
        [
            step.Fold > job.Plan.Form.Stations.Count ? "lead-out" : step.Fold.ToString(CultureInfo.InvariantCulture),
            Readout.Degrees(step.EndAngle),
            job.Wording($"{Figure.Force(step.ForcePerWidth * prediction.WidthMm)}"),
        ]).ToArray();
        return rows.Length == 0
            ? []
            : [TableBlocks.Of("Pull", "as the panel reaches each fold, in simulation", Columns, rows, new HashSet<int>())];
    }
}
