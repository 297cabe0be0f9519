using Forming.Checks;
using Forming.Facets;
using Forming.Jobs;
using Forming.Materials;
using Forming.Plans.Checks;
using Forming.Plans.Drafts;
using Forming.Results;

namespace Forming.Plans.Remedies;

/// <summary>What may cure a check, the most practical first; the search plans each before it is offered.</summary>
/// <param name="job">What was asked.</param>
/// <param name="draft">What was worked out.</param>
/// <param name="check">The check that did not pass.</param>
internal sealed class RemedyCandidates(FormJob job, PlanDraft draft, Check check)
{
    /// <summary>A guess lands this share on the safe side of a limit.</summary>
    private const double Safe = 1.001;

    private const double MostFlatMm = 5000;
    private const double LeastClampMm = 10;
    private const double LeastThicknessMm = 0.2;
    private const double MostThicknessMm = 12;
    private const double MostRadiusMm = 5000;

    private readonly ChangeWords _words = new(job, draft);

    /// <summary>The candidates of a check.</summary>
    /// <param name="job">What was asked.</param>
    /// <param name="draft">What was worked out.</param>
    /// <param name="check">The check that did not pass.</param>
    public static IEnumerable<RemedyCandidate> For(FormJob job, PlanDraft draft, Check check) => new RemedyCandidates(job, draft, check).Listed();

    /// <summary>What is said where nothing that was tried cures a check.</summary>
    /// <param name="draft">What was worked out.</param>
    /// <param name="check">The check that did not pass.</param>
    public static FormattableString None(PlanDraft draft, Check check) => check.Id switch
    {
        "second-half-pull" or "second-half-clearance" when draft.SecondHalf is null => $"swing the finished half through by hand first, with its weight on a hoist",
        "fold-back" => $"report this request: the layout disagrees with the section",
        "facet-width" or "predicted-ripple" or "predicted-slope" when !draft.PanelLaw.Flow.IsKnown =>
            $"give the sheet's elongation, or strengthCoefficient and strainHardening, or wrap a scrap first: no other change helps",
        _ => $"no change of one field, or of two together, was found that passes this check and makes no other worse",
    };

    private IEnumerable<RemedyCandidate> Listed() => check.Id switch
    {
        "straight-part" => [.. LongerLeads(draft.Form.Sheet.ThicknessMm, isStraight: true), .. FewerFolds(), SmallerFoldRadius(0.5), ThinnerForm(0.7)],
        "fold-radius" => FoldRadius(),
        "closure" => Closure(),
        "sweep-match" => SweepMatch(),
        "brake-length" => [_words.Length(JobField.BrakeLength, Up(job.Units.FromMm(draft.Brake.LengthMm), draft.Form.WidthMm, 1e5, isFine: false), value => $"use a brake that folds at least {value} at once")],
        "minimum-facet" => [.. LongerLeads(draft.Brake.MinFacetMm, isStraight: false), .. FewerFolds(), NarrowerBrake(draft.NarrowestFacetMm)],
        "stop-resolution" => StopResolution(),
        "stop-angle" => StopAngle(),
        "capacity" => [ThinnerForm(CapacityShare())],
        "facet-width" => FacetWidth(),
        "max-facet" => MaxFacet(),
        "refined-folds" => [_words.NoRefining()],
        "end-bias" => [GentlerBy(1.2)],
        "touch-miss" => [MoreFolds(draft.Stations.Count + 1)],
        "panel-radius" => PanelRadius(),
        "model-range" => [ThinnerPanel(Share(draft.TightestInsideMm / (check.Limit ?? 5))), GentlerBy(Ratio())],
        "flow-curve" => [Coefficient()],
        "lever" or "wrap-order" => Lever(),
        "predicted-ripple" or "predicted-slope" => [MoreFolds((int)Math.Ceiling(draft.Stations.Count * Math.Sqrt(1 / Ratio())) + 1), AcceptRipple(draft.Prediction?.Ripple.HeightMm, draft.Prediction?.Ripple.Slope)],
        "hand-force" => PulledBy(),
        "panel-width" => PulledBy(),
        "lift-mass" => PulledBy(),
        "form-give" => [ChangeWords.Ribs(
            $"put ribs under the form: without them its end turns {Figure.Angle(Math.Round(draft.Give.Rotation.Degrees, 1) * Math.PI / 180)} under the pull ({Figure.Angle(draft.Brake.StopResolution.Radians)} allowed)")],
        "form-yield" => [ChangeWords.Ribs($"put ribs under the form before anyone pulls on it"), ThickerForm()],
        "pull-line" => PullLine(),
        "panel-clamp" => PanelClamp(),
        "form-width" => [_words.Length(JobField.FormWidth, Up(job.Units.FromMm(draft.Form.WidthMm), draft.Panel.WidthMm, 1e5, isFine: false), value => $"make the form {value} wide, as wide as the panel")],
        "marks-apart" => [_words.FinerTape(), FewerFoldsOnly()],
        "strength-coefficient" => [Strength(JobField.PanelStrengthCoefficient, draft.Panel.Sheet.Material), Strength(JobField.FormStrengthCoefficient, draft.Form.Sheet.Material)],
        "second-half-pull" when draft.SecondHalf is not null => PulledBy(),
        "second-half-clearance" when draft.SecondHalf is not null => SecondHalfClearance(),
        "clamp-access" => ClampAccess(),
        _ => [],
    };

