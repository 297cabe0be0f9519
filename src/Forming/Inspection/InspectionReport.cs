using Forming.Checks;
using Forming.Layout;
using Forming.Plans;
using Forming.Plans.Notes;
using Forming.Results;

namespace Forming.Inspection;

/// <summary>A folded form against its plan.</summary>
public sealed record InspectionReport
{
    /// <summary>The form as it should be; along its near edge where the folds are not parallel.</summary>
    public required FoldedPolygon Planned { get; init; }

    /// <summary>The form as it was measured, as it is planned.</summary>
    public required FoldedPolygon Built { get; init; }

    /// <summary>Its facets along the far edge where the folds are not parallel; else null.</summary>
    public FoldedPolygon? BuiltFar { get; init; }

    /// <summary>How far it is off.</summary>
    public required FormDeviation Off { get; init; }

    /// <summary>
    /// Where it leaves the wanted curve, or null where every mold line stays within tolerance; the lead-out's direction is judged by the
    /// closing angle.
    /// </summary>
    public required Departure? Departure { get; init; }

    /// <summary>Measurements that are hard to believe.</summary>
    public required IReadOnlyList<Suspicion> Suspect { get; init; }

    /// <summary>What it does to the panel.</summary>
    public required PanelEffect Panel { get; init; }

    /// <summary>The fewest corrections.</summary>
    public required CorrectionPlan Corrections { get; init; }

    /// <summary>The tolerances, held or not.</summary>
    public required IReadOnlyList<Check> Checks { get; init; }

    /// <summary>What to know about the results.</summary>
    public required IReadOnlyList<ShopNote> Notes { get; init; }

    /// <summary>What the results rest on.</summary>
    public required IReadOnlyList<Basis> Basis { get; init; }

    /// <summary>What to do next.</summary>
    public IReadOnlyList<NextStep> Next => Checks.FirstOrDefault(check => check.Verdict != Verdict.Pass) switch
    {
        null =>
        [
            new(NextStepKind.PullPanel, $"The form is good. Clamp the panel and pull it, as its plan says."),
            new(NextStepKind.MeasurePanel, $"Measure the sweep and the radius of the panel that comes off, and send them with the form as it was measured."),
        ],
        { Remedy: { } remedy } when Corrections is { Found: true, Folds.Count: > 0 } =>
            [new(NextStepKind.CorrectFolds, $"Correct the form, then measure it again: {remedy.Text}.")],
        var off => [NextSteps.Change(off, $"Pull no panel over it")],
    };

    /// <summary>Inspects a form.</summary>
    /// <param name="job">The form, and what was measured on it.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="NoSolutionException"><c>inspection.…</c>: no form could give these measurements.</exception>
    public static InspectionReport Of(InspectionJob job, CancellationToken cancellation = default)
    {
        var report = job.Taper is { } taper ? OfTaper(taper, job, cancellation) : OfParallel(job, cancellation);
        return report with
        {
            Departure = report.Off.DepartureBeyond(job.Rules.VertexMm),
            Checks = ChecksOf(report, job.Rules),
            Notes = NotesOf(report, job),
        };
    }

    private static InspectionReport OfParallel(InspectionJob job, CancellationToken cancellation)
    {
        var planned = job.Planned;
        var built = AsBuilt.Of(job.Measured, planned, job.Fold);
        return new()
        {
            Planned = planned,
            Built = built,
            Off = FormDeviation.Of(built, planned),
            Departure = null,
            Suspect = Suspicions.Of(job.Measured, built, planned),
            Panel = PanelEffect.Of(planned, built, job.Fold.OuterRadiusMm, job.Ends, job.Panel, job.Beam, cancellation),
            Corrections = CorrectionSearch.Find(built, planned, job.Rules, cancellation),
            Checks = [],
            Notes = [],
            Basis = BasisOf(job),
        };
    }

