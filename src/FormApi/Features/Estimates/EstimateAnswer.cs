using System.Text.Json.Serialization;
using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Links;
using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming.Estimates;
using Forming.Plans;
using Forming.Results;

namespace FormApi.Features.Estimates;

/// <summary>
/// Time and cost of a form and its panels. Minutes are of one person; money is in the caller's currency, nothing is converted.
/// </summary>
/// <param name="Engine">Version of the engine that calculated it.</param>
/// <param name="Fingerprint">SHA-256 of canonical request and engine version: the same one is the same answer.</param>
/// <param name="Request">The request with every default shown; null where the plan chooses.</param>
/// <param name="Verdict">The verdict of the plan's checks. A form that cannot be made is estimated too: its failed checks are named, and
/// the estimate is not an offer.</param>
/// <param name="Currency">The caller's label, or null.</param>
/// <param name="Form">Building the form.</param>
/// <param name="SetUp">Getting the bench ready, once for the batch.</param>
/// <param name="Panel">The first panel once the form is built.</param>
/// <param name="Prices">Time, cost and price for every count of <c>pieces</c>, in that order.</param>
/// <param name="Comparisons">The form against bumping the panel directly, and against rolling and the other method where they are
/// given.</param>
/// <param name="Checks">The checks that the plan failed.</param>
/// <param name="Assumptions">Every value that is left at its default. A value that the caller gives is not among them; one that equals the
/// default is, except prices with <c>currency</c> or <c>otherMethod</c>, which are always the caller's.</param>
/// <param name="Notes">What to know about the results.</param>
/// <param name="Safety">Cautions that the work calls for. Local codes, machine manuals and licensed practice come first.</param>
/// <param name="Basis">What every headline value rests on.</param>
/// <param name="Links">The form behind it as links that hold the whole request.</param>
internal sealed record EstimateAnswer(
    string Engine,
    string Fingerprint,
    [property: InFull, WrittenAs(typeof(EstimateRequest))] RawJson Request,
    [property: JsonConverter(typeof(WordConverter<PlanVerdict>))] PlanVerdict Verdict,
    string? Currency,
    FormWorkResult Form,
    WorkElementResult SetUp,
    PanelWorkResult Panel,
    PriceResult[] Prices,
    ComparisonResult[] Comparisons,
    CheckResult[] Checks,
    [property: InFull] AssumptionResult[] Assumptions,
    [property: InFull] ShopNoteResult[] Notes,
    SafetyResult[] Safety,
    [property: InFull] BasisResult[] Basis,
    [property: InFull] LinksResult Links)
{
    private const string NominalMoney = "money";

    /// <summary>The answer to a request.</summary>
    /// <param name="estimate">The estimate.</param>
    /// <param name="currency">The caller's label, or null.</param>
    /// <param name="links">Links of the form behind it.</param>
    /// <param name="shown">The request with every default shown.</param>
    public static EstimateAnswer From(Estimate estimate, string? currency, LinksResult links, NormalizedRequest shown)
    {
        var units = shown.Units;
        var crew = estimate.Crew;
        return new(
            EngineVersion.Current,
            shown.Fingerprint,
            shown.Json,
            estimate.Verdict,
            currency,
            new(estimate.Quantities.Forms, BandOf(estimate.FormMinutes), ElementsOf(estimate.FormWork, units)),
            ElementOf(estimate.SetUp, units),
            new(
                crew.People,
                crew.Clamps,
                crew.UsesWinch,
                estimate.Trials,
                BandOf(estimate.FirstPanelMinutes),
                ElementsOf(estimate.PanelWork, units)),
            Lists.Map(estimate.Prices, row => PriceOf(row, units)),
            Lists.Map(estimate.Comparisons, comparison => ComparisonOf(comparison, units)),
            Lists.Map(estimate.Failed, check => CheckResult.From(check, units)),
            Lists.Map(estimate.Assumptions, assumption => AssumptionOf(assumption, units)),
            Lists.Map(estimate.Notes, note => ShopNoteResult.From(note, units)),
            Lists.Map(estimate.Safety, note => SafetyResult.From(note, units)),
            Lists.Map(estimate.Basis, BasisResult.From),
            links);
    }

    private static BandResult BandOf(Band band) => new(WireNumber.Of(band.Low), WireNumber.Of(band.Likely), WireNumber.Of(band.High));

    private static WorkElementResult[] ElementsOf(IReadOnlyList<WorkElement> work, UnitSystem units) =>
        Lists.Map(work, element => ElementOf(element, units));

    private static WorkElementResult ElementOf(WorkElement element, UnitSystem units) => new(
        element.Id,
        element.Text,
        element.Unit == WorkUnit.Metre ? units.Run(element.Quantity) : WireNumber.Of(element.Quantity),
        NameOf(element.Unit, units),
        element.People,
        BandOf(element.Minutes));

    private static string NameOf(WorkUnit unit, UnitSystem units) => unit switch
    {
        WorkUnit.Metre => units.RunName,
        WorkUnit.StopChange => "stop change",
        WorkUnit.Mark => "mark",
        WorkUnit.Strip => "strip",
        WorkUnit.Handling => "handling",
        WorkUnit.Fold => "fold",
        WorkUnit.Check => "check",
        WorkUnit.Clamp => "clamp",
        WorkUnit.Form => "form",
        WorkUnit.Rib => "rib",
        _ => "pull",
    };

    private static PriceResult PriceOf(PriceRow row, UnitSystem units)
    {
        var costs = row.Costs;
        return new(
            row.Pieces,
            BandOf(row.Minutes),
            BandOf(row.LastPanelMinutes),
            Lists.Map(row.Materials, line => new MaterialLineResult(
                line.Id,
                line.Blanks,
                units.Mass(line.MassKg),
                line.Sheet,
                line.BlanksPerSheet,
                line.Sheets,
                WireNumber.Of(line.ScrapShare),
                BandOf(line.Cost))),
            new(
                BandOf(costs.FormLabour),
                BandOf(costs.FormMaterial),
                BandOf(costs.SetUpLabour),
                BandOf(costs.TrialLabour),
                BandOf(costs.PanelLabour),
                BandOf(costs.PanelMaterial),
                BandOf(costs.Overhead),
                BandOf(costs.Total)),
            BandOf(row.Price),
            row.IsMinimum,
            BandOf(row.EachPrice));
    }

    private static ComparisonResult ComparisonOf(Comparison comparison, UnitSystem units)
    {
        return new(
            comparison.Way,
            comparison.Name,
            comparison.Hits is { } hits
                ? new(
                    hits.Count,
                    UnitSystem.Degrees(hits.Angle),
                    units.Length(hits.PitchMm),
                    units.Length(hits.DieOpeningMm),
                    hits.People)
                : null,
            Lists.Map(comparison.Rows, row => new ComparedCostResult(row.Pieces, BandOf(row.Cost), BandOf(row.Saving))),
            new(PointOf(comparison.Low), PointOf(comparison.Likely), PointOf(comparison.High)));

        BreakEvenPointResult PointOf(BreakEven point) =>
            new(point.Outcome, point.From, point.UpTo, point.IsProven, units.Wording.Of(point.Text));
    }

    private static AssumptionResult AssumptionOf(AssumedValue assumption, UnitSystem units)
    {
        var (value, unit) = assumption.Unit switch
        {
            RateUnit.Minutes => (WireNumber.Of(assumption.Value), "min"),
            RateUnit.MinutesPerMetre => (units.PerRun(assumption.Value), "min/" + units.RunName),
            RateUnit.Length => (units.Length(assumption.Value), units.LengthName),
            RateUnit.Degrees => (WireNumber.Of(assumption.Value), "°"),
            RateUnit.Money => (WireNumber.Of(assumption.Value), NominalMoney),
            RateUnit.MoneyPerHour => (WireNumber.Of(assumption.Value), NominalMoney + "/h"),
            RateUnit.MoneyPerKg => (units.PerMass(assumption.Value), NominalMoney + "/" + units.MassName),
            _ => (WireNumber.Of(assumption.Value), ""),
        };
        return new(assumption.Id, value, unit, assumption.Text, assumption.Status);
    }
}