    // The figure over its limit, or the limit over the figure: how far the check misses, above 1.
    private double Ratio() => check is { Value: > 0, Limit: > 0 } ? Math.Max(check.Value.Value / check.Limit.Value, check.Limit.Value / check.Value.Value) : 1.2;

    private double Share(double thicknessMm) => Math.Min(0.98, thicknessMm / draft.Panel.Sheet.ThicknessMm);

    private IEnumerable<RemedyCandidate> FoldRadius()
    {
        if (check.Value > check.Limit)
            yield return SmallerFoldRadius(check.Limit!.Value / check.Value.Value * 0.9);
        else
            yield return _words.Length(JobField.FormFoldRadius, Up(job.Units.FromMm(draft.Form.FoldRadiusMm), check.Limit!.Value, 1000, isFine: true), value => $"fold the form to an inside radius of {value}");
        if (draft.Form.Grain != Grain.Across)
            yield return ChangeWords.Across(JobField.FormGrain, $"cut the form so that its folds run across the grain");
        yield return ThinnerForm(1 / Ratio());
    }

    private IEnumerable<RemedyCandidate> Closure()
    {
        var (leadIn, leadOut) = (draft.Form.LeadInMm, draft.Form.LeadOutMm);
        if (check.Verdict == Verdict.Fail)
        {
            yield return _words.Length(JobField.FormLeadOut, Down(job.Units.FromMm(leadOut), leadOut / 2, 0.5, isFine: false), value => $"shorten the form's lead-out to {value}");
            yield return _words.Length(JobField.FormLeadIn, Down(job.Units.FromMm(leadIn), leadIn / 2, 0.5, isFine: false), value => $"shorten the form's lead-in to {value}");
        }

        // The form turns further than the finished bend.
        var sweep = check.Verdict == Verdict.Fail ? draft.FinishedSweep * 0.95 : Math.PI;
        yield return _words.Sweep(sweep, draft.FinishedSweep);
    }

    private IEnumerable<RemedyCandidate> SweepMatch()
    {
        var stepping = draft.Form.Stepping;
        var share = (draft.FormSweep - draft.Stepping.SweepOver.Radians) / draft.FormSweep;
        yield return stepping.FoldAngle is { } angle
            ? ChangeWords.Angles(JobField.SteppingAngle, angle.Degrees * share, value => $"make every fold {value}, so that they add up to the sweep")
            : _words.Spacings(draft.Form.Stepping.SpacingMm!.Value * share);
        var folds = draft.Stations.Count;
        yield return _words.Folds(RemedyValues.Whole(folds, folds, folds), []);
        yield return MoreFolds(folds + 1);
        yield return FewerFoldsOnly();
    }

    private IEnumerable<RemedyCandidate> StopResolution()
    {
        if (draft.Form.Stepping.Ends == SteppingEnds.Half)
            yield return ChangeWords.FullEnds();
        yield return FewerFoldsOnly();
        yield return ChangeWords.Degrees(
            JobField.BrakeStopResolution,
            RemedyValues.Down(draft.Brake.StopResolution.Degrees, draft.Stations.Min(station => station.FoldAngle.Degrees) / 2, 0.01, RemedyValues.Degrees),
            value => $"use a stop that steps {value}");
    }

