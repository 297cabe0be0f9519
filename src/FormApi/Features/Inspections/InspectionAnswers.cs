using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Links;
using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming;
using Forming.Checks;
using Forming.Inspection;
using Forming.Prediction;

namespace FormApi.Features.Inspections;

/// <summary>From an inspection to the answer, in the caller's units.</summary>
internal static class InspectionAnswers
{
    /// <summary>The answer to a request.</summary>
    /// <param name="report">The inspection.</param>
    /// <param name="failed">Checks that the plan itself failed.</param>
    /// <param name="step">Step of the stop.</param>
    /// <param name="links">Links of the form that was planned, if one was.</param>
    /// <param name="shown">The request with every default shown.</param>
    public static InspectionAnswer From(InspectionReport report, IReadOnlyList<Check> failed, Angle step, LinksResult links, NormalizedRequest shown)
    {
        var units = shown.Units;
        return new(
            EngineVersion.Current,
            shown.Fingerprint,
            shown.Json,
            report.Checks.All(check => check.Verdict == Verdict.Pass),
            new(
                UnitSystem.Degrees(new Angle(report.Built.Sweep)),
                FormAnswers.Map(report.Built.FlatsMm, units.Length),
                FormAnswers.Map(report.Built.Vertices(), units.Point),
                FormAnswers.Map(report.Planned.Vertices(), units.Point)),
            [.. report.Misses.Select((miss, i) => FoldOf(report, miss, i, units))],
            new(UnitSystem.Degrees(report.Closing), units.Point(report.EndMiss)),
            new(UnitSystem.Degrees(report.FitTurn), units.Length(report.LargestHeldMm), units.Length(report.LargestFittedMm)),
            report.Departure is { } departure
                ? new(departure.Facet, departure.IsInside ? "inside" : "outside", units.Length(Math.Abs(departure.ByMm)))
                : null,
            PanelOf(report.Panel, units),
            CorrectionsOf(report, step, units),
            FormAnswers.Map(report.Suspect, suspect => new SuspectResult(Wire.Pointer(suspect.Subject), suspect.Code, units.Wording.Of(suspect.Text))),
            [.. report.Checks.Concat(failed).Select(check => FormAnswers.CheckOf(check, units))],
            FormAnswers.Map(report.Notes, note => new ShopNoteResult(note.Id, units.Wording.Of(note.Text))),
            FormAnswers.Map(report.Basis, basis => new BasisResult(basis.Quantity, basis.Method, basis.Source, basis.Status)),
            links);
    }

    private static InspectedFoldResult FoldOf(InspectionReport report, VertexMiss miss, int i, UnitSystem units)
    {
        var (angle, planned) = (report.Built.FoldAngles[i], report.Planned.FoldAngles[i]);
        return new(
            i + 1,
            UnitSystem.Degrees(new Angle(angle)),
            UnitSystem.Degrees(new Angle(planned)),
            UnitSystem.Degrees(new Angle(angle - planned)),
            units.Point(miss.Held),
            units.Length(miss.Held.Length),
            units.Length(miss.FittedMm));
    }

    private static PanelEffectResult PanelOf(PanelEffect effect, UnitSystem units) => new(
        units.Wording.OfOptional(effect.WhyNot),
        PulledOf(effect.Planned, units),
        PulledOf(effect.AsBuilt, units),
        effect is { Planned: { Shape: { } before } planned, AsBuilt: { Shape: { } after } built }
            ? new(
                UnitSystem.Degrees(after.Sweep - before.Sweep),
                units.Length(after.RadiusMm - before.RadiusMm),
                units.Length(built.Ripple.HeightMm - planned.Ripple.HeightMm),
                units.Length(after.MissMm - before.MissMm))
            : null);

    private static PulledPanelResult? PulledOf(PanelPrediction? prediction, UnitSystem units) => prediction is null
        ? null
        : new(
            prediction.Wraps,
            units.Wording.OfOptional(prediction.WhyNot),
            UnitSystem.Degrees(prediction.Shape?.Sweep),
            units.Length(prediction.Shape?.RadiusMm),
            units.Length(prediction.Ripple.HeightMm),
            units.Length(prediction.Shape?.MissMm));

    private static CorrectionsResult CorrectionsOf(InspectionReport report, Angle step, UnitSystem units)
    {
        var plan = report.Corrections;
        return new(
            plan.Found,
            FormAnswers.Map(plan.Folds, fold => new CorrectionResult(
                fold.Fold + 1,
                fold.Steps,
                UnitSystem.Degrees(fold.Steps * step),
                UnitSystem.Degrees(new Angle(report.Built.FoldAngles[fold.Fold]) + (fold.Steps * step)))),
            plan.LowerBound,
            plan.Found,
            plan.IsGentlest,
            plan.Nodes,
            UnitSystem.Degrees(plan.Closing),
            units.Length(plan.MissMm));
    }
}
