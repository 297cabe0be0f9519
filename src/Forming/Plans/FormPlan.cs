using Forming.Blanks;
using Forming.Checks;
using Forming.Facets;
using Forming.Jobs;
using Forming.Layout;
using Forming.Outlook;
using Forming.Plans.Checks;
using Forming.Plans.Drafts;
using Forming.Plans.Notes;
using Forming.Plans.Remedies;
using Forming.Prediction;
using Forming.Pulling;
using Forming.Results;
using Forming.Tapers;
using Forming.Wrapping;

namespace Forming.Plans;

/// <summary>The whole job: from a finished curve and a material to a form, a panel blank, checks and cautions.</summary>
public sealed record FormPlan
{
    private readonly PlanDraft _draft;

    private FormPlan(PlanDraft draft) => _draft = draft;

    /// <summary>The verdict of the checks.</summary>
    public required PlanVerdict Verdict { get; init; }

    /// <summary>What the job is, in a sentence.</summary>
    public FormattableString Headline => Notes.Headline.Of(
        Checks, Form.Stations.Count, Form.StopSettings, _draft.TightestFinishedRadiusMm, _draft.Panel.Sheet.ThicknessMm);

    /// <summary>What to do next, one to three steps.</summary>
    public IReadOnlyList<NextStep> Next => NextSteps.Of(_draft, Checks, Form.StopSettings);

    /// <summary>The form.</summary>
    public required PlannedForm Form { get; init; }

    /// <summary>The panel.</summary>
    public required PlannedPanel Panel { get; init; }

    /// <summary>
    /// How far the finished panel's face turns over the curve: the sweep asked for, and of a taper the turn square to its rulings.
    /// </summary>
    public Angle FinishedTurn => Form.Sweep - Form.Stepping.SweepOver - Panel.Springback.Overbend;

    /// <summary>What only a tapered form has, or null.</summary>
    public TaperReport? Taper { get; init; }

    /// <summary>Every check, passed or not.</summary>
    public required IReadOnlyList<Check> Checks { get; init; }

    /// <summary>Cautions that this job calls for.</summary>
    public IReadOnlyList<SafetyNote> Safety => SafetyNotes.Of(_draft);

    /// <summary>Hints that save a panel.</summary>
    public IReadOnlyList<ShopNote> ShopNotes => Notes.ShopNotes.Of(_draft);

    /// <summary>What every headline value rests on.</summary>
    public IReadOnlyList<Basis> Basis => PlanBasis.Of(_draft);

    /// <summary>Plans a form.</summary>
    /// <param name="job">What is asked.</param>
    /// <param name="needsRemedy">Which of the checks that did not pass are given a remedy; null for all.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <returns>The plan; what cannot be made comes back with its stations and the checks that failed.</returns>
    /// <exception cref="NoSolutionException">What was asked has no answer: the curve reverses, a fold is rounder than the curve
    /// …</exception>
    public static FormPlan Compute(FormJob job, Func<Check, bool>? needsRemedy = null, CancellationToken cancellation = default)
    {
        var draft = PlanDraft.Of(job, null, null, cancellation);
        var checks = new RemedySearch(job, draft, PlanChecks.Of(draft), cancellation).ChecksWithRemedies(needsRemedy ?? (_ => true));
        var form = FormOf(draft);
        EngineWork.Folds.Add(form.Stations.Count);
        return new(draft)
        {
            Verdict = VerdictOf(checks),
            Form = form,
            Panel = PanelOf(draft),
            Taper = draft.Taper,
            Checks = checks,
        };
    }

    /// <summary>The panel over the form as it will stand, with the plan's lever; only where the folds are parallel.</summary>
    /// <param name="job">What was asked, <see cref="PanelSpec.Predict"/> set.</param>
    public PredictionJob PullOf(FormJob job) => new()
    {
        Panel = job.Panel,
        Form = new(
            [.. Form.Stations.SkipLast(1).Select(station => station.FacetAfterMm)],
            [.. Form.Stations.Select(station => station.FoldAngle.Radians)],
            job.Form.FoldRadiusMm + job.Form.Sheet.ThicknessMm),
        Beam = FormBeam.Of(job),
        Ends = job.Form.Stepping.Ends,
        LeverMm = Panel.Prediction?.LeverMm ?? Panel.Pull.LeverMm,
        LongestLeverMm = Panel.Prediction?.LongestLeverMm,
        Units = job.Units,
    };

    private static PlanVerdict VerdictOf(IReadOnlyList<Check> checks)
    {
        var worst = checks.Max(check => check.Verdict);
        return worst switch
        {
            Forming.Checks.Verdict.Fail => PlanVerdict.CannotBeMade,
            Forming.Checks.Verdict.Warn => PlanVerdict.Attention,
            _ => PlanVerdict.Ready,
        };
    }

    private static PlannedForm FormOf(PlanDraft draft)
    {
        var (stations, settings) = StopSettings.Of(draft.Stations, draft.Brake.StopResolution, draft.Form.StopRounding);
        return FormOf(draft, stations, settings);
    }