    private IEnumerable<RemedyCandidate> StopAngle()
    {
        if (draft.Brake.ReachMm is { } reach)
            yield return _words.Length(JobField.BrakeReach, Down(job.Units.FromMm(reach), reach / 2, 1, isFine: false), value => $"check the reach: where the leaf bears {value} from the nose, its stop is within half a turn");
        yield return MoreFolds(draft.Stations.Count + 1);
        yield return ThickerForm();
    }

    private IEnumerable<RemedyCandidate> FacetWidth()
    {
        var print = draft.PrintThrough;
        if (!print.Known)
        {
            foreach (var candidate in print.WidestFacetMm == 0 ? [MoreFolds(draft.Stations.Count + 1)] : Lever())
                yield return candidate;
            yield break;
        }

        yield return MoreFolds(Wanted());
        if (draft.Form.Stepping.Rule != SteppingRule.FewestFolds)
            yield return _words.Rule(SteppingRule.FewestFolds, $"spread the folds by the rule fewest-folds, closer where the curve is tight");
        if (draft.Form.Stepping is { Folds: null, FoldAngle: null, SpacingMm: null })
            yield return NarrowerBrake(print.AllowedFacetMm ?? draft.Brake.MinFacetMm / 2);
        yield return AcceptRipple(print.RippleMm, print.Slope);
        yield return ThickerPanel();
    }

    private IEnumerable<RemedyCandidate> MaxFacet()
    {
        yield return MoreFolds((int)Math.Ceiling(draft.Stations.Count * Ratio()));
        if (draft.Form.Stepping is { Folds: null, FoldAngle: null, SpacingMm: null })
            yield return NarrowerBrake(check.Limit!.Value * 0.9);
        yield return _words.Length(
            JobField.SteppingMaxFacet, Up(job.Units.FromMm(check.Limit!.Value), check.Value!.Value, 1e4, isFine: true), value => $"allow facets of {value} (maxFacet): this brake folds no narrower ones here");
    }

    private IEnumerable<RemedyCandidate> PanelRadius()
    {
        if (draft.Panel.Grain != Grain.Across)
            yield return ChangeWords.Across(JobField.PanelGrain, $"cut the panel so that the bend runs across the grain");
        yield return ThinnerPanel(1 / Ratio());
        yield return GentlerBy(Ratio());
    }

    private IEnumerable<RemedyCandidate> Lever()
    {
        var (facet, slide) = (draft.PrintThrough.WidestFacetMm, draft.Judge.SlideMm);
        var least = FacetJudge.LeastLeverMm(facet, slide);
        var inOrder = (draft.Pull.LongestLeverMm ?? double.PositiveInfinity) * FacetJudge.LeverShare;
        var now = draft.Judge.LeverMm;
        var folds = draft.Stations.Count;
        if (now > inOrder && inOrder > 0)
        {
            var shorter = Down(job.Units.FromMm(now), inOrder, 1, isFine: false);
            yield return _words.Length(JobField.PanelLever, shorter, value => $"pull {value} past the end of the curve");
            if (shorter.Numbers.Count > 0)
            {
                var lever = new JobChange(JobField.PanelLever, shorter.Numbers[shorter.Start]);
                yield return _words.Folds(MoreThan(folds, (int)Math.Ceiling(folds * facet / Math.Max(inOrder - slide, 1))), [lever]);
            }
        }
        else if (now < least)
        {
            yield return _words.LongerLever(Up(job.Units.FromMm(now), least * Safe, MostFlatMm, isFine: false));
        }

        if (now < least)
            yield return MoreFolds((int)Math.Ceiling(folds * facet / Math.Max(now - slide, 1)));
        if (draft.Prediction is not null)
            yield return MoreFolds(folds + 2);
        yield return ThickerPanel();
        yield return _words.Sweep(draft.FinishedSweep * 0.7, draft.FinishedSweep);
        yield return _words.Tighter();
    }

