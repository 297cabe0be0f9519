using Forming.Checks;
using Forming.Materials;
using Forming.Plans.Drafts;
using Forming.Results;

namespace Forming.Plans.Checks;

/// <summary>Whether panel and form can be set up as the plan says.</summary>
internal static class SetupChecks
{
    /// <summary>A clamp bar holds on no less than this (assumption) [mm].</summary>
    public const double LeastGripMm = 10;

    /// <summary>Two marks a step of the tape apart are so to the last digits of the rounding.</summary>
    private const double Equal = 1 - 1e-9;

    public static void AddTo(List<Check> checks, PlanDraft draft)
    {
        checks.Add(PullLine(draft));
        checks.Add(PanelClamp(draft));
        if (draft.Taper is null)
            checks.Add(FormWidth(draft));
        if (draft.Stations.Count > 1)
            checks.Add(MarksApart(draft));
        if (OwnStrength(draft) is { } strength)
            checks.Add(strength);
    }

    // Warns: a stiff bar clamped to the edge carries the hand further out, or the hand takes the edge and pulls harder.
    private static Check PullLine(PlanDraft draft)
    {
        var panel = draft.Panel;
        var lever = draft.Judge.LeverMm;
        var sheet = panel.SheetPastCurveMm;
        return PlanChecks.AtMost(
            CheckIds.PullLine,
            Verdict.Warn,
            lever,
            sheet,
            lever <= sheet
                ? $"the hand pulls {Figure.Length(lever)} past the end of the curve, on the sheet"
                : panel.Mirrored
                    ? $"the hand would pull {Figure.Length(lever)} past the end of the curve, but the flat between the two curves is {Figure.Length(sheet)}: it would pull on the other curve"
                    : (FormattableString)$"the hand would pull {Figure.Length(lever)} past the end of the curve, but the sheet ends after {Figure.Length(sheet)}: there is nothing to hold");
    }

    // Fails where no clamp can hold: a panel that comes loose under the pull strikes, and the form goes with it.
    private static Check PanelClamp(PlanDraft draft)
    {
        var flat = draft.ClampFlatMm;
        var (gap, depth) = (draft.Pull.ClampGapMm, draft.Panel.Clamp.DepthMm);
        var limit = gap + Math.Max(depth, LeastGripMm);
        return PlanChecks.AtLeast(
            CheckIds.PanelClamp,
            flat < LeastGripMm ? Verdict.Fail : Verdict.Warn,
            flat,
            limit,
            (flat >= limit, gap > 0) switch
            {
                (true, true) => $"the clamp holds the panel {Figure.Length(gap)} behind the first fold; the panel's flat reaches back {Figure.Length(flat)}",
                (true, false) => $"the clamp holds the panel right up to the first fold; the panel's flat reaches back {Figure.Length(flat)}",
                _ when flat < LeastGripMm => $"there is nothing to clamp: the panel's flat behind the first fold is {Figure.Length(flat)}, and a clamp bar needs {Figure.Length(LeastGripMm)} to bear on",
                _ => (FormattableString)$"the clamp is {Figure.Length(gap)} behind the first fold and bears {Figure.Length(depth)} deep, but the panel's flat ends after {Figure.Length(flat)}",
            });
    }

    // Warns: the panel's edges then bend without a form under them, but nothing comes loose.
    private static Check FormWidth(PlanDraft draft)
    {
        double form = draft.Form.WidthMm, panel = draft.Panel.WidthMm;
        return PlanChecks.AtLeast(
            CheckIds.FormWidth,
            Verdict.Warn,
            form,
            panel,
            form >= panel
                ? $"the form is as wide as the panel"
                : (FormattableString)$"the panel is {Figure.Length(panel - form)} wider than the form: its edges bend over nothing and come off flatter");
    }

    // Fails: two folds on one line are one fold, so the form that was planned cannot be folded from these marks.
    private static Check MarksApart(PlanDraft draft)
    {
        var least = draft.Stations.Zip(draft.Stations.Skip(1), (station, next) => Math.Max(
            Math.Abs(next.MarkMm - station.MarkMm),
            station.Line is { } line && next.Line is { } nextLine ? Math.Abs(nextLine.MarkFar.Mm - line.MarkFar.Mm) : 0)).Min();
        var step = draft.Job.Marks.Tape.ResolutionMm;
        return new(
            CheckIds.MarksApart,
            least >= step * Equal ? Verdict.Pass : Verdict.Fail,
            least,
            step,
            least >= step * Equal
                ? $"the closest two fold marks are {Figure.Length(least)} apart on the tape"
                : (FormattableString)$"two folds fall on one mark: the tape steps {Figure.Length(step)}, more than the folds are apart");
    }

    // With K (eps0 + p)^n through the yield, eps0 > n means that the sheet necks as soon as it yields: K < Y/n^n.
    // Warns: the data contradict themselves, and springback and print-through rest on them.
    private static Check? OwnStrength(PlanDraft draft)
    {
        (string Where, double Strength, double Limit, double YieldMpa)[] given =
            [.. new[] { ("panel", draft.Panel.Sheet.Material), ("form", draft.Form.Sheet.Material) }.SelectMany(Given)];
        if (given.Length == 0)
            return null;
        var (where, strength, limit, yield) = given.MinBy(own => own.Strength / own.Limit);
        return PlanChecks.AtLeast(
            CheckIds.StrengthCoefficient,
            Verdict.Warn,
            strength,
            limit,
            strength >= limit
                ? $"your strengthCoefficient lets the {where} harden past its yield of {Figure.Stress(yield)}"
                : (FormattableString)$"your strengthCoefficient of {Figure.Stress(strength)} is too low for the {where}'s yield of {Figure.Stress(yield)}: the sheet would neck as soon as it yields");

        static IEnumerable<(string, double, double, double)> Given((string Where, Material Material) sheet)
        {
            var material = sheet.Material;
            if (material is { StrengthCoefficientMpa: { } k, StrainHardening: { } n }
                && material.Provenance.TryGetValue("strainHardening", out var from) && from.Status == Status.Caller)
            {
                yield return (sheet.Where, k, material.YieldMpa / Math.Pow(n, n), material.YieldMpa);
            }
        }
    }
}
