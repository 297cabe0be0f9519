using Forming.Curves;
using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Outlook;
using Forming.Prediction;
using Forming.Pulling;
using Forming.Springback;
using Forming.Tapers;
using Forming.Wrapping;

namespace Forming.Plans.Drafts;

/// <summary>A form whose folds are rulings of a tapered panel.</summary>
internal static class TaperedPlanner
{
    public static PlanDraft Draft(
        TaperCurve taper, FormJob job, FoldShape fold, PlanDraft? known, PullWork? work, CancellationToken cancellation)
    {
        var (panel, form) = (job.Panel, job.Form);
        var law = panel.Law();
        var formLaw = BendingLaw.Of(form.Sheet);
        var ruled = RuledPanel.Of(taper, panel.Surface, panel.Sheet.ThicknessMm);
        var closed = Closed(ruled, job, fold, law, cancellation);

        // Its length is used in place of a width.
        panel = panel with { WidthMm = closed.Wrap.Turns.Max(turn => ruled.At(turn).Length) };
        form = form with { WidthMm = closed.Folds.Lengths.Max() };
        job = job with { Panel = panel, Form = form };
        var solution = panel.Springback is not SolvedOnWrap
            ? null
            : Reuse.KeepsSolution(known, job) ? known!.TaperSolution : TaperSolution.Solve(ruled, job, fold, work, cancellation);
        var taken = solution is null ? closed : Solved(solution, job, fold, law, cancellation);
        var (wrap, near, far, stepping, folds) = taken;
        var lever = near.LeverMm;
        var pulled = TaperSolution.PullOver(folds, job, fold, RuledStrips.PlacesOf(ruled), lever, wrap.LongestLeverMm(1));
        var prediction = panel.Springback is SolvedOnWrap || panel.Predict
            ? PanelPrediction.Of(pulled, new(PullWork.MostOfSolving, work), cancellation)
            : null;
        var springback = form.SpringbackOf(fold, formLaw, job.Brake);
        var flat = FlatForm.Of(folds, fold, form.LeadInMm, form.LeadOutMm);
        var printThrough = stepping.PrintThroughOf(folds);
        var leastLever = printThrough.WidestFacetMm > 0 ? printThrough.WidestFacetMm : Math.Max(wrap.NearMidMm, wrap.FarMidMm);
        // As with parallel folds; the narrower end has the shorter arm and the larger load.
        var firstStraight = folds.Angles.Length > 1 ? Math.Min(folds.Straight(0, false), folds.Straight(0, true)) : 0;
        var clampGap = panel.Clamp.GapMm ?? Clamp.ChosenGapMm(form.Stepping.Ends, firstStraight);
        var pull = TaperPull.Compute(wrap, law, lever, leastLever, panel.Clamp, clampGap);
        var solid = TaperSolids.Of(wrap.Formed, folds, fold, panel, form);
        var section = TaperSolids.NearSection(solid, folds, fold);
        var flatPanel = new FlatPanel(wrap.Formed);
        var panelLayout = TaperBlanks.PanelLayout(flatPanel, ruled.Sweep, panel, lever);
        return new()
        {
            Job = job,
            PanelLaw = law,
            FormLaw = formLaw,
            Fold = fold,
            Solution = solution?.Solved,
            TaperSolution = solution,
            FinishedSweep = FinishedTurn(ruled),
            FormSweep = folds.EndTurn < ruled.Sweep ? wrap.Formed.Turn.At(folds.EndTurn) : wrap.Formed.TurnBetweenLeads,
            TightestFinishedRadiusMm = wrap.Near.Concat(wrap.Far).Min(place => 1 / place.FinishedCurvature),
            Tightest = wrap.Tightest,
            ShortestStraightMm = ShortestStraight(folds, flat),
            NarrowestFacetMm = NarrowestFacet(folds, stepping, form),
            RunsIntoItself = wrap.Formed.TotalTurn > Math.PI && TaperSolids.RunsIntoItself(solid, cancellation),
            FoldBackMissMm = Refold.MissMm(flat, folds, fold),
            Section = section,
            Stepping = TaperStations.Report(folds, wrap.Formed, form.Stepping),
            Prediction = prediction,
            Outlook = solution is not null && Reuse.KeepsSolution(known, job)
                ? known!.Outlook
                : panel.Springback is SolvedOnWrap && prediction is not null
                    ? WrapOutlook.Of(pulled, prediction, PullWork.PartOf(work), cancellation)
                    : OutlookOf(panel, wrap, folds, stepping, fold, law),
            WhyNotSimulated = prediction is null ? Reuse.WhyNotSimulated(panel.Springback) : null,
            Stations = TaperStations.Of(folds, flat, stepping, job, springback),
            FoldSpringback = springback,
            FoldsWanted = stepping.FoldsWanted,
            Judge = wrap.NearMidMm >= wrap.FarMidMm ? near : far,
            PrintThrough = printThrough,
            Springback = ReportOf(wrap, panel, law),
            FormBlank = TaperBlanks.Of(form.Sheet, flat.Outline, TaperBlanks.Area(flat.Outline), panel.StockSheets),
            PanelBlank = TaperBlanks.Of(panel.Sheet, panelLayout.Outline, panelLayout.AreaMm2, panel.StockSheets),
            PanelMarks = panelLayout.Marks,
            Pull = pull,
            Give = prediction?.Give ?? FormGiveEstimate.Compute(
                TaperPull.SectionsOf(wrap, law),
                Math.Max(lever, leastLever),
                TaperPull.MeanMid(wrap),
                formLaw,
                folds.Lengths.Average(),
                clampGap),
            ClampFlatMm = panel.TrimMm + panel.LeadInMm,
            ClampRoomMm = wrap.Formed.TotalTurn > Math.PI / 2 ? ClampRoom.LeastGapMm(section.InsideProfile, clampGap) : null,
            Taper = Report(wrap, folds, law, taper, solid, prediction),
        };
    }