    private IEnumerable<RemedyCandidate> PulledBy()
    {
        var force = check.Id == "second-half-pull" ? draft.SecondHalf!.ForceN : draft.Pull.ForceN;
        var width = draft.Panel.WidthMm;
        var mass = Math.Max(draft.PanelBlank.MassKg, draft.FormBlank.MassKg);
        var by = draft.Panel.PullBy;
        if (by.RatedN is null)
        {
            var people = check.Id switch
            {
                "hand-force" or "second-half-pull" => (int)Math.Ceiling(Math.Min(force / WorkingLimits.HandForceN, 1000)),
                "panel-width" => (int)Math.Ceiling(width / WorkingLimits.OnePersonWidthMm),
                _ => (int)Math.Ceiling(Math.Min(mass / WorkingLimits.LiftKg, 1000)),
            };
            if (people <= (check.Id == "lift-mass" ? WorkingLimits.MostLifters : PullBy.MostPeople))
                yield return HandForceRemedy.People(RemedyValues.Whole(by.People + 1, PullBy.MostPeople, people));
        }

        yield return HandForceRemedy.Rated(
            RemedyValues.Up(
            job.Units.FromN(by.RatedN ?? Math.Min(force, mass * WorkingLimits.Gravity) / 2),
            job.Units.FromN(check.Id is "hand-force" or "second-half-pull" ? force : Math.Max(force, mass * WorkingLimits.Gravity)),
            job.Units.FromN(1e9),
            RemedyValues.Load),
            job.Units);
    }

    private IEnumerable<RemedyCandidate> PullLine()
    {
        var (panel, lever) = (draft.Panel, draft.Judge.LeverMm);
        var sheet = panel.SheetPastCurveMm;
        yield return _words.Length(
            JobField.PanelLever, Down(job.Units.FromMm(lever), sheet, 1, isFine: false), value => $"pull {value} past the end of the curve");
        yield return _words.Length(
            JobField.PanelLeadOut,
            Up(job.Units.FromMm(panel.LeadOutMm), panel.LeadOutMm + lever - sheet, MostFlatMm, isFine: false),
            value => panel.Mirrored
                ? $"leave a flat of {value} between the two curves"
                : (FormattableString)$"leave a lead-out of {value} on the panel, and trim it after");
    }

    private IEnumerable<RemedyCandidate> PanelClamp()
    {
        var (panel, flat) = (draft.Panel, draft.ClampFlatMm);
        if (flat > SetupChecks.LeastGripMm)
        {
            yield return _words.Length(
                JobField.ClampGap, Down(job.Units.FromMm(panel.Clamp.GapMm), flat, SetupChecks.LeastGripMm, isFine: false), value => $"set the clamp {value} behind the first fold");
        }

        yield return _words.Length(
            JobField.PanelLeadIn,
            Up(job.Units.FromMm(panel.LeadInMm), panel.LeadInMm + check.Limit!.Value - flat, MostFlatMm, isFine: false),
            value => $"leave a lead-in of {value} on the panel for the clamp, and trim it after");
    }

    private IEnumerable<RemedyCandidate> SecondHalfClearance()
    {
        var lacks = check.Limit!.Value - check.Value!.Value;
        yield return _words.Length(
            JobField.FormLeadOut, Down(job.Units.FromMm(draft.Form.LeadOutMm), draft.Form.LeadOutMm - lacks, 0.5, isFine: false), value => $"shorten the form's lead-out to {value}, so that it clears the finished half");
        yield return _words.Length(
            JobField.ClampHeight, Down(job.Units.FromMm(draft.Panel.Clamp.HeightMm), draft.Panel.Clamp.HeightMm - lacks, LeastClampMm, isFine: false), value => $"use a clamp at most {value} high");
        yield return _words.Length(
            JobField.FormLeadIn, Down(job.Units.FromMm(draft.Form.LeadInMm), draft.Form.LeadInMm - lacks, 0.5, isFine: false), value => $"shorten the form's lead-in to {value}, so that it clears the finished half");
        yield return _words.Length(
            JobField.PanelLeadOut, Up(job.Units.FromMm(draft.Panel.LeadOutMm), draft.Panel.LeadOutMm + lacks, MostFlatMm, isFine: false), value => $"leave a flat of {value} between the two curves");
        yield return _words.Length(
            JobField.PanelLeadIn, Down(job.Units.FromMm(draft.Panel.LeadInMm), draft.Panel.LeadInMm - lacks, 1, isFine: false), value => $"shorten the panel's lead-in to {value}, so that the finished half swings clear");
    }

