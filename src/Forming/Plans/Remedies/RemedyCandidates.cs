using Forming.Checks;
using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Materials;
using Forming.Plans.Drafts;
using Forming.Results;

namespace Forming.Plans.Remedies;

/// <summary>What may cure a check, the most practical first; the search plans each before it is offered.</summary>
/// <param name="job">What was asked.</param>
/// <param name="draft">What was worked out.</param>
/// <param name="check">The check that did not pass.</param>
internal sealed class RemedyCandidates(FormJob job, PlanDraft draft, Check check)
{
    private readonly ChangeWords _words = new(job, draft);
    private readonly SingleChanges _change = new(job, draft);
    private readonly PullCandidates _pull = new(job, draft, check);

    /// <summary>The candidates of a check.</summary>
    /// <param name="job">What was asked.</param>
    /// <param name="draft">What was worked out.</param>
    /// <param name="check">The check that did not pass.</param>
    public static IEnumerable<RemedyCandidate> For(FormJob job, PlanDraft draft, Check check) =>
        new RemedyCandidates(job, draft, check).Listed();

    /// <summary>What is said where nothing that was tried cures a check.</summary>
    /// <param name="draft">What was worked out.</param>
    /// <param name="check">The check that did not pass.</param>
    public static FormattableString None(PlanDraft draft, Check check) => check.Id switch
    {
        "second-half-pull" or "second-half-clearance" when draft.SecondHalf is null => $"swing the finished half through by hand first, with its weight on a hoist",
        "outlook" => $"bend one springback strip of this coil round the form's radius, work its effective yield out, and plan again with it",
        "outcome" when draft.Taper is null => $"leave out panel.springback, or give effectiveYield there: the plan is then solved on the simulated pull",
        "outcome" => $"wrap a scrap of the same sheet over the form first",
        "wrap-order" or "lever" or "facet-width" when HasFlatBetweenBends(draft.Panel.Curve) =>
            $"bend each side of the flat on a separate form: over a long flat the panel reaches the next bend before it lies on the last folds of this one",
        "fold-back" => $"report this request: the layout disagrees with the section",
        "facet-width" or "facets-show" when !draft.PanelLaw.Flow.IsKnown =>
            $"give the sheet's elongation, or strengthCoefficient and strainHardening, or wrap a scrap first: no other change helps",
        _ => $"no change of one field, or of two together, was found that passes this check and makes no other worse",
    };

    private static bool HasFlatBetweenBends(PanelCurve curve) =>
        curve is SegmentsCurve chain && chain.Segments.Skip(1).SkipLast(1).Any(piece => piece is FlatCurve);

