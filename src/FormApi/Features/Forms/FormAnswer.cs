using System.Text.Json.Serialization;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Links;
using FormApi.Http.Results;
using Forming.Plans;

namespace FormApi.Features.Forms;

/// <summary>Everything needed to mark, fold and use a form. Lengths, forces and masses are in the units of the request.</summary>
/// <param name="Engine">Version of the engine that calculated it.</param>
/// <param name="Fingerprint">SHA-256 of canonical request and engine version: the same one is the same answer.</param>
/// <param name="Request">The request with every default shown; null where the plan chooses.</param>
/// <param name="Verdict">The verdict of the checks: <c>ready</c>, <c>attention</c> where one warns, <c>cannot-be-made</c> where one
/// failed.</param>
/// <param name="Text">What the job is, in a sentence.</param>
/// <param name="Next">What to do next: one to three steps.</param>
/// <param name="Form">The form: where to fold, how far, and what it is cut from.</param>
/// <param name="Panel">The panel: what it is cut from, how it is pulled, how it will look.</param>
/// <param name="Checks">Every check, passed or not.</param>
/// <param name="Safety">Cautions that this job calls for. Local codes, machine manuals and licensed practice come first.</param>
/// <param name="ShopNotes">Hints that save a panel.</param>
/// <param name="Basis">What every headline value rests on.</param>
/// <param name="Links">The same as links that hold the whole request.</param>
internal sealed record FormAnswer(
    string Engine,
    string Fingerprint,
    [property: InFull, WrittenAs(typeof(FormRequest))] RawJson Request,
    [property: JsonConverter(typeof(WordConverter<PlanVerdict>))] PlanVerdict Verdict,
    string Text,
    NextStepResult[] Next,
    FormResult Form,
    PanelResult Panel,
    CheckResult[] Checks,
    SafetyResult[] Safety,
    [property: InFull] ShopNoteResult[] ShopNotes,
    [property: InFull] BasisResult[] Basis,
    [property: InFull] LinksResult Links) : IJudged
{
    /// <inheritdoc/>
    string IJudged.VerdictWord => VerdictWords.Of(Verdict);

    private static LinksResult Unlinked { get; } = new(null, null, null);

    /// <summary>The answer to a request.</summary>
    /// <param name="job">The planned request.</param>
    /// <param name="isMinimal">Whether it is written short, so that what only a full answer has need not be made.</param>
    public static FormAnswer From(PlannedJob job, bool isMinimal = false)
    {
        var (plan, specs, units) = (job.Plan, job.Specs, job.Units);
        var links = isMinimal ? Unlinked : AnswerLinks.OfForm(job.Shown.Canonical.Span, plan.Verdict != PlanVerdict.CannotBeMade);
        return new(
            EngineVersion.Current,
            job.Shown.Fingerprint,
            job.Shown.Json,
            plan.Verdict,
            units.Wording.Of(plan.Headline),
            Lists.Map(plan.Next, step => NextStepResult.From(step, links, units)),
            FormResult.From(plan.Form, plan.Taper, plan.FinishedTurn, specs, units),
            PanelResult.From(plan.Panel, specs, plan.Taper is not null, units),
            isMinimal ? CheckResult.OpenOf(plan.Checks, units) : Lists.Map(plan.Checks, check => CheckResult.From(check, units)),
            Lists.Map(plan.Safety, note => SafetyResult.From(note, units)),
            isMinimal ? [] : Lists.Map(plan.ShopNotes, note => ShopNoteResult.From(note, units)),
            isMinimal ? [] : Lists.Map(plan.Basis, BasisResult.From),
            links);
    }
}