/// <summary>A value with its bounds. All elements and groups move together: bounds, not a statement of chance.</summary>
/// <param name="Low">Low bound.</param>
/// <param name="Likely">The likely value.</param>
/// <param name="High">High bound.</param>
internal sealed record BandResult(double Low, double Likely, double High);

/// <summary>Building the form.</summary>
/// <param name="Count">Forms that the panel needs: 2 where its halves are of opposite hands.</param>
/// <param name="Minutes">All of it [min].</param>
/// <param name="Elements">By element, all forms together.</param>
internal sealed record FormWorkResult(int Count, BandResult Minutes, WorkElementResult[] Elements);

/// <summary>The first panel.</summary>
/// <param name="People">People who lay up, clamp and pull; the rest is the work of one.</param>
/// <param name="Clamps">Clamps of each pull.</param>
/// <param name="Winch">Whether a winch or press pulls.</param>
/// <param name="Trials">Panels bent before the first good one; they teach as all do.</param>
/// <param name="Minutes">All of it [min].</param>
/// <param name="Elements">By element.</param>
internal sealed record PanelWorkResult(
    int People, int Clamps, bool Winch, int Trials, BandResult Minutes, WorkElementResult[] Elements);

/// <summary>One element of work.</summary>
/// <param name="Id">Stable id such as <c>folding</c>.</param>
/// <param name="Text">What is done.</param>
/// <param name="Quantity">How many, or how long.</param>
/// <param name="Unit">What is counted, or <c>m</c> or <c>ft</c>.</param>
/// <param name="People">How many do it at once, all of whose minutes count.</param>
/// <param name="Minutes">Its time [min].</param>
internal sealed record WorkElementResult(string Id, string Text, double Quantity, string Unit, int People, BandResult Minutes);

