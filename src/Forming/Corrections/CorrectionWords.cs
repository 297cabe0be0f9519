using System.Globalization;
using Forming.Jobs;
using Forming.Materials;
using Forming.Outlook;
using Forming.Plans;
using Forming.Plans.Notes;
using Forming.Results;

namespace Forming.Corrections;

/// <summary>What a correction says in shop words.</summary>
internal static class CorrectionWords
{
    private const int MostNamed = 6;

    private static readonly SafetyNote Opening = new(
        "opened-fold",
        SafetyLevel.Warning,
        $"A fold that is opened again is weaker and may crack: open it by one step at a time, look along the bend for cracks, and keep hands off the edges that close.");

    /// <summary>What to do next, one to three steps.</summary>
    /// <param name="report">The report.</param>
    public static IReadOnlyList<NextStep> NextOf(CorrectionReport report)
    {
        var (form, measure) = (report.Form, new NextStep(NextStepKind.MeasurePanel, $"Measure the next panel too, and send it: it shows whether this was right."));
        if (report.Yield.Doubts is [{ } doubt, ..])
            return [new(NextStepKind.MeasurePanel, $"Bend nothing yet. {doubt.Text}")];
        if (form.Folds == 0 && form.Meets)
            return [new(NextStepKind.PullPanel, $"The form is good. Clamp the next panel and pull it, as its plan says."), measure];
        if (!form.Meets)
            return [new(NextStepKind.ChangeJob, $"No correction of this form was found that brings the panel within tolerance. Put paste into the plan's request, ask for a new plan, and fold a new form.")];
        var steps = new List<NextStep> { new(NextStepKind.CorrectFolds, $"Correct the form, then measure its folds again: {FoldsOf(report)}.") };
        if (report.Second.Verdict == SecondPullVerdict.Saves)
            steps.Add(new(NextStepKind.PullPanel, report.Second.Text));
        steps.Add(measure);
        return steps;
    }

    /// <summary>What to know about the results.</summary>
    /// <param name="report">The report.</param>
    public static IReadOnlyList<ShopNote> NotesOf(CorrectionReport report)
    {
        var (form, yield) = (report.Form, report.Yield);
        var least = form.LowerBound == 1 ? "At least 1 fold has" : string.Create(CultureInfo.InvariantCulture, $"At least {form.LowerBound} folds have");
        var notes = new List<ShopNote>
        {
            new("yield-or-thickness", $"A panel cannot show whether its sheet is stronger or thinner: a yield of {Figure.Stress(yield.EffectiveMpa.Value)} at the thickness given, or {Figure.Length(yield.ThicknessInsteadMm)} with the yield planned with, give the same panel. A micrometer can. The next plan is right either way."),
        };
        if (yield.PriorWeight > 0.5)
            notes.Add(new("readings-weak", $"The readings say little: most of this yield is what was known of the grade. Read the sweep and the radius, or a template."));
        if (form.Opened > 0)
            notes.Add(new("opening-is-hard", $"{form.Opened} of {form.Folds} corrections open a fold. Closing is easy, opening is not: a new form may cost less."));
        if (form.Folds > 0)
            notes.Add(new("correct-by-steps", $"Corrections are whole steps of the stop beyond what each fold has now; springback of so small a fold is not foreseen, so creep up on it and measure."));
        if (form is { Meets: true, IsFewest: false, Folds: > 0 })
            notes.Add(new("not-proven-fewest", $"{least} to be corrected; whether fewer than {form.Folds} do is not proven."));
        if (!form.Meets)
            notes.Add(new("best-found", $"No correction meets the tolerance; this is the best one found. {least} to be corrected, and no more than {FewestFolds.MostFolds} are searched one by one."));
        if (form.HitLimit)
            notes.Add(new("search-ended", $"The search ended because its work was used up: a better correction may exist."));
        return notes;
    }

    /// <summary>The folds to correct, in words.</summary>
    /// <param name="report">The report.</param>
    public static FormattableString FoldsOf(CorrectionReport report)
    {
        FormattableString text = $"";
        var (steps, named) = (report.Form.Steps, 0);
        for (var i = 0; i < steps.Count; i++)
        {
            if (steps[i] == 0)
                continue;
            if (named == MostNamed)
                return $"{text} and the others as listed";
            var size = Math.Abs(steps[i]);
            text = $"{text}{(named++ == 0 ? "" : ", ")}{(steps[i] > 0 ? "close" : "open")} fold {i + 1} by {size} {(size == 1 ? "step" : "steps")}, to {Figure.Angle(report.Form.Angles[i])}";
        }

        return text;
    }

    /// <summary>The cautions.</summary>
    /// <param name="best">The correction.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="form">Family of the form's metal.</param>
    public static IReadOnlyList<SafetyNote> SafetyOf(Tried best, PanelSpec panel, MetalFamily form)
    {
        var notes = SafetyNotes.OfPull(best.Prediction, panel, form);
        return best.Opened > 0 ? [.. notes, Opening] : notes;
    }

    /// <summary>What the results rest on.</summary>
    /// <param name="job">What was asked.</param>
    /// <param name="panel">The panel with the learnt yield.</param>
    public static IReadOnlyList<Basis> BasisOf(CorrectionJob job, PanelSpec panel) =>
    [
        new("yield", "least squares through the simulated pull over the form as it is: the whole flow curve scaled by one factor, eps0 and n kept; joined with the grade's scatter; errors of the folds summed out", PlanBasis.WrapModel, Status.Model),
        new("yield.metal", "the same with what thickness and modulus may have done; a panel shows only yield over modulus times thickness", "the bending law; scatter as panel.scatter", Status.Computed),
        job.IsFormMeasured
            ? new("folds", "as given, within panel.scatter.foldAngle: 0.1° where nothing else is said", "caller; the scatter is an assumption", Status.Caller)
            : new("folds", "as planned, with the scatter of panel.scatter.foldAngle: stations as measured say more", "not measured", Status.Assumption),
        new("correction", "fewest folds by deepening their number; all choices looked at by what each fold does alone, within a band wider by what that was found to miss, those in it pulled; fold places and facets kept", "derived by this project, checked against full enumeration", Status.Model),
        new("secondPull", "the pull gone on with from what each place of the panel has seen", PlanBasis.WrapModel, Status.Model),
        .. ScatterDefaults.BasisOf(panel),
    ];
}
