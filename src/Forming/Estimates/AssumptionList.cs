using Forming.Results;

namespace Forming.Estimates;

/// <summary>A value that nobody gave, and what is used in its place.</summary>
/// <param name="Id">Path of the value in the request, such as <c>rates.form.folding.each</c>.</param>
/// <param name="Value">The value in use.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Text">What it is, in words.</param>
/// <param name="Status">How well it is supported.</param>
public sealed record AssumedValue(string Id, double Value, RateUnit Unit, string Text, Status Status)
{
    /// <summary>Whether it is a nominal price, in no currency.</summary>
    public bool IsNominal { get; init; }
}

/// <summary>Every value of an estimate that equals its default, whoever gave it: the list must follow from the values alone.</summary>
internal static class AssumptionList
{
    // What a rate loses on its way through feet or pounds with nine decimals.
    private const double Same = 1e-6;

    /// <summary>The assumptions in use.</summary>
    /// <param name="job">The job.</param>
    /// <param name="quantities">What there is to do on its form.</param>
    /// <param name="crew">Who and what a panel needs.</param>
    /// <param name="form">Sheet of its form.</param>
    /// <param name="panel">Sheet of its panels.</param>
    public static IReadOnlyList<AssumedValue> Of(EstimateJob job, FormQuantities quantities, Crew crew, SheetBill form, SheetBill panel)
    {
        var list = new List<AssumedValue>(70);
        AddElements(list, "rates.form.", job.Rates.Form.ByElement, FormRates.Default.ByElement, _ => "once for a form");
        AddElements(list, "rates.panel.", job.Rates.Panel.ByElement, PanelRates.Default.ByElement, id => id == "set-up" ? "once for the batch" : "once for a panel");
        if (!job.HasOwnPrices)
            AddPrices(list, job);
        AddScrap(list, "rates.formSheet", form);
        AddScrap(list, "rates.panelSheet", panel);
        Add(list, "rates.overhead", job.Rates.Overhead, EstimateRates.DefaultOverhead, RateUnit.None, "rent, power and the office, as a share of labour and sheet", Status.CommonPractice);
        Add(list, "rates.minimumCharge", job.MinimumCharge, EstimateRates.StandardMinimum(job.Rates.LabourPerHour), RateUnit.Money, "least price of a job: an hour of labour", Status.CommonPractice);
        AddCounts(list, job, quantities, crew);
        if (!job.Learning.Learns)
            list.Add(new("learning.rate", 1, RateUnit.None, "no panel is faster than the one before", Status.Assumption));
        AddSpread(list, "form", "time to build the form", job.Spreads.Form, EstimateSpreads.Default.Form);
        AddSpread(list, "panel", "time of a panel", job.Spreads.Panel, EstimateSpreads.Default.Panel);
        AddSpread(list, "material", "price of sheet", job.Spreads.Material, EstimateSpreads.Default.Material);
        if (job.Pieces is [1])
            list.Add(new("pieces", 1, RateUnit.None, "a single panel", Status.Assumption));
        AddBumping(list, job);
        if (job.Other is { MinutesPerPiece: 0 })
            list.Add(new("otherMethod.minutesPerPiece", 0, RateUnit.Minutes, "the other method's cost for each panel includes all of its labour", Status.Assumption));
        return list;
    }

    private static void AddElements(
        List<AssumedValue> list,
        string where,
        IReadOnlyList<(string Id, ElementRate Rate, WorkUnit Unit)> rates,
        IReadOnlyList<(string Id, ElementRate Rate, WorkUnit Unit)> defaults,
        Func<string, string> once)
    {
        foreach (var ((id, rate, counted), (_, standard, _)) in rates.Zip(defaults))
        {
            var (field, name) = (where + FieldOf(id), id.Replace('-', ' '));
            Add(list, field + ".fixed", rate.FixedMinutes, standard.FixedMinutes, RateUnit.Minutes, $"time of {name}, {once(id)}");
            var unit = counted == WorkUnit.Metre ? RateUnit.MinutesPerMetre : RateUnit.Minutes;
            Add(list, field + ".each", rate.EachMinutes, standard.EachMinutes, unit, $"time of {name}, for each {WorkWords.EachOf(counted)}");
        }
    }

    private static void AddPrices(List<AssumedValue> list, EstimateJob job)
    {
        AddNominal("rates.labour", job.Rates.LabourPerHour, NominalPrices.LabourPerHour, RateUnit.MoneyPerHour, "labour of one person");
        AddSheet("rates.formSheet.perMass", job.FormSheet, job.Form.Sheet);
        AddSheet("rates.panelSheet.perMass", job.PanelSheet, job.Panel.Sheet);

        void AddSheet(string id, SheetPurchase purchase, Materials.Sheet sheet)
        {
            if (purchase.Price is PricePerKg perKg)
                AddNominal(id, perKg.Money, NominalPrices.SheetPerKg(sheet.Material.Family), RateUnit.MoneyPerKg, "price of the sheet");
        }

        void AddNominal(string id, double value, double standard, RateUnit unit, string text)
        {
            if (IsSame(value, standard))
                list.Add(new(id, value, unit, $"{text}, a nominal price without a currency", Status.Assumption) { IsNominal = true });
        }
    }