/// <summary>One count of panels: what they take, cost, and the price to ask.</summary>
/// <param name="Pieces">Good panels.</param>
/// <param name="Minutes">All of it [min].</param>
/// <param name="LastPanelMinutes">The last panel [min].</param>
/// <param name="Materials">Sheet for form and panels.</param>
/// <param name="Cost">What they cost.</param>
/// <param name="Price">The cost, or <c>rates.minimumCharge</c> where that is more; no profit is added [currency].</param>
/// <param name="IsMinimum">Whether the likely price is the minimum charge.</param>
/// <param name="EachPrice">The price over the panels [currency].</param>
internal sealed record PriceResult(
    int Pieces,
    BandResult Minutes,
    BandResult LastPanelMinutes,
    MaterialLineResult[] Materials,
    CostResult Cost,
    BandResult Price,
    bool IsMinimum,
    BandResult EachPrice);

/// <summary>Sheet for form or panels.</summary>
/// <param name="Id"><c>form-sheet</c> or <c>panel-sheet</c>.</param>
/// <param name="Blanks">Blanks, those of trial panels too.</param>
/// <param name="Mass">Mass of all blanks together [kg or lb].</param>
/// <param name="Sheet">Stock sheet they are nested on, or null.</param>
/// <param name="BlanksPerSheet">Blanks that one such sheet gives, or null.</param>
/// <param name="Sheets">Whole sheets that are paid for; null where the area used is.</param>
/// <param name="ScrapShare">Share of what is paid for that is not in the blanks.</param>
/// <param name="Cost">All blanks [currency].</param>
internal sealed record MaterialLineResult(
    string Id, int Blanks, double Mass, string? Sheet, int? BlanksPerSheet, int? Sheets, double ScrapShare, BandResult Cost);

