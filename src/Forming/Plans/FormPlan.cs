using Forming.Curves;
using Forming.Layout;
using Forming.Plans.Checks;
using Forming.Plans.Notes;
using Forming.Plans.Remedies;
using Forming.Results;

namespace Forming.Plans;

/// <summary>The whole job: from a finished curve and a material to a form, a panel blank, checks and cautions.</summary>
public sealed record FormPlan
{
    /// <summary>What the checks come to.</summary>
    public required PlanVerdict Verdict { get; init; }

    /// <summary>The form.</summary>
    public required PlannedForm Form { get; init; }

    /// <summary>The panel.</summary>
    public required PlannedPanel Panel { get; init; }

    /// <summary>What only a tapered form has, or null.</summary>
    public TaperReport? Taper { get; init; }

    /// <summary>Every check, passed or not.</summary>
    public required IReadOnlyList<Check> Checks { get; init; }

    /// <summary>Cautions that this job calls for.</summary>
    public required IReadOnlyList<SafetyNote> Safety { get; init; }

    /// <summary>Hints that save a panel.</summary>
    public required IReadOnlyList<ShopNote> ShopNotes { get; init; }

    /// <summary>What every headline figure rests on.</summary>
    public required IReadOnlyList<Basis> Basis { get; init; }

    /// <summary>Plans a form.</summary>
    /// <param name="panel">The finished panel.</param>
    /// <param name="form">The form.</param>
    /// <param name="brake">The brake.</param>
    /// <param name="marks">How the flat is marked.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <returns>The plan; what cannot be made comes back with its stations and the checks that failed.</returns>
    /// <exception cref="NoSolutionException">What was asked has no answer: the curve reverses, a fold is rounder than the curve …</exception>
    public static FormPlan Compute(
        PanelSpec panel, FormSpec form, BrakeSpec brake, MarkSpec marks, CancellationToken cancellation = default) =>
        Compute(new FormJob(panel, form, brake, marks), cancellation: cancellation);

    /// <summary>Plans a form.</summary>
    /// <param name="job">What is asked.</param>
    /// <param name="needsRemedy">Which of the checks that did not pass are given a remedy; null for all.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <returns>The plan; what cannot be made comes back with its stations and the checks that failed.</returns>
    /// <exception cref="NoSolutionException">What was asked has no answer: the curve reverses, a fold is rounder than the curve …</exception>
    public static FormPlan Compute(FormJob job, Func<Check, bool>? needsRemedy = null, CancellationToken cancellation = default)
    {
        var draft = Draft(job, null, cancellation);
        var checks = new RemedySearch(job, draft, PlanChecks.Of(draft), cancellation).ChecksWithRemedies(needsRemedy ?? (_ => true));
        return new()
        {
            Verdict = VerdictOf(checks),
            Form = FormOf(draft),
            Panel = PanelOf(draft),
            Taper = draft.Taper,
            Checks = checks,
            Safety = SafetyNotes.Of(draft),
            ShopNotes = Notes.ShopNotes.Of(draft),
            Basis = PlanBasis.Of(draft),
        };
    }

    /// <summary>Works a job out, without checks and notes.</summary>
    /// <param name="job">What is asked.</param>
    /// <param name="known">A plan of a like job, of which whatever stays the same is taken over, or null.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <exception cref="NoSolutionException">What was asked has no answer.</exception>
    internal static PlanDraft Draft(FormJob job, PlanDraft? known, CancellationToken cancellation)
    {
        var (panel, form, brake, marks) = job;
        var fold = new FoldShape(form.FoldRadiusMm, form.Sheet.ThicknessMm, NeutralFactorOf(form));
        return panel.Curve is TaperCurve taper
            ? TaperedPlan.Draft(taper, panel, form, brake, marks, fold, cancellation)
            : StraightPlan.Draft(panel, form, brake, marks, fold, known, cancellation);
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

    private static PlanVerdict VerdictOf(IReadOnlyList<Check> checks)
    {
        var worst = checks.Max(check => check.Verdict);
        return worst switch
        {
            Results.Verdict.Fail => PlanVerdict.CannotBeMade,
            Results.Verdict.Warn => PlanVerdict.Attention,
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
    };

    private static Angle? RoundingOf(PlanDraft draft, IReadOnlyList<Station> stations) =>
        StationList.SpringbackOf(draft.Fold, draft.Form, draft.FormLaw, draft.Brake).Line is { } line
            ? StopSettings.Closing(
                stations.Select(station => station.StopAngle!.Value.Radians), stations.Select(station => station.StopSetting!.Value.Radians), line.Slope)
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
    };
}
