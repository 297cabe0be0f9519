using Forming.Blanks;
using Forming.Curves;
using Forming.Folds;
using Forming.Jobs;
using Forming.Layout;
using Forming.Outlook;
using Forming.Prediction;
using Forming.Pulling;
using Forming.Springback;
using Forming.Wrapping;

namespace Forming.Plans.Drafts;

/// <summary>A form whose folds are parallel.</summary>
internal static class StraightPlanner
{
    public static PlanDraft Draft(FormJob job, FoldShape fold, PlanDraft? known, PullWork? work, CancellationToken cancellation)
    {
        var (panel, form) = (job.Panel, job.Form);
        var finished = Reuse.KeepsCurve(known, panel)
            ? known!.Finished!
            : FinishedCurve.On(panel.Curve, panel.Surface, panel.Sheet.ThicknessMm, cancellation);
        var formLaw = BendingLaw.Of(form.Sheet);
        var closed = Reuse.KeepsFolds(known, job)
            ? known!.Wrapped!
            : WrappedForm.Solve(finished, job, fold, cancellation);
        var wrapped = closed;
        PanelPrediction? prediction = null;
        var solution = panel.Springback is not SolvedOnWrap
            ? null
            : Reuse.KeepsSolution(known, job) ? known!.Solution : new SolvedCount(finished, job, fold, work, cancellation).Of(closed);
        if (solution is not null)
            (wrapped, prediction) = (solution.Form, solution.Prediction);
        if (panel.Springback is SolvedOnWrap)
            prediction ??= PlannedPull.Predict(wrapped, job, fold, new(PullWork.MostOfSolving, work), cancellation);
        else if (panel.Predict)
            prediction ??= PlannedPull.Predict(wrapped, job, fold, PullWork.PartOf(work), cancellation);
        var polygon = wrapped.Folds.Polygon;
        var (contact, lever) = (wrapped.Contact, wrapped.Judge.LeverMm);

        var layout = FlatLayout.Of(polygon, fold, form.LeadInMm, form.LeadOutMm);
        var section = FormSection.Of(polygon, contact, fold, form.LeadInMm, form.LeadOutMm);
        var firstFold = section.Vertices[1].X - contact.Runs[0].Start.Position.X;
        var panelBlank = PanelBlank.Of(finished, panel, firstFold, lever);
        var printThrough = PrintThroughReport.Of(wrapped);
        var springback = form.SpringbackOf(fold, formLaw, job.Brake);
        var leastLever = printThrough.WidestFacetMm > 0 ? printThrough.WidestFacetMm : contact.MidMm;
        var clampGap = panel.Clamp.GapMm ?? Clamp.ChosenGapMm(form.Stepping.Ends, polygon.Straights.Length > 0 ? polygon.Straights[0] : 0);
        var pull = PullForces.Compute(
            contact, wrapped.Rule.Law, wrapped.Tightest, lever, leastLever, panel.WidthMm, panel.Clamp, clampGap);
        return new()
        {
            Job = job,
            PanelLaw = wrapped.Rule.Law,
            FormLaw = formLaw,
            Fold = fold,
            Finished = finished,
            Wrapped = closed,
            Solution = solution,
            FinishedSweep = finished.Sweep.Radians,
            TakenAsFlat = finished.TakenAsFlat.Radians,
            FormSweep = polygon.EndTurn,
            TightestFinishedRadiusMm = finished.TightestRadiusMm,
            Tightest = wrapped.Tightest,
            LargestMissMm = finished.LargestMissMm,
            ShortestStraightMm = Least(layout.LeadInStraightMm, layout.LeadOutStraightMm, polygon.Straights),
            NarrowestFacetMm = Least(form.LeadInMm, form.LeadOutMm, polygon.Facets),
            RunsIntoItself = polygon.EndTurn > Math.PI && FormSection.CrossesItself(section.Vertices, cancellation),
            FoldBackMissMm = layout.FoldBackMiss(polygon, fold),
            Section = section,
            Stepping = SteppingReport.Of(wrapped.Folds, contact, fold, form.Stepping),
            Prediction = prediction,
            Outlook = solution is not null && Reuse.KeepsSolution(known, job)
                ? known!.Outlook
                : OutlookOf(wrapped, prediction, finished, job, fold, work, cancellation),
            WhyNotSimulated = prediction is null ? Reuse.WhyNotSimulated(panel.Springback) : null,
            Stations = StationList.Of(wrapped, fold, layout, job, springback),
            FoldSpringback = springback,
            FoldsWanted = () => wrapped.FoldsWanted(job, fold, cancellation),
            Judge = wrapped.Judge,
            PrintThrough = printThrough,
            Springback = SpringbackReport.Of(wrapped, finished, panel),
            FormBlank = BlankShape.Rectangle(form.Sheet, layout.LengthMm, form.WidthMm, panel.StockSheets),
            PanelBlank = BlankShape.Rectangle(panel.Sheet, panelBlank.LengthMm, panel.WidthMm, panel.StockSheets),
            PanelMarks = panelBlank.Marks,
            Pull = pull,
            Give = prediction?.Give
                ?? FormGiveEstimate.Compute(
                    FormGiveEstimate.SectionsOf(contact, panel.WidthMm),
                    Math.Max(lever, leastLever),
                    contact.MidMm,
                    formLaw,
                    form.WidthMm,
                    clampGap),
            ClampFlatMm = panel.TrimMm + panel.LeadInMm + finished.LeadingFlatMm + firstFold,
            SecondHalf = panel.Mirrored ? SecondHalf.Of(finished, contact, section, panel, pull, leastLever) : null,
            ClampRoomMm = polygon.EndTurn > Math.PI / 2 ? ClampRoom.LeastGapMm(section.InsideProfile, clampGap) : null,
        };
    }

    // On the pull where the plan is solved on it, or else from the mean curvatures.
    private static PanelOutlook OutlookOf(
        WrappedForm wrapped,
        PanelPrediction? prediction,
        FinishedCurve finished,
        FormJob job,
        FoldShape fold,
        PullWork? work,
        CancellationToken cancellation)
    {
        if (job.Panel.Springback is SolvedOnWrap && prediction is not null)
            return WrapOutlook.Of(PlannedPull.JobOf(wrapped, job, fold), prediction, PullWork.PartOf(work), cancellation);
        var length = wrapped.Contact.Runs.Sum(run => run.End.MidMm - run.Start.MidMm);
        return ClosedOutlook.Of(
            job.Panel,
            PlannedPull.FormOf(wrapped, fold),
            wrapped.Rule.Law,
            new(finished.Sweep.Radians / length, wrapped.Folds.Polygon.EndTurn / length, finished.Sweep.Radians, HasOneRadius: true));
    }

    private static double Least(double first, double second, double[] others)
    {
        var least = Math.Min(first, second);
        foreach (var other in others)
            least = Math.Min(least, other);
        return least;
    }
}