/// <summary>What a count of panels costs.</summary>
/// <param name="FormLabour">Building the form [currency].</param>
/// <param name="FormMaterial">Its sheet [currency].</param>
/// <param name="SetUpLabour">Getting the bench ready [currency].</param>
/// <param name="TrialLabour">Bending the trial panels [currency].</param>
/// <param name="PanelLabour">Bending the good panels [currency].</param>
/// <param name="PanelMaterial">Sheet of all panels, trials too [currency].</param>
/// <param name="Overhead">Overhead on all of it [currency].</param>
/// <param name="Total">All of it [currency].</param>
internal sealed record CostResult(
    BandResult FormLabour,
    BandResult FormMaterial,
    BandResult SetUpLabour,
    BandResult TrialLabour,
    BandResult PanelLabour,
    BandResult PanelMaterial,
    BandResult Overhead,
    BandResult Total);

/// <summary>The form against another way to make its panels.</summary>
/// <param name="Method">Which way.</param>
/// <param name="Name">Its name.</param>
/// <param name="Hits">What bumping takes; null for other ways.</param>
/// <param name="Costs">Both ways for every count of <c>pieces</c>.</param>
/// <param name="BreakEven">From how many panels on the form is cheaper.</param>
internal sealed record ComparisonResult(
    [property: JsonConverter(typeof(WordConverter<OtherWay>))] OtherWay Method,
    string Name,
    HitsResult? Hits,
    ComparedCostResult[] Costs,
    BreakEvenResult BreakEven);

/// <summary>What bumping a panel takes.</summary>
/// <param name="Count">Hits of one panel.</param>
/// <param name="Angle">Turn of each [°].</param>
/// <param name="Pitch">From hit to hit [mm or in].</param>
/// <param name="DieOpening">Opening of the die, twice the pitch [mm or in].</param>
/// <param name="People">People who support the panel at the brake.</param>
internal sealed record HitsResult(int Count, double Angle, double Pitch, double DieOpening, int People);

/// <summary>Another way at one count of panels, cost against cost, before any minimum charge.</summary>
/// <param name="Pieces">Good panels.</param>
/// <param name="Cost">What the other way costs [currency].</param>
/// <param name="Saving">What the form saves [currency]; below 0 it costs more. Low is the saving where the form's values are high.</param>
internal sealed record ComparedCostResult(int Pieces, BandResult Cost, BandResult Saving);

/// <summary>Where the costs cross, whole sheets taken as full.</summary>
/// <param name="Low">Where all of the form's values are low.</param>
/// <param name="Likely">At the likely values.</param>
/// <param name="High">Where all of the form's values are high.</param>
internal sealed record BreakEvenResult(BreakEvenPointResult Low, BreakEvenPointResult Likely, BreakEvenPointResult High);

/// <summary>From how many panels on the form is cheaper in total.</summary>
/// <param name="Outcome">Result over all counts of panels.</param>
/// <param name="From">Smallest count from which the form is cheaper and stays so; null where there is none.</param>
/// <param name="UpTo">Largest count up to which it is cheaper first, where it is not for good; or null.</param>
/// <param name="Proven">Whether that is true for all counts, and not only up to 100 000 panels.</param>
/// <param name="Text">The same in words.</param>
internal sealed record BreakEvenPointResult(
    [property: JsonConverter(typeof(WordConverter<BreakEvenOutcome>))] BreakEvenOutcome Outcome,
    int? From,
    int? UpTo,
    bool Proven,
    string Text);

/// <summary>A value left at its default.</summary>
/// <param name="Id">Path of the field in the request that would replace it, such as <c>rates.form.folding.each</c>.</param>
/// <param name="Value">The value in use.</param>
/// <param name="Unit">Its unit; empty for a plain number.</param>
/// <param name="Text">What it is.</param>
/// <param name="Status">How well it is supported.</param>
internal sealed record AssumptionResult(
    string Id,
    double Value,
    string Unit,
    string Text,
    [property: JsonConverter(typeof(WordConverter<Status>))] Status Status);