    private RemedyCandidate Strength(JobField field, Material material)
    {
        var now = job.Units.FromMpa(material.StrengthCoefficientMpa ?? 0);
        var values = material.StrengthCoefficientMpa is null
            ? new([], 0)
            : RemedyValues.Up(now, job.Units.FromMpa(check.Limit!.Value), job.Units.FromMpa(10000), RemedyValues.Load);
        return _words.Stress(field, values, value => $"give a strengthCoefficient of at least {value}, or leave it and strainHardening out to have them estimated");
    }

    private IEnumerable<RemedyCandidate> ClampAccess()
    {
        var clamp = draft.Panel.Clamp;
        if (draft.Form.LeadInMm <= clamp.GapMm)
        {
            yield return _words.Length(
                JobField.FormLeadIn, Up(job.Units.FromMm(draft.Form.LeadInMm), clamp.GapMm * Safe, MostFlatMm, isFine: false), value => $"make the form's lead-in {value} long, so that it reaches under the clamp");
            yield return _words.Length(
                JobField.ClampGap, Down(job.Units.FromMm(clamp.GapMm), draft.Form.LeadInMm / Safe, 0.5, isFine: false), value => $"set the clamp {value} behind the first fold");
            yield break;
        }

        if (draft.ClampRoomMm is { } room && room >= LeastClampMm)
            yield return _words.Length(JobField.ClampHeight, Down(job.Units.FromMm(clamp.HeightMm), room, LeastClampMm, isFine: false), value => $"use a clamp at most {value} high");
        yield return _words.Length(
            JobField.FormLeadOut, Down(job.Units.FromMm(draft.Form.LeadOutMm), draft.Form.LeadOutMm * 0.7, 0.5, isFine: false), value => $"shorten the form's lead-out to {value}, so that it clears the clamp");
        yield return _words.Length(
            JobField.FormLeadIn, Up(job.Units.FromMm(draft.Form.LeadInMm), draft.Form.LeadInMm * 1.3, MostFlatMm, isFine: false), value => $"make the form's lead-in {value} long");
        yield return _words.Length(
            JobField.ClampGap, Up(job.Units.FromMm(clamp.GapMm), clamp.GapMm * 1.3, draft.Form.LeadInMm, isFine: false), value => $"set the clamp {value} behind the first fold");
        yield return _words.Length(
            JobField.FormLeadIn, Down(job.Units.FromMm(draft.Form.LeadInMm), clamp.GapMm * 1.1, 0.5, isFine: false), value => $"shorten the form's lead-in to {value}, so that nothing hangs over it");
        yield return _words.Sweep(draft.FinishedSweep * 0.95, draft.FinishedSweep);
    }

    // Each lead that is too short gets what it lacks.
    private IEnumerable<RemedyCandidate> LongerLeads(double limitMm, bool isStraight)
    {
        var lacks = new[] { (JobField.FormLeadIn, draft.Form.LeadInMm, draft.Stations[0]), (JobField.FormLeadOut, draft.Form.LeadOutMm, draft.Stations[^1]) }
            .Select(lead => (Field: lead.Item1, Now: lead.Item2, Lack: limitMm + (isStraight ? draft.Fold.OuterRadiusMm * Math.Tan(lead.Item3.FoldAngle.Radians / 2) : 0) - lead.Item2))
            .Where(lead => lead.Lack > 0).ToArray();
        if (lacks.Length > 0)
            yield return _words.Leads([.. lacks.Select(lead => (lead.Field, lead.Now + lead.Lack))]);
    }

    private IEnumerable<RemedyCandidate> FewerFolds()
    {
        yield return FewerFoldsOnly();
        if (draft.Form.Stepping.Ends == SteppingEnds.Half)
            yield return ChangeWords.FullEnds();
    }

    private RemedyCandidate FewerFoldsOnly()
    {
        var folds = draft.Stations.Count;
        return _words.Folds(RemedyValues.Whole(folds - 1, 1, folds - 1), []);
    }

