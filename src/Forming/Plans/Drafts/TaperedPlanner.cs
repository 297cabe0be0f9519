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
    public static PlanDraft Draft(TaperCurve taper, FormJob job, FoldShape fold, CancellationToken cancellation)
    {
        var (panel, form) = (job.Panel, job.Form);
        var thickness = panel.Sheet.ThicknessMm;
        var law = panel.Law();
        var formLaw = BendingLaw.Of(form.Sheet);
        var ruled = RuledPanel.Of(taper, panel.Surface, thickness);
        var formed = FormedPanel.Solve(ruled, FactorBy(panel.Springback, law, cancellation));
        var wrap = new TaperWrap(formed, law);

        var choice = new LeverChoice(job, wrap.LongestLeverMm(1), wrap.LongestLeverMm(FacetJudge.LeverShare), wrap.SlideMm);
        var (near, far, stepping, folds) = choice.Settle(Stepped, stepped => stepped.Stepping.WidestFacetMm(stepped.Folds));
        var lever = near.LeverMm;

        // Its length is used in place of a width.
        panel = panel with { WidthMm = wrap.Turns.Max(turn => ruled.At(turn).Length) };
        form = form with { WidthMm = folds.Lengths.Max() };
        job = job with { Panel = panel, Form = form };
        var springback = form.SpringbackOf(fold, formLaw, job.Brake);
        var flat = FlatForm.Of(folds, formed, folds.EndTurn, fold, form.LeadInMm, form.LeadOutMm);
        var printThrough = stepping.PrintThroughOf(folds);
        var leastLever = printThrough.WidestFacetMm > 0 ? printThrough.WidestFacetMm : Math.Max(wrap.NearMidMm, wrap.FarMidMm);
        // As with parallel folds; the narrower end has the shorter arm and the larger load.
        var firstStraight = folds.Angles.Length > 1 ? Math.Min(folds.Straight(0, false), folds.Straight(0, true)) : 0;
        var clampGap = panel.Clamp.GapMm ?? Clamp.ChosenGapMm(form.Stepping.Ends, firstStraight);
        var pull = TaperPull.Compute(wrap, law, lever, leastLever, panel.Clamp, clampGap);
        var solid = TaperSolids.Of(formed, folds, fold, panel, form);
        var section = TaperSolids.NearSection(solid, folds, fold);
        var flatPanel = new FlatPanel(formed);
        var panelLayout = TaperBlanks.PanelLayout(flatPanel, ruled.Sweep, panel, lever);
        return new()
        {
            Job = job,
            PanelLaw = law,
            FormLaw = formLaw,
            Fold = fold,
            FinishedSweep = ruled.SeriesOf(turn => ruled.At(turn).NormalRate).Integral().At(ruled.Sweep),
            FormSweep = formed.Turn.At(folds.EndTurn),
            TightestFinishedRadiusMm = wrap.Near.Concat(wrap.Far).Min(place => 1 / place.FinishedCurvature),
            Tightest = wrap.Tightest,
            ShortestStraightMm = ShortestStraight(folds, flat),
            NarrowestFacetMm = NarrowestFacet(folds, stepping, form),
            RunsIntoItself = formed.TotalTurn > Math.PI && TaperSolids.RunsIntoItself(solid, cancellation),
            FoldBackMissMm = Refold.MissMm(flat, folds, fold),
            Section = section,
            Stepping = TaperStations.Report(folds, formed, form.Stepping),
            WhyNotSimulated = PanelPrediction.TaperReason,
            Outlook = OutlookOf(panel, wrap, folds, stepping, fold, law),
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
            Give = FormGiveEstimate.Compute(
                TaperPull.SectionsOf(wrap, law),
                Math.Max(lever, leastLever),
                TaperPull.MeanMid(wrap),
                formLaw,
                folds.Lengths.Average(),
                clampGap),
            ClampFlatMm = panel.TrimMm + panel.LeadInMm,
            ClampRoomMm = formed.TotalTurn > Math.PI / 2 ? ClampRoom.LeastGapMm(section.InsideProfile, clampGap) : null,
            Taper = Report(wrap, folds, law, taper, solid),
        };

        (FacetJudge Near, FacetJudge Far, TaperStepping Stepping, TaperFolds Folds) Stepped(double hand)
        {
            var nearJudge = choice.JudgeAt(hand, law, wrap.NearMidMm);
            var farJudge = nearJudge with { CurveMidMm = wrap.FarMidMm };
            var rule = new TaperStepping(wrap, choice.Stepping, fold, nearJudge, farJudge, job.Brake.MinFacetMm, thickness, cancellation);
            return (nearJudge, farJudge, rule, rule.Solve());
        }
    }

    // An estimate at the place where most of the bend springs back.
    private static PanelOutlook OutlookOf(
        PanelSpec panel, TaperWrap wrap, TaperFolds folds, TaperStepping stepping, FoldShape fold, BendingLaw law)
    {
        var worst = wrap.Near.Concat(wrap.Far).MinBy(place => place.FinishedCurvature / place.State.Curvature);
        var finished = wrap.Formed.Panel.SeriesOf(turn => wrap.Formed.Panel.At(turn).NormalRate).Integral().At(wrap.Formed.Panel.Sweep);
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
        var finished = formed.Panel.SeriesOf(turn => formed.Panel.At(turn).NormalRate).Integral().At(formed.Panel.Sweep);
        return new(
            SpringbackReport.IdOf(panel.Springback),
            tightest.FinishedCurvature / tightest.State.Curvature,
            gentlest.FinishedCurvature / gentlest.State.Curvature,
            new(formed.TotalTurn - finished),
            1 / law.YieldCurvature);
    }

    private static TaperReport Report(TaperWrap wrap, TaperFolds folds, BendingLaw law, TaperCurve taper, TaperSolid solid)
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
            EndBiasNear = near,
            EndBiasFar = far,
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
