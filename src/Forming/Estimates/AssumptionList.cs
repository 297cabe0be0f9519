using Forming.Results;

namespace Forming.Estimates;

/// <summary>A value that nobody gave, and what is used in its place.</summary>
/// <param name="Id">Path of the value in the request, such as <c>rates.form.folding.each</c>.</param>
/// <param name="Value">The value in use.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Text">What it is, in words.</param>
/// <param name="Status">How well it is supported.</param>
public sealed record Assumption(string Id, double Value, RateUnit Unit, string Text, Status Status);

/// <summary>Every value of an estimate that equals its default, whoever gave it: the list must follow from the values alone.</summary>
internal static class AssumptionList
{
    // What a rate loses on its way through feet or pounds with nine decimals.
    private const double Same = 1e-6;

    /// <summary>The assumptions in use.</summary>
    /// <param name="job">The job.</param>
    /// <param name="quantities">What there is to do on its form.</param>
    public static IReadOnlyList<Assumption> Of(EstimateJob job, FormQuantities quantities)
    {
        var list = new List<Assumption>(50);
        AddElements(list, "rates.form.", job.Rates.Form.ByElement, FormRates.Default.ByElement, "a form");
        AddElements(list, "rates.panel.", job.Rates.Panel.ByElement, PanelRates.Default.ByElement, "a panel");
        if (!job.HasOwnPrices)
            AddPrices(list, job);
        AddCounts(list, job, quantities);
        if (!job.Learning.Learns)
            list.Add(new("learning.rate", 1, RateUnit.None, "no panel is faster than the one before", Status.Assumption));
        AddSpread(list, "form", "time to build the form", job.Spreads.Form, EstimateSpreads.Default.Form);
        AddSpread(list, "panel", "time of a panel", job.Spreads.Panel, EstimateSpreads.Default.Panel);
        AddSpread(list, "material", "price of sheet", job.Spreads.Material, EstimateSpreads.Default.Material);
        if (job.Pieces == 1)
            list.Add(new("batch.pieces", 1, RateUnit.None, "a single panel", Status.Assumption));
        if (job.Other is { MinutesPerPiece: 0 })
            list.Add(new("otherMethod.minutesPerPiece", 0, RateUnit.Minutes, "the other method's cost for each panel includes all of its labour", Status.Assumption));
        return list;
    }

    private static void AddElements(
        List<Assumption> list,
        string where,
        IReadOnlyList<(string Id, ElementRate Rate)> rates,
        IReadOnlyList<(string Id, ElementRate Rate)> defaults,
        string what)
    {
        foreach (var ((id, rate), (_, standard)) in rates.Zip(defaults))
        {
            var (field, name) = (where + FieldOf(id), id.Replace('-', ' '));
            Add(list, field + ".fixed", rate.FixedMinutes, standard.FixedMinutes, RateUnit.Minutes, $"time of {name}, once for {what}");
            var unit = WorkWords.IsByLength(id) ? RateUnit.MinutesPerMetre : RateUnit.Minutes;
            Add(list, field + ".each", rate.EachMinutes, standard.EachMinutes, unit, $"time of {name}, for each {WorkWords.EachOf(id)}");
        }
    }

    private static void AddPrices(List<Assumption> list, EstimateJob job)
    {
        Add(list, "rates.labour", job.Rates.LabourPerHour, NominalPrices.LabourPerHour, RateUnit.MoneyPerHour, "labour of one person, a nominal price without a currency");
        AddSheet("rates.formSheet.perMass", job.FormSheet, job.Form.Sheet);
        AddSheet("rates.panelSheet.perMass", job.PanelSheet, job.Panel.Sheet);

        void AddSheet(string id, SheetPrice price, Materials.Sheet sheet)
        {
            if (price is PricePerKg perKg)
                Add(list, id, perKg.Money, NominalPrices.SheetPerKg(sheet.Material.Family), RateUnit.MoneyPerKg, "price of the sheet, a nominal price without a currency");
        }
    }

    private static void AddCounts(List<Assumption> list, EstimateJob job, FormQuantities quantities)
    {
        var counts = job.Counts;
        AddCount("handlings", counts.Handlings, quantities.Handlings, "folded from both edges to the middle: laid in, turned end for end once; no order of folds was searched");
        AddCount("stopChanges", counts.StopChanges, quantities.StopChanges, "changes of the stop in that order, by the plan's stop settings");
        AddCount("strips", counts.Strips, quantities.Strips, job.Form.Stop is null ? "test strips to set the stop" : "the stop is known from strips already");
        AddCount("checks", counts.Checks, quantities.Checks, "a check by template after every third fold and at the end");

        void AddCount(string field, int? given, int used, string text)
        {
            if (given is null)
                list.Add(new("counts." + field, used, RateUnit.None, text, Status.Assumption));
        }
    }

    private static void AddSpread(List<Assumption> list, string group, string what, Spread spread, Spread standard)
    {
        Add(list, $"spread.{group}.low", spread.Low, standard.Low, RateUnit.None, $"low bound over the likely {what}");
        Add(list, $"spread.{group}.high", spread.High, standard.High, RateUnit.None, $"high bound over the likely {what}");
    }

    private static void Add(List<Assumption> list, string id, double value, double standard, RateUnit unit, string text)
    {
        if (Math.Abs(value - standard) <= Same * standard)
            list.Add(new(id, value, unit, text, Status.Assumption));
    }

    // test-strips is testStrips in a request.
    private static string FieldOf(string id)
    {
        var dash = id.IndexOf('-', StringComparison.Ordinal);
        return dash < 0 ? id : string.Concat(id.AsSpan(0, dash), id[(dash + 1)..(dash + 2)].ToUpperInvariant(), id.AsSpan(dash + 2));
    }
}
