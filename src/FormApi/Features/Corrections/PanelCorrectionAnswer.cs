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

/// <summary>What explains a panel and what to do, by a simulated pull that is not yet checked against measured panels.</summary>
/// <param name="Engine">Version of the engine that calculated it.</param>
/// <param name="Fingerprint">SHA-256 of canonical request and engine version: the same one is the same answer.</param>
/// <param name="Request">The request with every default shown.</param>
/// <param name="Meets">Whether the next panel is within its tolerance of sweep and radius after the corrections; none needed counts.</param>
/// <param name="Next">What to do next.</param>
/// <param name="Yield">What explains the panel.</param>
/// <param name="Doubts">Why that should not be used before something is cleared up; empty where nothing is in the way.</param>
/// <param name="Paste">What to put into the next plan's request, unchanged; null while there are doubts.</param>
/// <param name="Folds">The folds to correct; where nothing meets the tolerance, the best correction found.</param>
/// <param name="Closed">How many of them are closed further.</param>
/// <param name="Opened">How many are opened, which is hard.</param>
/// <param name="LowerBound">With fewer corrected folds it cannot be done.</param>
/// <param name="Proven">Whether the answer is proven fewest.</param>
/// <param name="Stations">The corrected form, to paste.</param>
/// <param name="AsIs">The next panel off the form as it is, with the learnt yield.</param>
/// <param name="After">The next panel off the corrected form.</param>
/// <param name="SecondPull">Whether this panel can be saved.</param>
/// <param name="Checks">The panel off the corrected form against its tolerances.</param>
/// <param name="Notes">What to know about the results.</param>
/// <param name="Safety">Cautions.</param>
/// <param name="Basis">What the results rest on.</param>
/// <param name="Links">The form behind it as links.</param>
internal sealed record PanelCorrectionAnswer(
    string Engine,
    string Fingerprint,
    [property: InFull, WrittenAs(typeof(PanelCorrectionRequest))] RawJson Request,
    bool Meets,
    NextStepResult[] Next,
    LearntYieldResult Yield,
    ShopNoteResult[] Doubts,
    SpringbackPaste? Paste,
    CorrectionResult[] Folds,
    int Closed,
    int Opened,
    int LowerBound,
    bool Proven,
    StandingStationInput[] Stations,
    PulledPanelResult AsIs,
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
            LearntYieldResult.From(yield, units),
            Lists.Map(yield.Doubts, doubt => new ShopNoteResult(doubt.Id, units.Wording.Of(doubt.Text))),
            yield.Doubts.Count > 0 ? null : new(new(new(units.Stress(yield.EffectiveMpa.Value)))),
            [.. Enumerable.Range(0, form.Steps.Count).Where(i => form.Steps[i] != 0).Select(i => new CorrectionResult(
                i + 1, form.Steps[i], UnitSystem.Degrees(form.Steps[i] * job.Step), UnitSystem.Degrees(new Angle(form.Angles[i]))))],
            form.Closed,
            form.Opened,
            form.LowerBound,
            form.IsFewest,
            [.. form.Angles.Select((angle, i) => new StandingStationInput(
                UnitSystem.Degrees(new Angle(angle)),
                units.Length(i < form.Angles.Count - 1 ? job.Pull.Form.FacetsMm[i] : job.LeadOutMm)))],
            PulledPanelResult.From(report.AsIs, units)!,
            PulledPanelResult.From(report.After, units)!,
            new(
                report.Second.Verdict,
                report.Second.Status,
                units.Wording.Of(report.Second.Text),
                UnitSystem.Degrees(report.Second.Panel?.Sweep),
                units.Length(report.Second.Panel?.RadiusMm)),
            Lists.Map(report.Checks, check => CheckResult.From(check, units)),
            Lists.Map(report.Notes, note => ShopNoteResult.From(note, units)),
            Lists.Map(report.Safety, note => SafetyResult.From(note, units)),
            Lists.Map(report.Basis, BasisResult.From),
            job.Links);
    }
}

/// <summary>The yield stress that explains a panel.</summary>
/// <param name="Effective">With which the simulated pull agrees with the readings at the thickness given, joined with what is known of the
/// grade [MPa or psi].</param>
/// <param name="Metal">What that leaves open of the metal's own: a panel cannot show whether its sheet is stronger or thinner
/// [MPa or psi].</param>
/// <param name="ByReadings">From the readings alone [MPa or psi].</param>
/// <param name="Grade">The grade's [MPa or psi].</param>
/// <param name="PriorWeight">Share of what was known of the grade in it, 0 to 1.</param>
/// <param name="ThicknessInstead">Thickness that would explain the panel as well [mm or in].</param>
/// <param name="Readings">The readings beside it.</param>
internal sealed record LearntYieldResult(
    IntervalResult Effective,
    IntervalResult Metal,
    IntervalResult ByReadings,
    double Grade,
    double PriorWeight,
    double ThicknessInstead,
    ExplainedReadingResult[] Readings)
{
    /// <summary>The yield in the caller's units.</summary>
    /// <param name="yield">The yield.</param>
    /// <param name="units">The caller's units.</param>
    public static LearntYieldResult From(LearntYield yield, UnitSystem units) => new(
        IntervalResult.From(yield.EffectiveMpa, units.Stress),
        IntervalResult.From(yield.MetalMpa, units.Stress),
        IntervalResult.From(yield.ByReadingsMpa, units.Stress),
        units.Stress(yield.GradeMpa),
        WireNumber.Of(yield.PriorWeight),
        units.Length(yield.ThicknessInsteadMm),
        Lists.Map(yield.Readings, reading => ExplainedReadingResult.From(reading, units)));
}

/// <summary>A reading beside what the simulated pull makes of it [°, mm or in]; of points the mean distance from the face.</summary>
/// <param name="Kind">What was read.</param>
/// <param name="Measured">The reading; null of points.</param>
/// <param name="Planned">By the yield that was planned with; null where flat.</param>
/// <param name="Explained">By the learnt yield; null where flat.</param>
internal sealed record ExplainedReadingResult(
    [property: JsonConverter(typeof(WordConverter<ReadingKind>))] ReadingKind Kind, double? Measured, double? Planned, double? Explained)
{
    /// <summary>The reading in the caller's units.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="units">The caller's units.</param>
    public static ExplainedReadingResult From(ExplainedReading reading, UnitSystem units)
    {
        return new(
            reading.Kind,
            reading.Kind == ReadingKind.Points ? null : Shown(reading.Measured),
            Shown(reading.Planned),
            Shown(reading.Explained));

        double? Shown(double? value) =>
            value is { } known && reading.Kind == ReadingKind.Sweep ? UnitSystem.Degrees(new Angle(known)) : units.Length(value);
    }
}

/// <summary>Whether this panel can be saved by pulling it once more, over the corrected form.</summary>
/// <param name="Verdict">Whether it can.</param>
/// <param name="Status">How well that is supported.</param>
/// <param name="Text">What to do with it.</param>
/// <param name="Sweep">Its sweep then [°]; null where not known.</param>
/// <param name="Radius">Its radius then [mm or in]; null where flat or not known.</param>
internal sealed record SecondPullResult(
    [property: JsonConverter(typeof(WordConverter<SecondPullVerdict>))] SecondPullVerdict Verdict,
    [property: JsonConverter(typeof(WordConverter<Status>))] Status Status,
    [property: InFull] string Text,
    double? Sweep,
    double? Radius);
