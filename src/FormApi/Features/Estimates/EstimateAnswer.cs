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
/// <param name="Pieces">Panels of the batch.</param>
/// <param name="Form">Building the form.</param>
/// <param name="Panel">Making the panels once the form is built.</param>
/// <param name="Minutes">Form and batch together [min].</param>
/// <param name="Materials">Sheet for form and panels.</param>
/// <param name="Cost">What the batch costs.</param>
/// <param name="PerPiece">The same by the piece.</param>
/// <param name="BreakEven">The form against the other method; null where none is given.</param>
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
    [property: WrittenAs(typeof(EstimateRequest))] RawJson Request,
    [property: JsonConverter(typeof(WordConverter<PlanVerdict>))] PlanVerdict Verdict,
    string? Currency,
    int Pieces,
    FormWorkResult Form,
    PanelWorkResult Panel,
    BandResult Minutes,
    MaterialLineResult[] Materials,
    CostResult Cost,
    PerPieceResult PerPiece,
    BreakEvenResult? BreakEven,
    CheckResult[] Checks,
    AssumptionResult[] Assumptions,
    ShopNoteResult[] Notes,
    SafetyResult[] Safety,
    BasisResult[] Basis,
    LinksResult Links)
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
        var costs = estimate.Costs;
        var table = Lists.Map(estimate.Milestones, PieceOf);
        return new(
            EngineVersion.Current,
            shown.Fingerprint,
            shown.Json,
            estimate.Verdict,
            currency,
            estimate.Pieces,
            new(estimate.Quantities.Forms, BandOf(estimate.FormMinutes), ElementsOf(estimate.FormWork, units)),
            new(BandOf(estimate.FirstPanelMinutes), BandOf(estimate.PanelMinutes), ElementsOf(estimate.PanelWork, units)),
            BandOf(estimate.TotalMinutes),
            Lists.Map(estimate.Materials, line => new MaterialLineResult(
                line.Id,
                line.Pieces,
                units.Mass(line.MassKg),
                line.Sheet,
                line.BlanksPerSheet,
                line.Sheets,
                BandOf(line.EachCost),
                BandOf(line.Cost))),
            new(
                BandOf(costs.FormLabour),
                BandOf(costs.FormMaterial),
                BandOf(costs.PanelLabour),
                BandOf(costs.PanelMaterial),
                BandOf(costs.Total)),
            new(BandOf(estimate.AverageCost), table[0], table[^1], table),
            estimate.Comparison is { } comparison ? BreakEvenOf(comparison, units) : null,
            Lists.Map(estimate.Failed, check => CheckResult.From(check, units)),
            Lists.Map(estimate.Assumptions, assumption => AssumptionOf(assumption, units)),
            Lists.Map(estimate.Notes, note => ShopNoteResult.From(note, units)),
            Lists.Map(estimate.Safety, note => SafetyResult.From(note, units)),
            Lists.Map(estimate.Basis, BasisResult.From),
            links);
    }

    private static BandResult BandOf(Band band) => new(WireNumber.Of(band.Low), WireNumber.Of(band.Likely), WireNumber.Of(band.High));

    private static WorkElementResult[] ElementsOf(
        IReadOnlyList<WorkElement> work, UnitSystem units) => Lists.Map(work, element => new WorkElementResult(
        element.Id,
        element.Text,
        element.Unit == WorkUnit.Metre ? units.Run(element.Quantity) : WireNumber.Of(element.Quantity),
        NameOf(element.Unit, units),
        BandOf(element.Minutes)));

    private static string NameOf(WorkUnit unit, UnitSystem units) => unit switch
    {
        WorkUnit.Metre => units.RunName,
        WorkUnit.StopChange => "stop change",
        WorkUnit.Mark => "mark",
        WorkUnit.Strip => "strip",
        WorkUnit.Handling => "handling",
        WorkUnit.Fold => "fold",
        WorkUnit.Check => "check",
        _ => "pull",
    };

    private static PieceResult PieceOf(PieceFigure piece) => new(
        piece.Piece,
        WireNumber.Of(piece.Minutes),
        WireNumber.Of(piece.Cost),
        WireNumber.Of(piece.TotalMinutes),
        WireNumber.Of(piece.TotalCost),
        WireNumber.Of(piece.AverageCost));

    private static BreakEvenResult BreakEvenOf(Comparison comparison, UnitSystem units)
    {
        return new(
            comparison.Other.Name,
            WireNumber.Of(comparison.OtherTotal),
            BandOf(comparison.Saving),
            PointOf(comparison.Low),
            PointOf(comparison.Likely),
            PointOf(comparison.High));

        BreakEvenPointResult PointOf(BreakEven point) =>
            new(point.Outcome, point.From, point.UpTo, point.IsProven, units.Wording.Of(point.Text));
    }

    private static AssumptionResult AssumptionOf(Assumption assumption, UnitSystem units)
    {
        var (value, unit) = assumption.Unit switch
        {
            RateUnit.Minutes => (WireNumber.Of(assumption.Value), "min"),
            RateUnit.MinutesPerMetre => (units.PerRun(assumption.Value), "min/" + units.RunName),
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

/// <summary>Making the panels.</summary>
/// <param name="FirstMinutes">The first panel [min].</param>
/// <param name="BatchMinutes">All panels of the batch, with what was learnt [min].</param>
/// <param name="Elements">The first panel by element.</param>
internal sealed record PanelWorkResult(BandResult FirstMinutes, BandResult BatchMinutes, WorkElementResult[] Elements);

/// <summary>One element of work.</summary>
/// <param name="Id">Stable id such as <c>folding</c>.</param>
/// <param name="Text">What is done.</param>
/// <param name="Quantity">How many, or how long.</param>
/// <param name="Unit">What is counted, or <c>m</c> or <c>ft</c>.</param>
/// <param name="Minutes">Its time [min].</param>
internal sealed record WorkElementResult(string Id, string Text, double Quantity, string Unit, BandResult Minutes);

/// <summary>Sheet for form or panels.</summary>
/// <param name="Id"><c>form-sheet</c> or <c>panel-sheet</c>.</param>
/// <param name="Pieces">Blanks.</param>
/// <param name="Mass">Mass of all blanks together [kg or lb].</param>
/// <param name="Sheet">Stock sheet they are priced by; null where they are priced by mass.</param>
/// <param name="BlanksPerSheet">Blanks that one such sheet gives; null where they are priced by mass.</param>
/// <param name="Sheets">Whole sheets that hold all blanks; null where they are priced by mass.</param>
/// <param name="CostEach">One blank [currency].</param>
/// <param name="Cost">All blanks [currency].</param>
internal sealed record MaterialLineResult(
    string Id, int Pieces, double Mass, string? Sheet, int? BlanksPerSheet, int? Sheets, BandResult CostEach, BandResult Cost);

/// <summary>What the batch costs.</summary>
/// <param name="FormLabour">Building the form [currency].</param>
/// <param name="FormMaterial">Its sheet [currency].</param>
/// <param name="PanelLabour">Making all panels [currency].</param>
/// <param name="PanelMaterial">Their sheet [currency].</param>
/// <param name="Total">All of it [currency].</param>
internal sealed record CostResult(
    BandResult FormLabour, BandResult FormMaterial, BandResult PanelLabour, BandResult PanelMaterial, BandResult Total);

/// <summary>The batch by the piece.</summary>
/// <param name="Average">Total cost for each panel, the form shared out [currency].</param>
/// <param name="First">The first panel.</param>
/// <param name="Last">The last panel.</param>
/// <param name="Table">The first, 2, 5, 10, 20, 50 … and the last.</param>
internal sealed record PerPieceResult(BandResult Average, PieceResult First, PieceResult Last, PieceResult[] Table);

/// <summary>One panel of the batch, likely values.</summary>
/// <param name="Piece">Which panel, from 1.</param>
/// <param name="Minutes">Its own labour [min].</param>
/// <param name="Cost">Its own labour and sheet, without the form [currency].</param>
/// <param name="TotalMinutes">Form and panels up to and with this one [min].</param>
/// <param name="TotalCost">Form and panels up to and with this one [currency].</param>
/// <param name="AverageCost">The same for each panel: what a batch that ends here costs by the piece [currency].</param>
internal sealed record PieceResult(int Piece, double Minutes, double Cost, double TotalMinutes, double TotalCost, double AverageCost);

/// <summary>The form against the other method, whose values are taken as given.</summary>
/// <param name="Method">Name of the other method.</param>
/// <param name="OtherTotal">What it costs for the batch [currency].</param>
/// <param name="Saving">What the form saves on the batch [currency]; below 0 it costs more. Low is the saving where the form's values are
/// high.</param>
/// <param name="Low">Where all of the form's values are low.</param>
/// <param name="Likely">At the likely values.</param>
/// <param name="High">Where all of the form's values are high.</param>
internal sealed record BreakEvenResult(
    string Method, double OtherTotal, BandResult Saving, BreakEvenPointResult Low, BreakEvenPointResult Likely, BreakEvenPointResult High);

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