    private static PlannedForm FormOf(PlanDraft draft, IReadOnlyList<Station> stations, IReadOnlyList<StopSetting> settings) => new()
    {
        Sweep = new(draft.FormSweep),
        Stations = stations,
        StopSettings = settings,
        StopRounding = RoundingOf(draft, stations),
        Stepping = draft.Stepping,
        LargestRoundingMm = draft.Stations.Max(station => Math.Abs(station.MarkMm - station.AtMm)),
        NeutralFactor = draft.Fold.NeutralFactor,
        BlankAtMidNeutralMm = draft.BlankAtMidNeutralMm,
        FoldBackMissMm = draft.FoldBackMissMm,
        Blank = draft.FormBlank,
        Section = draft.Section,
        Give = draft.Give,
        Ribs = draft.Taper is null && (draft.Form.Backing == FormBacking.Ribs || draft.Give.ShareOfYield >= 1)
            ? draft.Ribs with { Outline = Ribs.OutlineOf(draft.Section.InsideProfile, draft.Pull.ClampGapMm) }
            : null,
    };

    private static Angle? RoundingOf(PlanDraft draft, IReadOnlyList<Station> stations) =>
        draft.FoldSpringback.Line is { } line
            ? StopSettings.Closing(
                stations.Select(station => station.StopAngle!.Value.Radians),
                stations.Select(station => station.StopSetting!.Value.Radians),
                line.Slope)
            : null;

    private static PlannedPanel PanelOf(PlanDraft draft) => new()
    {
        Springback = draft.Springback,
        Blank = draft.PanelBlank,
        Marks = draft.PanelMarks,
        PrintThrough = draft.PrintThrough,
        Pull = draft.Pull,
        LargestMissMm = draft.LargestMissMm,
        Prediction = draft.Prediction,
        Outlook = draft.Outlook,
        WhyNotSolved = draft.WhyNotSolved,
    };
}

/// <summary>The verdict of the checks.</summary>
public enum PlanVerdict
{
    /// <summary>Every check passed.</summary>
    Ready,

    /// <summary>At least one check warns.</summary>
    Attention,

    /// <summary>At least one check failed.</summary>
    CannotBeMade,
}

/// <summary>The form: where to fold, how far, and what it is cut from.</summary>
public sealed record PlannedForm
{
    /// <summary>Sum of all fold angles; of a taper the turn of its face square to the rulings.</summary>
    public required Angle Sweep { get; init; }

    /// <summary>The folds in order.</summary>
    public required IReadOnlyList<Station> Stations { get; init; }

    /// <summary>Stop settings, each for the folds whose angles agree within the stop's resolution.</summary>
    public required IReadOnlyList<StopSetting> StopSettings { get; init; }

    /// <summary>
    /// What rounding the stop angles adds to the whole form: above 0 it closes too far; null where a fold has no stop angle.
    /// </summary>
    public required Angle? StopRounding { get; init; }

    /// <summary>How even the folds are.</summary>
    public required SteppingReport Stepping { get; init; }

    /// <summary>Largest effect of rounding the marks [mm].</summary>
    public required double LargestRoundingMm { get; init; }

    /// <summary>Neutral factor in use.</summary>
    public required double NeutralFactor { get; init; }

    /// <summary>Blank length with K = 0.5 less the blank length given [mm]: small folds hardly wrap the nose.</summary>
    public required double BlankAtMidNeutralMm { get; init; }

    /// <summary>Largest miss when the flat layout is folded back [mm].</summary>
    public required double FoldBackMissMm { get; init; }

    /// <summary>The flat blank.</summary>
    public required Blank Blank { get; init; }

    /// <summary>The form in section.</summary>
    public required Section Section { get; init; }

    /// <summary>How far the form gives under the pull.</summary>
    public required FormGive Give { get; init; }

    /// <summary>Ribs to cut where they back the form, or where it would bend for good without; else null, and on a taper.</summary>
    public Ribs? Ribs { get; init; }
}

/// <summary>The panel: what it is cut from, how it is pulled, how it will look.</summary>
public sealed record PlannedPanel
{
    /// <summary>How it springs back.</summary>
    public required SpringbackReport Springback { get; init; }

    /// <summary>The flat blank.</summary>
    public required Blank Blank { get; init; }

    /// <summary>Registration marks on it.</summary>
    public required IReadOnlyList<PanelMark> Marks { get; init; }

    /// <summary>How much of the facets will show.</summary>
    public required PrintThroughResult PrintThrough { get; init; }

    /// <summary>What it takes to pull it.</summary>
    public required Pull Pull { get; init; }

    /// <summary>How it comes off this form in simulation, or null where no pull was simulated.</summary>
    public PanelPrediction? Prediction { get; init; }

    /// <summary>How sure it is what comes off.</summary>
    public required PanelOutlook Outlook { get; init; }

    /// <summary>Why the form was not solved on the simulated pull; null where it was.</summary>
    public FormattableString? WhyNotSolved { get; init; }

    /// <summary>Largest miss of a curve fitted to measured points [mm], or null for any other curve.</summary>
    public double? LargestMissMm { get; init; }
}