    private IEnumerable<RemedyCandidate> Listed() => check.Id switch
    {
        "straight-part" =>
        [
            .. _change.LongerLeads(draft.Form.Sheet.ThicknessMm, isStraight: true),
            .. _change.FewerFolds(),
            _change.SmallerFoldRadius(0.5),
            _change.ThinnerForm(0.7),
        ],
        "fold-radius" => FoldRadius(),
        "closure" => Closure(),
        "sweep-match" => SweepMatch(),
        "brake-length" =>
        [
            _words.Length(
                JobField.BrakeLength,
                _change.Up(job.Units.FromMm(draft.Brake.LengthMm), draft.Form.WidthMm, 1e5, isFine: false),
                value => $"use a brake that folds at least {value} at once"),
        ],
        "minimum-facet" =>
        [
            .. _change.LongerLeads(draft.Brake.MinFacetMm, isStraight: false),
            .. _change.FewerFolds(),
            _change.NarrowerBrake(draft.NarrowestFacetMm),
        ],
        "stop-resolution" => StopResolution(),
        "stop-angle" => StopAngle(),
        "capacity" => [_change.ThinnerForm(CapacityShare())],
        "facet-width" => FacetWidth(),
        "max-facet" => MaxFacet(),
        "end-bias" => [_change.GentlerBy(1.2)],
        "touch-miss" => [_change.MoreFolds(draft.Stations.Count + 1)],
        "panel-radius" => PanelRadius(),
        "model-range" => [_change.ThinnerPanel(Share(draft.TightestInsideMm / (check.Limit ?? 5))), _change.GentlerBy(Ratio())],
        "flow-curve" => [Coefficient()],
        "lever" or "wrap-order" => _pull.Lever(),
        "facets-show" =>
        [
            _change.MoreFolds((int)Math.Ceiling(draft.Stations.Count * Math.Sqrt(1 / Ratio())) + 1),
            _change.AcceptRipple(draft.Prediction?.Ripple.HeightMm, draft.Prediction?.Ripple.Slope),
        ],
        "hand-force" => _pull.PulledBy(),
        "panel-width" => _pull.PulledBy(),
        "lift-mass" => _pull.PulledBy(),
        "form-give" => [ChangeWords.Ribs(
            $"put ribs under the form: without them its end turns {Figure.Angle(Math.Round(draft.Give.Rotation.Degrees, 1) * Math.PI / 180)} under the pull ({Figure.Angle(draft.Brake.StopResolution.Radians)} allowed)")],
        "form-yield" => FormYield(),
        "pull-line" => _pull.PullLine(),
        "panel-clamp" => _pull.PanelClamp(),
        "form-width" =>
        [
            _words.Length(
                JobField.FormWidth,
                _change.Up(job.Units.FromMm(draft.Form.WidthMm), draft.Panel.WidthMm, 1e5, isFine: false),
                value => $"make the form {value} wide, as wide as the panel"),
        ],
        "marks-apart" => [_words.FinerTape(), _change.FewerFoldsOnly()],
        "strength-coefficient" =>
        [
            Strength(JobField.PanelStrengthCoefficient, draft.Panel.Sheet.Material),
            Strength(JobField.FormStrengthCoefficient, draft.Form.Sheet.Material),
        ],
        "second-half-pull" when draft.SecondHalf is not null => _pull.PulledBy(),
        "second-half-clearance" when draft.SecondHalf is not null => _pull.SecondHalfClearance(),
        "clamp-access" => _pull.ClampAccess(),
        _ => [],
    };

    private IEnumerable<RemedyCandidate> FormYield()
    {
        var (ribs, thicker) = (ChangeWords.Ribs(RibsBefore()), _change.ThickerForm());
        yield return ribs;
        yield return thicker;
        yield return new(thicker.Count, thicker.Start, i => [.. ribs.At(0), .. thicker.At(i)], i => $"{thicker.TextAt(i)}, and put ribs under it");
    }

    private FormattableString RibsBefore() => draft.Taper is null
        ? $"put {draft.Ribs.AtMm.Count} ribs under the form, {Figure.Length(Math.Round(draft.Ribs.SpacingMm))} apart with one at each edge, before anyone pulls on it"
        : (FormattableString)$"put ribs under the form before anyone pulls on it";

    // The value over its limit, or the limit over the value: how far the check misses, above 1.
    private double Ratio() =>
        check is { Value: > 0, Limit: > 0 } ? Math.Max(check.Value.Value / check.Limit.Value, check.Limit.Value / check.Value.Value) : 1.2;

    private double Share(double thicknessMm) => Math.Min(0.98, thicknessMm / draft.Panel.Sheet.ThicknessMm);

    private IEnumerable<RemedyCandidate> FoldRadius()
    {
        if (check.Value > check.Limit)
            yield return _change.SmallerFoldRadius(check.Limit!.Value / check.Value.Value * 0.9);
        else
            yield return _words.Length(
                JobField.FormFoldRadius,
                _change.Up(job.Units.FromMm(draft.Form.FoldRadiusMm), check.Limit!.Value, 1000, isFine: true),
                value => $"fold the form to an inside radius of {value}");
        if (draft.Form.Grain != Grain.Across)
            yield return ChangeWords.Across(JobField.FormGrain, $"cut the form so that its folds run across the grain");
        yield return _change.ThinnerForm(1 / Ratio());
    }

