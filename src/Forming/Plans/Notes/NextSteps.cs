using Forming.Checks;
using Forming.Layout;
using Forming.Plans.Drafts;
using Forming.Results;

namespace Forming.Plans.Notes;

/// <summary>What to do next with a plan: at most three steps, what saves most sheet first; common practice, no source.</summary>
internal static class NextSteps
{
    private const int Most = 3;
    private const int FoldedStrips = 3;
    private const int BentStrips = 2;

    // Two fingers wide: wide enough to bend as a sheet, narrow enough for an offcut.
    private const double StripWidthMm = 50;

    // Enough for the brake to hold on one side, and for a protractor on the other.
    private const double FoldedStripMm = 120;

    // A hand's hold at either end of the bend.
    private const double HoldMm = 100;

    // Bars and pipes come in steps; no strip teaches more for a finer one.
    private const double BarStepMm = 5;

    /// <summary>The steps.</summary>
    /// <param name="draft">The plan.</param>
    /// <param name="checks">Its checks, with their remedies.</param>
    /// <param name="settings">Its stop settings.</param>
    public static IReadOnlyList<NextStep> Of(PlanDraft draft, IReadOnlyList<Check> checks, IReadOnlyList<StopSetting> settings)
    {
        if (checks.FirstOrDefault(check => check.Verdict == Verdict.Fail) is { } failed)
            return [Change(failed, $"Cut nothing yet")];
        var steps = new List<NextStep>(5);
        if (draft.Panel.Springback.YieldMpa is null && draft.Taper is null
            && checks.Any(check => check.Id == CheckIds.Outlook.Name && check.Verdict == Verdict.Warn))
        {
            steps.Add(Bend(draft));
        }

        if (draft.Form.Stop is null && settings.MaxBy(setting => setting.Stations.Count) is { Setting: { } stop })
            steps.Add(Fold(draft, stop));
        if (draft.Form.Backing == Jobs.FormBacking.Ribs && draft.Taper is null)
            steps.Add(new(NextStepKind.MakeRibs, $"Cut {draft.Ribs.AtMm.Count} ribs to the outline in form.ribs, and put the form over them."));
        steps.Add(new(NextStepKind.PrintSheet, $"Print the sheet, mark and cut both blanks."));
        steps.Add(new(NextStepKind.RunProgram, $"Fold the form step by step, as the program says."));
        return [.. steps.Take(Most)];
    }

    /// <summary>What to do first about a check that did not pass.</summary>
    /// <param name="open">The check.</param>
    /// <param name="first">What to leave until then.</param>
    public static NextStep Change(Check open, FormattableString first) => open.Remedy is { Changes.Count: > 0 } remedy
        ? new(NextStepKind.ChangeJob, $"{first}. Change the request, then ask again: {remedy.Text}.", Remedy: remedy)
        : new(NextStepKind.ChangeJob, $"{first}: {open.Remedy?.Text ?? open.Text}.");

    private static NextStep Bend(PlanDraft draft)
    {
        var thickness = draft.Panel.Sheet.ThicknessMm;
        var bar = Math.Max(BarStepMm, Math.Round(draft.TightestInsideMm / BarStepMm) * BarStepMm);
        var strip = new FirstStrips(
            BentStrips, Math.Round((Math.PI / 2 * bar) + (2 * HoldMm)), StripWidthMm, thickness, null, bar);
        return new(
            NextStepKind.BendStrip,
            $"Bend {BentStrips} strips of the panel's own sheet, {Figure.Length(strip.LengthMm):/16} by {Figure.Length(StripWidthMm):/16}, a quarter turn round a bar or pipe of about {Figure.Length(bar):/16} radius; measure the radius that is left, and send both radii of each.",
            strip);
    }

    private static NextStep Fold(PlanDraft draft, Angle stop) => new(
        NextStepKind.FoldStrips,
        $"Fold {FoldedStrips} strips of the form's sheet, {Figure.Length(FoldedStripMm):/16} by {Figure.Length(StripWidthMm):/16}, with the stop at {Figure.Angle(stop.Radians)}; measure them, and send stop and angle of each.",
        new(FoldedStrips, FoldedStripMm, StripWidthMm, draft.Form.Sheet.ThicknessMm, stop, null));
}