    private RemedyCandidate MoreFolds(int guess) => _words.Folds(MoreThan(draft.Stations.Count, guess), []);

    private static RemedyValues MoreThan(int folds, int guess) => RemedyValues.Whole(folds + 1, Math.Min(1000, (5 * folds) + 20), guess);

    private int Wanted()
    {
        try
        {
            return draft.FoldsWanted();
        }
        catch (NoSolutionException)
        {
            return draft.Stations.Count + 1;
        }
    }

    private RemedyCandidate NarrowerBrake(double guessMm) => _words.Length(
        JobField.BrakeMinFacet, Down(job.Units.FromMm(draft.Brake.MinFacetMm), guessMm, 0.5, isFine: true), value => $"use a brake that folds facets down to {value}");

    private RemedyCandidate AcceptRipple(double? rippleMm, Angle? slope) => PlainerFinish.For(job.Units, draft.Panel.Finish, rippleMm ?? 0, slope ?? default);

    private RemedyCandidate SmallerFoldRadius(double share) => _words.Length(
        JobField.FormFoldRadius, Down(job.Units.FromMm(draft.Form.FoldRadiusMm), draft.Form.FoldRadiusMm * share, 0.05, isFine: true), value => $"fold the form to an inside radius of {value}");

    private RemedyCandidate ThinnerForm(double share) => _words.Thickness(
        JobField.FormThickness, job.FormGaugeSystem, draft.Form.Sheet.ThicknessMm, draft.Form.Sheet.ThicknessMm * share, LeastThicknessMm, sheet => $"make the form of {sheet} sheet");

    private RemedyCandidate ThickerForm() => _words.Thickness(
        JobField.FormThickness, job.FormGaugeSystem, draft.Form.Sheet.ThicknessMm, draft.Form.Sheet.ThicknessMm * 1.3, MostThicknessMm, sheet => $"make the form of {sheet} sheet");

    private RemedyCandidate ThinnerPanel(double share) => _words.Thickness(
        JobField.PanelThickness, job.PanelGaugeSystem, draft.Panel.Sheet.ThicknessMm, draft.Panel.Sheet.ThicknessMm * share, LeastThicknessMm, sheet => $"make the panel of {sheet} sheet");

    private RemedyCandidate ThickerPanel() => _words.Thickness(
        JobField.PanelThickness, job.PanelGaugeSystem, draft.Panel.Sheet.ThicknessMm, draft.Panel.Sheet.ThicknessMm * 1.3, MostThicknessMm, sheet => $"make the panel of {sheet} sheet");

    private RemedyCandidate GentlerBy(double ratio) => _words.Gentler(draft.TightestInsideMm, Math.Min(ratio * Safe, 100), MostRadiusMm);

    private double CapacityShare()
    {
        var capacity = draft.Brake.Capacity!;
        var limit = capacity.ThicknessMm * Math.Sqrt(capacity.UltimateMpa / draft.Form.Sheet.Material.UltimateMpa);
        return Math.Min(0.99, limit * Math.Sqrt(WorkingLimits.CapacityInHand) / draft.Form.Sheet.ThicknessMm);
    }

    private RemedyCandidate Coefficient()
    {
        var now = job.Units.FromMpa(draft.Panel.Sheet.Material.StrengthCoefficientMpa!.Value);
        return _words.Stress(
            JobField.PanelStrengthCoefficient,
            RemedyValues.Down(now, now * 0.9, job.Units.FromMpa(draft.Panel.Sheet.Material.YieldMpa), RemedyValues.Load),
            value => $"fit the flow curve at small strain: with this strainHardening a strengthCoefficient of {value} meets the proof stress");
    }

    private RemedyValues Up(double now, double guessMm, double mostMm, bool isFine) =>
        RemedyValues.Up(now, job.Units.FromMm(guessMm), job.Units.FromMm(mostMm), isFine ? RemedyValues.Fine(job.Units) : RemedyValues.Tape(job.Units));

    private RemedyValues Down(double now, double guessMm, double leastMm, bool isFine) =>
        RemedyValues.Down(now, job.Units.FromMm(guessMm), job.Units.FromMm(leastMm), isFine ? RemedyValues.Fine(job.Units) : RemedyValues.Tape(job.Units));
}
