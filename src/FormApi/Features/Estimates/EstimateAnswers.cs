using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Links;
using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming.Estimates;

namespace FormApi.Features.Estimates;

/// <summary>From an estimate to the answer, in the caller's units.</summary>
internal static class EstimateAnswers
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
        var table = FormAnswers.Map(estimate.Milestones, PieceOf);
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
            FormAnswers.Map(estimate.Materials, line => new MaterialLineResult(
                line.Id, line.Pieces, units.Mass(line.MassKg), line.Sheet, line.BlanksPerSheet, line.Sheets, BandOf(line.EachCost), BandOf(line.Cost))),
            new(BandOf(costs.FormLabour), BandOf(costs.FormMaterial), BandOf(costs.PanelLabour), BandOf(costs.PanelMaterial), BandOf(costs.Total)),
            new(BandOf(estimate.AverageCost), table[0], table[^1], table),
            estimate.Comparison is { } comparison ? BreakEvenOf(comparison, units) : null,
            FormAnswers.Map(estimate.Failed, check => FormAnswers.CheckOf(check, units)),
            FormAnswers.Map(estimate.Assumptions, assumption => AssumptionOf(assumption, units)),
            FormAnswers.Map(estimate.Notes, note => new ShopNoteResult(note.Id, units.Wording.Of(note.Text))),
            FormAnswers.Map(estimate.Safety, note => new SafetyResult(note.Id, note.Level, units.Wording.Of(note.Text))),
            FormAnswers.Map(estimate.Basis, basis => new BasisResult(basis.Quantity, basis.Method, basis.Source, basis.Status)),
            links);
    }

    private static BandResult BandOf(Band band) => new(WireNumber.Of(band.Low), WireNumber.Of(band.Likely), WireNumber.Of(band.High));

    private static WorkElementResult[] ElementsOf(IReadOnlyList<WorkElement> work, UnitSystem units) => FormAnswers.Map(work, element => new WorkElementResult(
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

        BreakEvenPointResult PointOf(BreakEven point) => new(point.Outcome, point.From, point.UpTo, point.IsProven, units.Wording.Of(point.Text));
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