    private static InspectionReport OfTaper(TaperedForm planned, InspectionJob job, CancellationToken cancellation)
    {
        var built = planned.Built(job.Measured, job.Fold);
        return new()
        {
            Planned = planned.Near.Listed,
            Built = built.Near,
            BuiltFar = built.Far,
            Off = FormDeviation.Of(built.Form, planned.Form),
            Departure = null,
            Suspect = Suspicions.Of(job.Measured, built, planned),
            Panel = PanelEffect.Of(planned.Form, built.Form, job.Fold.OuterRadiusMm, job.Ends, job.Panel!, job.Beam, cancellation),
            Corrections = CorrectionSearch.Find(built.Form, planned.Form, job.Rules, cancellation),
            Checks = [],
            Notes = [],
            Basis = BasisOf(job),
        };
    }

    private static List<Check> ChecksOf(InspectionReport report, CorrectionRules rules)
    {
        var remedy = report.Corrections is { Found: true, Folds.Count: > 0 } plan
            ? CorrectionsIn(plan, report.Built, rules)
            : $"more steps a fold, both directions, a wider tolerance, or a new form: no correction of up to {CorrectionSearch.MostFolds} folds was found";
        var closes = Math.Abs(report.Off.Closing.Radians) <= rules.Closing.Radians + CorrectionSearch.Slack;
        var lies = report.Off.LargestHeldMm <= rules.VertexMm + CorrectionSearch.Slack;
        return
        [
            new(
                CheckIds.ClosingTolerance,
                closes ? Verdict.Pass : Verdict.Warn,
                Math.Abs(report.Off.Closing.Radians),
                rules.Closing.Radians,
                $"the form is {Figure.Angle(Math.Abs(report.Off.Closing.Radians))} too {(report.Off.Closing.Radians < 0 ? "open" : "tight")} ({Figure.Angle(rules.Closing.Radians)} allowed)",
                closes ? null : remedy),
            new(
                CheckIds.VertexTolerance,
                lies ? Verdict.Pass : Verdict.Warn,
                report.Off.LargestHeldMm,
                rules.VertexMm,
                $"the worst mold line is {Figure.Length(report.Off.LargestHeldMm)} off with the first flat fixed ({Figure.Length(rules.VertexMm)} allowed), {Figure.Length(report.Off.LargestFittedMm)} after the best fit",
                lies ? null : remedy),
        ];
    }

    private static FormattableString CorrectionsIn(CorrectionPlan plan, FoldedPolygon built, CorrectionRules rules)
    {
        FormattableString text = $"";
        for (var i = 0; i < plan.Folds.Count; i++)
        {
            var (fold, steps) = plan.Folds[i];
            var to = Figure.Angle(built.FoldAngles[fold] + steps * rules.Step.Radians);
            text = $"{text}{(i == 0 ? "" : ", ")}{(steps > 0 ? "close" : "open")} fold {fold + 1} by {Math.Abs(steps)} {(Math.Abs(steps) == 1 ? "step" : "steps")}, to {to}";
        }

        return text;
    }

