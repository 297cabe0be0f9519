using Forming.Facets;
using Forming.Jobs;
using Forming.Plans.Drafts;

namespace Forming.Plans.Remedies;

/// <summary>Single changes to a job that several checks have in common: more or fewer folds, other sheet, longer leads.</summary>
/// <param name="job">What was asked.</param>
/// <param name="draft">What was worked out.</param>
internal sealed class SingleChanges(FormJob job, PlanDraft draft)
{
    /// <summary>A guess lands this share on the safe side of a limit.</summary>
    public const double Safe = 1.001;

    /// <summary>Thinner or thicker sheet, and flatter curves, are not proposed: assumptions of what a shop has to hand.</summary>
    private const double LeastThicknessMm = 0.2;

    /// <inheritdoc cref="LeastThicknessMm"/>
    private const double MostThicknessMm = 12;

    /// <inheritdoc cref="LeastThicknessMm"/>
    private const double MostRadiusMm = 5000;

    private readonly ChangeWords _words = new(job, draft);

    // Each lead that is too short gets what it lacks.
    public IEnumerable<RemedyCandidate> LongerLeads(double limitMm, bool isStraight)
    {
        var lacks = new[]
            {
                (JobField.FormLeadIn, draft.Form.LeadInMm, draft.Stations[0]),
                (JobField.FormLeadOut, draft.Form.LeadOutMm, draft.Stations[^1]),
            }
            .Select(lead => (
                Field: lead.Item1,
                Now: lead.Item2,
                Lack: limitMm + (isStraight ? draft.Fold.OuterRadiusMm * Math.Tan(lead.Item3.FoldAngle.Radians / 2) : 0) - lead.Item2))
            .Where(lead => lead.Lack > 0).ToArray();
        if (lacks.Length > 0)
            yield return _words.Leads([.. lacks.Select(lead => (lead.Field, lead.Now + lead.Lack))]);
    }

    public IEnumerable<RemedyCandidate> FewerFolds()
    {
        yield return FewerFoldsOnly();
        if (draft.Form.Stepping.Ends == SteppingEnds.Half)
            yield return ChangeWords.FullEnds();
    }

    public RemedyCandidate FewerFoldsOnly()
    {
        var folds = draft.Stations.Count;
        return _words.Folds(RemedyValues.Whole(folds - 1, 1, folds - 1), []);
    }

    public RemedyCandidate MoreFolds(int guess) => _words.Folds(MoreThan(draft.Stations.Count, guess), []);

    public static RemedyValues MoreThan(int folds, int guess) => RemedyValues.Whole(folds + 1, Math.Min(1000, (5 * folds) + 20), guess);

    public RemedyCandidate NarrowerBrake(double guessMm) => _words.Length(
        JobField.BrakeMinFacet, Down(job.Units.FromMm(draft.Brake.MinFacetMm), guessMm, 0.5, isFine: true), value => $"use a brake that folds facets down to {value}");

    public RemedyCandidate AcceptRipple(double? rippleMm, Angle? slope) =>
        PlainerFinish.For(job.Units, draft.Panel.Finish, rippleMm ?? 0, slope ?? default);

    public RemedyCandidate SmallerFoldRadius(double share) => _words.Length(
        JobField.FormFoldRadius,
        Down(job.Units.FromMm(draft.Form.FoldRadiusMm), draft.Form.FoldRadiusMm * share, 0.05, isFine: true),
        value => $"fold the form to an inside radius of {value}");

    public RemedyCandidate ThinnerForm(double share) => FormSheet(share, LeastThicknessMm);

    public RemedyCandidate ThickerForm() => FormSheet(1.3, MostThicknessMm);

    public RemedyCandidate ThinnerPanel(double share) => PanelSheet(share, LeastThicknessMm);

    public RemedyCandidate ThickerPanel(double share = 1.3, double most = double.PositiveInfinity) =>
        PanelSheet(share, Math.Min(most * draft.Panel.Sheet.ThicknessMm, MostThicknessMm));

    public RemedyCandidate GentlerBy(double ratio) => _words.Gentler(draft.TightestInsideMm, Math.Min(ratio * Safe, 100), MostRadiusMm);

    public RemedyValues Up(double now, double guessMm, double mostMm, bool isFine) =>
        RemedyValues.Up(
            now, job.Units.FromMm(guessMm), job.Units.FromMm(mostMm), isFine ? RemedyValues.Fine(job.Units) : RemedyValues.Tape(job.Units));

    public RemedyValues Down(double now, double guessMm, double leastMm, bool isFine) =>
        RemedyValues.Down(
            now,
            job.Units.FromMm(guessMm),
            job.Units.FromMm(leastMm),
            isFine ? RemedyValues.Fine(job.Units) : RemedyValues.Tape(job.Units));

    private RemedyCandidate FormSheet(double share, double limitMm)
    {
        var now = draft.Form.Sheet.ThicknessMm;
        return _words.Thickness(JobField.FormThickness, job.FormGaugeSystem, now, now * share, limitMm, sheet => $"make the form of {sheet} sheet");
    }

    private RemedyCandidate PanelSheet(double share, double limitMm)
    {
        var now = draft.Panel.Sheet.ThicknessMm;
        return _words.Thickness(JobField.PanelThickness, job.PanelGaugeSystem, now, now * share, limitMm, sheet => $"make the panel of {sheet} sheet");
    }
}
