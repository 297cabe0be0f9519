using Forming.Blanks;
using Forming.Curves;
using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Layout;
using Forming.Outlook;
using Forming.Prediction;
using Forming.Pulling;
using Forming.Results;
using Forming.Springback;
using Forming.Tapers;
using Forming.Wrapping;

namespace Forming.Plans.Drafts;

/// <summary>Everything a plan has worked out, straight or tapered, for its checks and notes to look at.</summary>
internal sealed record PlanDraft
{
    /// <summary>What is asked; on a taper its lengths are used in place of the widths.</summary>
    public required FormJob Job { get; init; }

    public required BendingLaw PanelLaw { get; init; }

    public required BendingLaw FormLaw { get; init; }

    public required FoldShape Fold { get; init; }

    public required FoldSpringback FoldSpringback { get; init; }

    /// <summary>The finished curve on the mid surface; null for a taper.</summary>
    public FinishedCurve? Finished { get; init; }

    /// <summary>Contact curve, lever and folds by the closed form, before any refining; null for a taper.</summary>
    public WrappedForm? Wrapped { get; init; }

    /// <summary>The form that was solved on the simulated pull; null where that was not asked for or the pull cannot be followed.</summary>
    public SolvedForm? Solution { get; init; }

    /// <summary>The same in space, for a taper; else null.</summary>
    public TaperSolution? TaperSolution { get; init; }

    /// <summary>Sweep of the finished panel [rad].</summary>
    public required double FinishedSweep { get; init; }

    /// <summary>Turn of what counts as flat, which the finished sweep leaves out [rad].</summary>
    public double TakenAsFlat { get; init; }

    /// <summary>Sweep of the form [rad].</summary>
    public required double FormSweep { get; init; }

    /// <summary>Smallest finished mid-surface radius [mm].</summary>
    public required double TightestFinishedRadiusMm { get; init; }

    /// <summary>The panel's state where it is bent the most.</summary>
    public required BentState Tightest { get; init; }

    /// <summary>Largest miss of a curve fitted to measured points [mm], or null.</summary>
    public double? LargestMissMm { get; init; }

    /// <summary>Shortest straight part of a facet or a lead [mm].</summary>
    public required double ShortestStraightMm { get; init; }

    /// <summary>Narrowest facet or lead, mold line to mold line [mm].</summary>
    public required double NarrowestFacetMm { get; init; }

    /// <summary>Whether the form, with its leads, runs into itself.</summary>
    public required bool RunsIntoItself { get; init; }

    public required double FoldBackMissMm { get; init; }

    public required Section Section { get; init; }

    public required SteppingReport Stepping { get; init; }

    public required IReadOnlyList<Station> Stations { get; init; }

    /// <summary>How many folds the finish asks for, whatever the caller fixed and the brake can fold.</summary>
    public required Func<int> FoldsWanted { get; init; }

    /// <summary>Tells whether a facet would show, at the end of the folds that is worse off.</summary>
    public required FacetJudge Judge { get; init; }

    public required PrintThroughResult PrintThrough { get; init; }

    public required SpringbackReport Springback { get; init; }

    public required Blank FormBlank { get; init; }

    public required Blank PanelBlank { get; init; }

    public required IReadOnlyList<PanelMark> PanelMarks { get; init; }

    public required Pull Pull { get; init; }

    public required FormGive Give { get; init; }

    /// <summary>Whether that is the closed form's estimate: no pull over the bare form was simulated.</summary>
    public bool IsGiveEstimated => Prediction?.Give is null;

    /// <summary>Ribs that would keep the form from bending, without their outline.</summary>
    public Ribs Ribs => Ribs.Of(
        Form.Sheet,
        Form.WidthMm,
        (Prediction?.FoldPushPerWidth * Panel.WidthMm ?? PullForces.FoldPushFactor * Pull.ForceN) / Form.WidthMm);

    /// <summary>The panel's flat behind the form's first fold, for the clamp to bear on [mm].</summary>
    public required double ClampFlatMm { get; init; }

    /// <summary>
    /// What the finished half of a mirrored panel does while the second is pulled; null where there is none, or on a taper.
    /// </summary>
    public SecondHalf? SecondHalf { get; init; }

