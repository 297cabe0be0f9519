using System.Text.Json.Serialization;
using FormApi.Features.Forms;
using FormApi.Features.Inspections;
using FormApi.Features.TestStrips;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Links;
using FormApi.Http.Units;
using Forming;
using Forming.Corrections;
using Forming.Results;

namespace FormApi.Features.Corrections;

/// <summary>What explains a panel and what to do, by a simulated pull not yet checked against measured panels.</summary>
/// <param name="Engine">Version of the engine.</param>
/// <param name="Fingerprint">Names this answer.</param>
/// <param name="Request">With every default shown.</param>
/// <param name="Meets">Whether the next panel is within its tolerance of sweep and radius after the corrections.</param>
/// <param name="Next">What to do next.</param>
/// <param name="Yield">Effective yield that explains it at the thickness given, joined with what is known of the grade [MPa or psi].</param>
/// <param name="MetalYield">The metal's own: a panel cannot show whether its sheet is stronger or thinner [MPa or psi].</param>
/// <param name="Doubts">Why that should not be used yet.</param>
/// <param name="Paste">For the next plan's request, unchanged; null while there are doubts.</param>
/// <param name="Folds">Folds to correct, else the best found.</param>
/// <param name="Opened">How many of them are opened, which is hard.</param>
/// <param name="LowerBound">Fewer folds cannot do.</param>
/// <param name="Proven">Whether they are the fewest.</param>
/// <param name="Stations">The corrected form, to paste.</param>
/// <param name="Planned">The panel planned.</param>
/// <param name="Explained">The same with the learnt yield.</param>
/// <param name="After">The next one, off the corrected form.</param>
/// <param name="SecondPull">Whether this panel can be saved by pulling it again over the corrected form.</param>
/// <param name="Checks">The next panel against its tolerances.</param>
/// <param name="Notes">What to know.</param>
/// <param name="Safety">Cautions.</param>
/// <param name="Basis">What the results rest on.</param>
/// <param name="Links">The planned form as links.</param>
internal sealed record PanelCorrectionAnswer(
    string Engine,
    string Fingerprint,
    [property: InFull, WrittenAs(typeof(PanelCorrectionRequest))] RawJson Request,
    bool Meets,
    NextStepResult[] Next,
    IntervalResult Yield,
    IntervalResult MetalYield,
    ShopNoteResult[] Doubts,
    SpringbackPaste? Paste,
    CorrectionResult[] Folds,
    int Opened,
    int LowerBound,
    bool Proven,
    StandingStationInput[] Stations,
    PulledPanelResult Planned,
    PulledPanelResult Explained,
    PulledPanelResult After,
    SecondPullResult SecondPull,
    CheckResult[] Checks,
    ShopNoteResult[] Notes,
    SafetyResult[] Safety,
    [property: InFull] BasisResult[] Basis,
    [property: InFull] LinksResult Links)
{
    /// <summary>The answer to a request.</summary>
    /// <param name="job">The measured panel that was looked at.</param>
    public static PanelCorrectionAnswer From(CorrectedJob job)
    {
        var (units, report) = (job.Shown.Units, job.Report);
        var (form, yield) = (report.Form, report.Yield);
        return new(
            EngineVersion.Current,
            job.Shown.Fingerprint,
            job.Shown.Json,
            form.Meets,
            Lists.Map(report.Next, step => NextStepResult.From(step, job.Links, units)),
            IntervalResult.From(yield.EffectiveMpa, units.Stress),
            IntervalResult.From(yield.MetalMpa, units.Stress),
            Lists.Map(yield.Doubts, doubt => new ShopNoteResult(doubt.Id, units.Wording.Of(doubt.Text))),
            yield.Doubts.Count > 0 ? null : new(new(new(units.Stress(yield.EffectiveMpa.Value)))),
            [.. Enumerable.Range(0, form.Steps.Count).Where(i => form.Steps[i] != 0).Select(i => new CorrectionResult(
                i + 1, form.Steps[i], UnitSystem.Degrees(form.Steps[i] * job.Step), UnitSystem.Degrees(new Angle(form.Angles[i]))))],
            form.Opened,
            form.LowerBound,
            form.IsFewest,
            [.. form.Angles.Select((angle, i) => new StandingStationInput(
                UnitSystem.Degrees(new Angle(angle)),
                units.Length(i < form.Angles.Count - 1 ? job.Pull.Form.FacetsMm[i] : job.LeadOutMm)))],
            PulledPanelResult.From(report.Planned, units)!,
            PulledPanelResult.From(report.AsIs, units)!,
            PulledPanelResult.From(report.After, units)!,
            new(
                report.Second.Verdict,
                report.Second.Status,
                units.Wording.Of(report.Second.Text),
                PulledPanelResult.From(report.Second.Panel, units)),
            Lists.Map(report.Checks, check => CheckResult.From(check, units)),
            Lists.Map(report.Notes, note => ShopNoteResult.From(note, units)),
            Lists.Map(report.Safety, note => SafetyResult.From(note, units)),
            Lists.Map(report.Basis, BasisResult.From),
            job.Links);
    }
}

/// <summary>A second pull.</summary>
/// <param name="Verdict">Whether it saves the panel.</param>
/// <param name="Status">How well that is supported.</param>
/// <param name="Text">What to do.</param>
/// <param name="Panel">The panel then; null where not known.</param>
internal sealed record SecondPullResult(
    [property: JsonConverter(typeof(WordConverter<SecondPullVerdict>))] SecondPullVerdict Verdict,
    [property: JsonConverter(typeof(WordConverter<Status>))] Status Status,
    string Text,
    PulledPanelResult? Panel);