    private static List<ShopNote> NotesOf(InspectionReport report, InspectionJob job)
    {
        var notes = new List<ShopNote>();
        if (report.Planned.Folds > 1)
        {
            var shortest = Facets(report.Built).Concat(report.BuiltFar is { } far ? Facets(far) : []).Min();
            var reading = Math.Atan(0.5 / shortest);
            notes.Add(new("reading-error", $"A gap or height read {Figure.Length(0.5)} wrong over the shortest facet, {Figure.Length(shortest)}, is {Figure.Angle(reading)}: measure over several folds where that is more than the tolerance."));
        }

        if (report.Suspect.Count > 0)
            notes.Add(new("measure-again", $"Some measurements are hard to believe; corrections follow from them all the same. Measure those again before bending anything."));
        var plan = report.Corrections;
        if (!plan.Found)
        {
            notes.Add(plan.HitLimit
                ? new("search-ended", $"The search ended after {plan.Nodes} places: at least {plan.LowerBound} folds have to be corrected, more is not known.")
                : plan.LowerBound > report.Built.Folds
                ? new("no-correction", $"With these steps no correction at all works: proven for sharp mold lines.")
                : new("no-correction", $"With these steps no correction of fewer than {plan.LowerBound} folds works: proven for sharp mold lines. More than {CorrectionSearch.MostFolds} folds are not tried."));
        }
        else if (plan.Folds.Count > 0)
        {
            notes.Add(new("correct-by-steps", $"Corrections are whole steps of the stop beyond what each fold has now; springback of so small a fold is not foreseen, so creep up on it and measure."));
            if (!plan.IsGentlest)
                notes.Add(new("not-all-compared", $"The search ended after {plan.Nodes} places: fewer folds do not work, but a gentler choice of as many may exist."));
        }

        if (job.Measured is { Angles: not null, FacetsMm: null, SpacingsMm: null, Far: null })
            notes.Add(new("facets-as-planned", $"Only angles were measured: the facets are taken as planned."));
        if (job.Taper is not null && IsMeasuredAlong(job.Measured) != IsMeasuredAlong(job.Measured.Far))
            notes.Add(new("one-end-measured", $"The facets were measured at one end only: at the other end they are taken as planned."));
        return notes;

        static IEnumerable<double> Facets(FoldedPolygon form) => form.FlatsMm.Skip(1).Take(form.Folds - 1);

        static bool IsMeasuredAlong(Measurement? end) => end is { FacetsMm: not null } or { SpacingsMm: not null } or { Points: not null };
    }

    private static List<Basis> BasisOf(InspectionJob job)
    {
        var basis = new List<Basis>
        {
            job.Taper is null
                ? new("asBuilt", job.Measured switch
                {
                    { Points: not null } => "a line through the points of every flat by total least squares; folds are their differences, mold lines their crossings; leads as planned",
                    { SpacingsMm: not null } => "angles as measured; facet = spacing on the flat less bend allowances plus setbacks of the measured angles; leads as planned",
                    { FacetsMm: not null } => "angles and facets as measured, sharp mold lines; leads as planned",
                    _ => "angles as measured, facets and leads as planned, sharp mold lines",
                }, "caller's measurements; geometry", Status.Computed)
                : new("asBuilt", job.Measured.Angles is null
                    ? "lines through the points of every flat by total least squares; a fold turns the edge it is seen along by sin²(θ/2) = sin²((p - q)/2) + sin p sin q sin²(a/2); both ends joined by the widths of their flats; facets hinged at sharp mold lines, edges as cut, leads as planned"
                    : "angles as measured; facets hinged at sharp mold lines, as measured at each end, else as planned; edges as cut, leads as planned", "caller's measurements; geometry", Status.Computed),
            new("fit", job.Taper is null ? "least-squares rigid fit of the mold lines, tan α = Σ cross/Σ dot" : "least-squares rigid fit in space of the mold lines' ends", "geometry", Status.Computed),
            new("departure", "far end of a facet, square to the planned facet: the planned form touches its curve at every fold, so this is the distance from the curve to first order", "geometry", Status.Computed),
            new("corrections", "depth-first search over whole steps of the stop, deepening the number of corrected folds; exact geometry of sharp mold lines, facets kept", "derived by this project, checked against full enumeration", Status.Computed),
            new("suspect", "bounds as stated with each", "not yet checked against measured forms", Status.Assumption),
        };
        if (job.Taper is not null)
            basis.Add(new("closing", "turn of the lead-out against the planned one, lead-in fixed: about the last fold line, about the lead-out's own direction (twist), in its plane (skew)", "geometry", Status.Computed));
        if (job.Panel is not null)
            basis.Add(new("panel", "the panel pulled in simulation over the planned form and over the form as it is, with the same lever", PlanBasis.WrapModel, Status.Model));
        return basis;
    }
}