    // By the balance along each ruling, with no pull behind it.
    private static Planned Closed(RuledPanel ruled, FormJob job, FoldShape fold, BendingLaw law, CancellationToken cancellation)
    {
        var wrap = new TaperWrap(FormedPanel.Solve(ruled, FactorBy(job.Panel.Springback, law, cancellation)), law);
        var choice = new LeverChoice(job, wrap.LongestLeverMm(1), wrap.LongestLeverMm(FacetJudge.LeverShare), wrap.SlideMm);
        return choice.Settle(Stepped, planned => planned.Stepping.WidestFacetMm(planned.Folds));

        Planned Stepped(double hand)
        {
            var near = choice.JudgeAt(hand, law, wrap.NearMidMm);
            var far = near with { CurveMidMm = wrap.FarMidMm };
            var stepping = SteppingOf(wrap, choice.Stepping, near, far, job, fold, cancellation);
            return new(wrap, near, far, stepping, stepping.Solve());
        }
    }

    private static Planned Solved(TaperSolution solution, FormJob job, FoldShape fold, BendingLaw law, CancellationToken cancellation)
    {
        var wrap = new TaperWrap(solution.Formed, law);
        var judge = solution.Solved.Form.Judge;
        var (near, far) = (judge with { CurveMidMm = wrap.NearMidMm }, judge with { CurveMidMm = wrap.FarMidMm });
        return new(wrap, near, far, SteppingOf(wrap, job.Form.Stepping, near, far, job, fold, cancellation), solution.Folds);
    }

    private static TaperStepping SteppingOf(
        TaperWrap wrap, Stepping stepping, FacetJudge near, FacetJudge far, FormJob job, FoldShape fold, CancellationToken cancellation) =>
        new(wrap, stepping, fold, near, far, job.Brake.MinFacetMm, job.Panel.Sheet.ThicknessMm, cancellation);

    private static double FinishedTurn(RuledPanel ruled) => ruled.SeriesOf(turn => ruled.At(turn).NormalRate).Integral().At(ruled.Sweep);

    private sealed record Planned(TaperWrap Wrap, FacetJudge Near, FacetJudge Far, TaperStepping Stepping, TaperFolds Folds);

