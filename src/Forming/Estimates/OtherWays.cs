namespace Forming.Estimates;

/// <summary>A form against other ways to make its panels.</summary>
internal static class OtherWays
{
    private const string BumpingName = "bumping the panel in a press brake";

    private const string RollingName = "rolling the panel";

    private static readonly Func<Band, double>[] Bounds =
        [static band => band.Low, static band => band.Likely, static band => band.High];

    /// <summary>Bumping, and whatever the caller gives besides.</summary>
    /// <param name="job">The job.</param>
    /// <param name="pricing">What it costs with a form.</param>
    /// <param name="anyMethod">Minutes of a panel that any way of the same shop takes.</param>
    /// <param name="hits">What bumping takes.</param>
    /// <param name="prices">What it costs with a form at the counts asked for.</param>
    public static IReadOnlyList<Comparison> Of(
        EstimateJob job, Pricing pricing, Band anyMethod, BumpHits hits, IReadOnlyList<PriceRow> prices)
    {
        var (aMinute, bumping) = (job.Rates.LabourPerMinute, job.Bumped);
        var bumped = (bumping.HourMoney ?? job.Rates.LabourPerHour) / 60;
        var comparisons = new List<Comparison>(3)
        {
            Compare(OtherWay.Bumping, BumpingName, hits, bound => InShop(
                bound, bumped * bumping.SetUpMinutes, bumped * bumping.PanelMinutes(hits))),
        };
        if (job.Rolling is { } rolling)
        {
            var rolled = rolling.HourMoney / 60;
            comparisons.Add(Compare(OtherWay.Rolling, RollingName, null, bound => InShop(
                bound, rolled * rolling.SetUpMinutes, rolled * rolling.PanelMinutes)));
        }

        if (job.Other is { } other)
        {
            var each = other.CostPerPiece + ((1 + job.Rates.Overhead) * aMinute * other.MinutesPerPiece);
            comparisons.Add(Compare(OtherWay.Other, other.Name, null, _ => new(other.FixedCost, 0, each, LearningCurve.None)));
        }

        return comparisons;

        CostLine InShop(Func<Band, double> bound, double once, double labour) =>
            pricing.LineOf(once, labour + (aMinute * bound(anyMethod)), bound);

        Comparison Compare(OtherWay way, string name, BumpHits? hits, Func<Func<Band, double>, CostLine> lineOf)
        {
            CostLine[] lines = [.. Bounds.Select(lineOf)];
            BreakEven[] evens = [.. Bounds.Select((bound, i) => BreakEven.Search(pricing.FormLine(bound), lines[i]))];
            return new(way, name, hits, [.. prices.Select(row => Row(row, way, lines))], evens[0], evens[1], evens[2]);
        }

        ComparedCost Row(PriceRow row, OtherWay way, CostLine[] lines)
        {
            var cost = way == OtherWay.Other ? Bought(row.Pieces, lines) : Made(row.Pieces, lines);
            var mine = row.Costs.Total;
            return new(row.Pieces, cost, new(cost.High - mine.High, cost.Likely - mine.Likely, cost.Low - mine.Low));
        }

        static Band Bought(int pieces, CostLine[] lines) => BandOf(i => lines[i].Once + (pieces * lines[i].Material));

        // Any way of the same shop buys the same sheet for the same panels.
        Band Made(int pieces, CostLine[] lines) =>
            BandOf(i => lines[i].Once + (pricing.Learnt(pieces) * lines[i].FirstLabour))
            + ((1 + job.Rates.Overhead) * pricing.PanelSheet(pieces).Cost);

        static Band BandOf(Func<int, double> at) => new(at(0), at(1), at(2));
    }
}