    private IEnumerable<RemedyCandidate> Closure()
    {
        var (leadIn, leadOut) = (draft.Form.LeadInMm, draft.Form.LeadOutMm);
        if (check.Verdict == Verdict.Fail)
        {
            yield return _words.Length(
                JobField.FormLeadOut,
                _change.Down(job.Units.FromMm(leadOut), leadOut / 2, 0.5, isFine: false),
                value => $"shorten the form's lead-out to {value}");
            yield return _words.Length(
                JobField.FormLeadIn,
                _change.Down(job.Units.FromMm(leadIn), leadIn / 2, 0.5, isFine: false),
                value => $"shorten the form's lead-in to {value}");
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
        yield return _change.MoreFolds(folds + 1);
        yield return _change.FewerFoldsOnly();
    }

    private IEnumerable<RemedyCandidate> StopResolution()
    {
        if (draft.Form.Stepping.Ends == SteppingEnds.Half)
            yield return ChangeWords.FullEnds();
        yield return _change.FewerFoldsOnly();
        yield return ChangeWords.Degrees(
            JobField.BrakeStopResolution,
            RemedyValues.Down(
                draft.Brake.StopResolution.Degrees,
                draft.Stations.Min(station => station.FoldAngle.Degrees) / 2,
                0.01,
                RemedyValues.Degrees),
            value => $"use a stop that steps {value}");
    }

    private IEnumerable<RemedyCandidate> StopAngle()
    {
        if (draft.Brake.ReachMm is { } reach)
            yield return _words.Length(
                JobField.BrakeReach,
                _change.Down(job.Units.FromMm(reach), reach / 2, 1, isFine: false),
                value => $"check the reach: where the leaf bears {value} from the nose, its stop is within half a turn");
        yield return _change.MoreFolds(draft.Stations.Count + 1);
        yield return _change.ThickerForm();
    }

    private IEnumerable<RemedyCandidate> FacetWidth()
    {
        var print = draft.PrintThrough;
        if (!print.Known)
        {
            foreach (var candidate in print.WidestFacetMm == 0 ? [_change.MoreFolds(draft.Stations.Count + 1)] : _pull.Lever())
                yield return candidate;
            yield break;
        }

        yield return _change.MoreFolds(Wanted());
        if (draft.Form.Stepping.Rule != SteppingRule.FewestFolds)
            yield return _words.Rule(SteppingRule.FewestFolds, $"spread the folds by the rule fewest-folds, closer where the curve is tight");
        if (draft.Form.Stepping is { Folds: null, FoldAngle: null, SpacingMm: null })
            yield return _change.NarrowerBrake(print.AllowedFacetMm ?? draft.Brake.MinFacetMm / 2);
        yield return _change.AcceptRipple(print.RippleMm, print.Slope);
        yield return _change.ThickerPanel();
    }

    private IEnumerable<RemedyCandidate> MaxFacet()
    {
        yield return _change.MoreFolds((int)Math.Ceiling(draft.Stations.Count * Ratio()));
        if (draft.Form.Stepping is { Folds: null, FoldAngle: null, SpacingMm: null })
            yield return _change.NarrowerBrake(check.Limit!.Value * 0.9);
        yield return _words.Length(
            JobField.SteppingMaxFacet,
            _change.Up(job.Units.FromMm(check.Limit!.Value), check.Value!.Value, 1e4, isFine: true),
            value => $"allow facets of {value} (maxFacet): this brake folds no narrower ones here");
    }

    private IEnumerable<RemedyCandidate> PanelRadius()
    {
        if (draft.Panel.Grain != Grain.Across)
            yield return ChangeWords.Across(JobField.PanelGrain, $"cut the panel so that the bend runs across the grain");
        yield return _change.ThinnerPanel(1 / Ratio());
        yield return _change.GentlerBy(Ratio());
    }

    private RemedyCandidate Strength(JobField field, Material material)
    {
        var now = job.Units.FromMpa(material.StrengthCoefficientMpa ?? 0);
        var values = material.StrengthCoefficientMpa is null
            ? new([], 0)
            : RemedyValues.Up(now, job.Units.FromMpa(check.Limit!.Value), job.Units.FromMpa(10000), RemedyValues.Load);
        return _words.Stress(field, values, value => $"give a strengthCoefficient of at least {value}, or leave it and strainHardening out to have them estimated");
    }

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
}