    private static void AddScrap(List<AssumedValue> list, string id, SheetBill bill)
    {
        if (bill.FoundScrapShare is { } share)
        {
            list.Add(new(id + ".scrapShare", share, RateUnit.None, bill.IsNested
                ? "the area used is paid for, with what a stock sheet full of these blanks leaves over as scrap"
                : "share of scrap of a sheet cut to order: no stock sheet is large enough for this blank", Status.Assumption));
        }
    }

    private static void AddCounts(List<AssumedValue> list, EstimateJob job, FormQuantities quantities, Crew crew)
    {
        var counts = job.Counts;
        AddCount("handlings", counts.Handlings, quantities.Handlings, "folded from both edges to the middle: laid in, turned end for end once; no order of folds was searched");
        AddCount("stopChanges", counts.StopChanges, quantities.StopChanges, "changes of the stop in that order, by the plan's stop settings");
        AddCount("strips", counts.Strips, quantities.Strips, job.Form.Stop is null ? "test strips to set the stop" : "the stop is known from strips already");
        AddCount("checks", counts.Checks, quantities.Checks, "a check by template after every third fold and at the end");
        AddCount("ribs", counts.Ribs, quantities.Ribs, "the ribs of the plan, none under a bare form; cut from offcuts, their material is not priced");
        AddCount("trials", counts.Trials, job.Trials, "trial panels bent before the first good one, their sheet lost", Status.CommonPractice);
        AddCount("people", counts.People, crew.People, crew.UsesWinch
            ? "people beside a winch or press, by the mass of the panel"
            : "people who lay up, clamp and pull: as many as the pull, the width and the mass need, at least those of panel.pull.by");
        AddCount("clamps", counts.Clamps, crew.Clamps, "clamps of each pull: as many as the clamp load needs (a good screw clamp, from memory), and one at both ends and close enough between", Status.FromMemory);

        void AddCount(string field, int? given, int used, string text, Status status = Status.Assumption)
        {
            if (given is null)
                list.Add(new("counts." + field, used, RateUnit.None, text, status));
        }
    }

    private static void AddBumping(List<AssumedValue> list, EstimateJob job)
    {
        var (bumping, standard) = (job.Bumped, new Bumping());
        if (bumping is { HitAngle: { } angle, PitchMm: { } pitch })
        {
            Add(list, "bumping.angle", angle.Degrees, Bumping.StandardAngle.Degrees, RateUnit.Degrees, "turn of a hit; trade articles, from memory", Status.CommonPractice);
            Add(list, "bumping.pitch", pitch, Bumping.PitchFor(job.Panel.Sheet.ThicknessMm), RateUnit.Length, "least pitch of the hits, half the die opening; trade articles, from memory", Status.CommonPractice);
        }

        Add(list, "bumping.hour", bumping.HourMoney ?? job.Rates.LabourPerHour, job.Rates.LabourPerHour, RateUnit.MoneyPerHour, "an hour of the brake costs an hour of labour");
        Add(list, "bumping.setUp", bumping.SetUpMinutes, standard.SetUpMinutes, RateUnit.Minutes, "time to set up punch, die and gauge for bumping, once for the batch");
        Add(list, "bumping.hit", bumping.HitMinutes, standard.HitMinutes, RateUnit.Minutes, "time of each hit, for each person who supports the panel");
        Add(list, "bumping.correcting", bumping.CorrectingMinutes, standard.CorrectingMinutes, RateUnit.Minutes, "time to check a bumped bend by template and hit it again");
    }

    private static void AddSpread(List<AssumedValue> list, string group, string what, Spread spread, Spread standard)
    {
        Add(list, $"spread.{group}.low", spread.Low, standard.Low, RateUnit.None, $"low bound over the likely {what}");
        Add(list, $"spread.{group}.high", spread.High, standard.High, RateUnit.None, $"high bound over the likely {what}");
    }

    private static void Add(
        List<AssumedValue> list, string id, double value, double standard, RateUnit unit, string text, Status status = Status.Assumption)
    {
        if (IsSame(value, standard))
            list.Add(new(id, value, unit, text, status));
    }

    private static bool IsSame(double value, double standard) => Math.Abs(value - standard) <= Same * standard;

    // test-strips is testStrips in a request.
    private static string FieldOf(string id)
    {
        var dash = id.IndexOf('-', StringComparison.Ordinal);
        return dash < 0 ? id : string.Concat(id.AsSpan(0, dash), id[(dash + 1)..(dash + 2)].ToUpperInvariant(), id.AsSpan(dash + 2));
    }
}