    /// <summary>Least gap between the form's overhang and its lead-in [mm], or null where nothing overhangs.</summary>
    public required double? ClampRoomMm { get; init; }

    /// <summary>How the panel comes off the form in simulation, or null where that was not asked for.</summary>
    public PanelPrediction? Prediction { get; init; }

    /// <summary>How sure it is what comes off the form.</summary>
    public required PanelOutlook Outlook { get; init; }

    /// <summary>Why it is not known how the panel comes off; null where the pull was simulated.</summary>
    public FormattableString? WhyNotSimulated { get; init; }

    /// <summary>What only a taper has, or null.</summary>
    public TaperReport? Taper { get; init; }

    /// <summary>Why the form was not solved on the simulated pull; null where it was.</summary>
    public FormattableString? WhyNotSolved => this switch
    {
        { Solution.IsSolved: true } => null,
        { Solution: { } tried } => $"no folds were found that give the sweep asked for; it is {Figure.Angle(Math.Abs(tried.SweepMiss))} off",
        { WhyNotSimulated: { } why } => why,
        { Panel.Springback: not SolvedOnWrap } => $"the folds are those of pure bending",
        { Prediction: { WhyNot: { } lost } } => lost,
        _ => (FormattableString)$"a form of one fold, or of very many, is not solved: the folds are those of pure bending",
    };

    public PanelSpec Panel => Job.Panel;

    public FormSpec Form => Job.Form;

    public BrakeSpec Brake => Job.Brake;

    /// <summary>Tightest inside radius on the form [mm].</summary>
    public double TightestInsideMm => (1 / Tightest.Curvature) - (Panel.Sheet.ThicknessMm / 2);

    /// <summary>Blank length with K = 0.5 less the blank length given [mm].</summary>
    public double BlankAtMidNeutralMm => FormSweep * (0.5 - Fold.NeutralFactor) * Fold.ThicknessMm;

    /// <summary>Works a job out, without checks and notes.</summary>
    /// <param name="job">What is asked.</param>
    /// <param name="known">A plan of a like job, of which whatever stays the same is taken over, or null.</param>
    /// <param name="work">What its simulated pulls may take beside others, or null.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="NoSolutionException">What was asked has no answer.</exception>
    public static PlanDraft Of(FormJob job, PlanDraft? known, PullWork? work, CancellationToken cancellation)
    {
        RefuseConfidence(job);
        var fold = FoldOf(job.Form);
        return job.Panel.Curve is TaperCurve taper
            ? TaperedPlanner.Draft(taper, job, fold, known, work, cancellation)
            : StraightPlanner.Draft(job, fold, known, work, cancellation);
    }

    /// <summary>Shape of the folds of a form.</summary>
    /// <param name="form">The form.</param>
    /// <exception cref="NoSolutionException"><c>form.neutral-factor-needed</c>.</exception>
    public static FoldShape FoldOf(FormSpec form) => new(form.FoldRadiusMm, form.Sheet.ThicknessMm, NeutralFactorOf(form));

    private static void RefuseConfidence(FormJob job)
    {
        if (job.Form.Stepping.Confidence > Facets.Stepping.LeastConfidence && job.Panel.Springback is not SolvedOnWrap)
        {
            throw new NoSolutionException(
                "stepping.confidence",
                "form.stepping.confidence",
                $"how sure it is that no facet shows is known from the simulated pull only",
                $"a confidence of {Facets.Stepping.LeastConfidence}, or the model wrap");
        }
    }

    private static double NeutralFactorOf(FormSpec form)
    {
        if (form.NeutralFactor is { } factor)
            return factor;
        if (form.FoldRadiusMm >= NeutralLine.SmallestRadiusOverThickness * form.Sheet.ThicknessMm)
            return NeutralLine.Factor(form.FoldRadiusMm, form.Sheet.ThicknessMm);
        throw new NoSolutionException(
            "form.neutral-factor-needed",
            "form.neutralFactor",
            $"a fold radius below {NeutralLine.SmallestRadiusOverThickness} of the thickness has no published neutral factor",
            $"your own neutral factor, or a fold radius of at least {Figure.Length(NeutralLine.SmallestRadiusOverThickness * form.Sheet.ThicknessMm)}");
    }
}
