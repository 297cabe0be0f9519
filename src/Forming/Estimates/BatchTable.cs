namespace Forming.Estimates;

/// <summary>One panel of the batch, likely values.</summary>
/// <param name="Piece">Which panel, from 1.</param>
/// <param name="Minutes">Its own labour [min].</param>
/// <param name="Cost">Its own labour and sheet, without the form [money].</param>
/// <param name="TotalMinutes">Form and panels up to and with this one [min].</param>
/// <param name="TotalCost">Form and panels up to and with this one [money].</param>
/// <param name="AverageCost">The same for each panel [money].</param>
public sealed record PieceFigure(int Piece, double Minutes, double Cost, double TotalMinutes, double TotalCost, double AverageCost);

/// <summary>How a batch goes, panel by panel, at a few panels of it.</summary>
internal static class BatchTable
{
    /// <summary>The first panel, 2, 5, 10, 20, 50 … and the last.</summary>
    /// <param name="line">Cost of form and panels.</param>
    /// <param name="formMinutes">Building the form [min].</param>
    /// <param name="firstMinutes">The first panel [min].</param>
    /// <param name="pieces">Panels of the batch, at least 1.</param>
    public static IReadOnlyList<PieceFigure> Of(CostLine line, double formMinutes, double firstMinutes, int pieces)
    {
        var counts = CountsTo(pieces);
        var totals = line.Learning.Totals(counts);
        return
        [
            .. counts.Select((n, i) =>
            {
                var cost = line.Fixed + (line.FirstLabour * totals[i]) + (line.Material * n);
                return new PieceFigure(
                    n, firstMinutes * line.Learning.Unit(n), line.Own(n), formMinutes + (firstMinutes * totals[i]), cost, cost / n);
            }),
        ];
    }

    private static List<int> CountsTo(int pieces)
    {
        var counts = new List<int>();
        for (var decade = 1; decade < pieces; decade *= 10)
            counts.AddRange(new[] { decade, 2 * decade, 5 * decade }.Where(count => count < pieces));
        counts.Add(pieces);
        return counts;
    }
}