    // An estimate at the place where most of the bend springs back.
    private static PanelOutlook OutlookOf(
        PanelSpec panel, TaperWrap wrap, TaperFolds folds, TaperStepping stepping, FoldShape fold, BendingLaw law)
    {
        var worst = wrap.Near.Concat(wrap.Far).MinBy(place => place.FinishedCurvature / place.State.Curvature);
        var finished = FinishedTurn(wrap.Formed.Panel);
        double[] facets = [.. Enumerable.Range(0, folds.Angles.Length - 1).Select(j => stepping.Facet(folds, j, false))];
        return ClosedOutlook.Of(
            panel,
            new(facets, folds.Angles, fold.OuterRadiusMm),
            law,
            new(worst.FinishedCurvature, worst.State.Curvature, finished, HasOneRadius: false));
    }

    private static Func<Ruling, double> FactorBy(SpringbackChoice choice, BendingLaw law, CancellationToken cancellation) => choice switch
    {
        MeasuredFactor measured => _ => 1 / measured.Factor,
        _ => ruling => BalancedFactor(law, ruling, cancellation),
    };

    private static double BalancedFactor(BendingLaw law, Ruling ruling, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        return RulingBalance.Factor(law, ruling.NearBendRadius, ruling.FarBendRadius);
    }

    private static double ShortestStraight(TaperFolds folds, FlatForm flat)
    {
        var least = Math.Min(flat.LeadInStraightMm, flat.LeadOutStraightMm);
        for (var j = 0; j + 1 < folds.Angles.Length; j++)
            least = Math.Min(least, Math.Min(folds.Straight(j, false), folds.Straight(j, true)));
        return least;
    }

    private static double NarrowestFacet(TaperFolds folds, TaperStepping stepping, FormSpec form)
    {
        var least = Math.Min(form.LeadInMm, form.LeadOutMm);
        for (var j = 0; j + 1 < folds.Angles.Length; j++)
            least = Math.Min(least, Math.Min(stepping.Facet(folds, j, false), stepping.Facet(folds, j, true)));
        return least;
    }

    private static SpringbackReport ReportOf(TaperWrap wrap, PanelSpec panel, BendingLaw law)
    {
        var formed = wrap.Formed;
        var places = wrap.Near.Concat(wrap.Far).ToArray();
        var tightest = places.MaxBy(place => place.FinishedCurvature);
        var gentlest = places.MinBy(place => place.FinishedCurvature);
        return new(
            SpringbackReport.IdOf(panel.Springback),
            tightest.FinishedCurvature / tightest.State.Curvature,
            gentlest.FinishedCurvature / gentlest.State.Curvature,
            new(formed.TurnBetweenLeads - FinishedTurn(formed.Panel)),
            1 / law.YieldCurvature)
        {
            Flow = law.Flow,
        };
    }

    private static TaperReport Report(
        TaperWrap wrap, TaperFolds folds, BendingLaw law, TaperCurve taper, TaperSolid solid, PanelPrediction? prediction)
    {
        double near = 0, far = 0;
        foreach (var turn in wrap.Turns)
        {
            var ruling = wrap.Formed.Panel.At(turn);
            var factor = wrap.Formed.Factor.At(turn);
            near = Larger(near, RulingBalance.EndBias(law, factor, ruling.NearBendRadius));
            far = Larger(far, RulingBalance.EndBias(law, factor, ruling.FarBendRadius));
        }

        return new()
        {
            EndBiasNear = prediction?.Shape?.Ends?.Near.Bias ?? near,
            EndBiasFar = prediction?.Shape?.Ends?.Far.Bias ?? far,
            FacetFlatnessMm = folds.FacetFlatnessMm,
            TouchMissMm = folds.TouchMissMm,
            LineShiftMm = folds.LineShiftMm,
            LargestLineAngle = folds.LargestLineAngle,
            NeedsOppositeHand = !(taper.Near == taper.Far && wrap.Formed.Panel.PlanFar(0) == Point.Origin),
            Solid = solid,
        };

        static double Larger(double a, double b) => Math.Abs(b) > Math.Abs(a) ? b : a;
    }
}
