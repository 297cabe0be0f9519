using Forming.Checks;
using Forming.Layout;
using Forming.Numerics;
using Forming.Plans;
using Forming.Results;

namespace Forming.Inspection;

/// <summary>A folded form against its plan.</summary>
public sealed record InspectionReport
{
    /// <summary>The form as it should be.</summary>
    public required FoldedPolygon Planned { get; init; }

    /// <summary>The form as it was measured.</summary>
    public required FoldedPolygon Built { get; init; }

    /// <summary>[n] how far every mold line lies off.</summary>
    public required IReadOnlyList<VertexMiss> Misses { get; init; }

    /// <summary>How far the form had to be turned for the best fit.</summary>
    public required Angle FitTurn { get; init; }

    /// <summary>Error of the sum of all folds; positive is folded too far.</summary>
    public required Angle Closing { get; init; }

    /// <summary>How far the end of the lead-out is off, the first flat fixed [mm].</summary>
    public required Point EndMiss { get; init; }

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

    /// <summary>Largest miss of a mold line with the first flat fixed [mm].</summary>
    public double LargestHeldMm => Misses.Max(miss => miss.Held.Length);

    /// <summary>Largest miss of a mold line after the rigid fit [mm].</summary>
    public double LargestFittedMm => Misses.Max(miss => miss.FittedMm);

    /// <summary>Inspects a form.</summary>
    /// <param name="job">The form, and what was measured on it.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="NoSolutionException"><c>inspection.…</c>: no form could give these measurements.</exception>
    public static InspectionReport Of(InspectionJob job, CancellationToken cancellation = default)
    {
        var planned = job.Planned;
        var built = AsBuilt.Of(job.Measured, planned, job.Fold);
        var (wanted, found) = (planned.Vertices(), built.Vertices());
        var fit = RigidFit.Of(found[1..^1], wanted[1..^1]);
        var report = new InspectionReport
        {
            Planned = planned,
            Built = built,
            Misses = [.. fit.MissesMm.Select((fitted, i) => new VertexMiss(found[i + 1] - wanted[i + 1], fitted))],
            FitTurn = fit.Turn,
            Closing = new(built.Sweep - planned.Sweep),
            EndMiss = found[^1] - wanted[^1],
            Departure = DepartureOf(planned, wanted, found, job.Rules.VertexMm),
            Suspect = Suspicions.Of(job.Measured, built, planned),
            Panel = PanelEffect.Of(planned, built, job.Fold.OuterRadiusMm, job.Ends, job.Panel, job.Beam, cancellation),
            Corrections = CorrectionSearch.Find(built, planned, job.Rules, cancellation),
            Checks = [],
            Notes = [],
            Basis = BasisOf(job),
        };
        return report with { Checks = ChecksOf(report, job.Rules), Notes = NotesOf(report, job) };
    }

    private static Departure? DepartureOf(FoldedPolygon planned, Point[] wanted, Point[] found, double toleranceMm)
    {
        double turn = 0;
        // The curve ends at the last fold: at the far end of a long lead-out, an angle within its tolerance lies far off.
        for (var i = 0; i + 1 < planned.Folds; i++)
        {
            turn += planned.FoldAngles[i];
            var off = (found[i + 2] - wanted[i + 2]).Dot(Point.Along(turn).Left());
            if (Math.Abs(off) > toleranceMm + CorrectionSearch.Slack)
                return new(i + 1, off);
        }

        return null;
    }

    private static List<Check> ChecksOf(InspectionReport report, CorrectionRules rules)
    {
        var remedy = report.Corrections is { Found: true, Folds.Count: > 0 } plan
            ? CorrectionsIn(plan, report.Built, rules)
            : $"more steps a fold, both directions, a wider tolerance, or a new form: no correction of up to {CorrectionSearch.MostFolds} folds was found";
        var closes = Math.Abs(report.Closing.Radians) <= rules.Closing.Radians + CorrectionSearch.Slack;
        var lies = report.LargestHeldMm <= rules.VertexMm + CorrectionSearch.Slack;
        return
        [
            new(
                CheckIds.ClosingTolerance,
                closes ? Verdict.Pass : Verdict.Warn,
                Math.Abs(report.Closing.Radians),
                rules.Closing.Radians,
                $"the form is {Figure.Angle(Math.Abs(report.Closing.Radians))} too {(report.Closing.Radians < 0 ? "open" : "tight")} ({Figure.Angle(rules.Closing.Radians)} allowed)",
                closes ? null : remedy),
            new(
                CheckIds.VertexTolerance,
                lies ? Verdict.Pass : Verdict.Warn,
                report.LargestHeldMm,
                rules.VertexMm,
                $"the worst mold line is {Figure.Length(report.LargestHeldMm)} off with the first flat fixed ({Figure.Length(rules.VertexMm)} allowed), {Figure.Length(report.LargestFittedMm)} after the best fit",
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
            var shortest = report.Built.FlatsMm.Skip(1).Take(report.Built.Folds - 1).Min();
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

        if (job.Measured is { Angles: not null, FacetsMm: null, SpacingsMm: null })
            notes.Add(new("facets-as-planned", $"Only angles were measured: the facets are taken as planned."));
        return notes;
    }

    private static List<Basis> BasisOf(InspectionJob job)
    {
        var basis = new List<Basis>
        {
            new("asBuilt", job.Measured switch
            {
                { Points: not null } => "a line through the points of every flat by total least squares; folds are their differences, mold lines their crossings; leads as planned",
                { SpacingsMm: not null } => "angles as measured; facet = spacing on the flat less bend allowances plus setbacks of the measured angles; leads as planned",
                { FacetsMm: not null } => "angles and facets as measured, sharp mold lines; leads as planned",
                _ => "angles as measured, facets and leads as planned, sharp mold lines",
            }, "caller's measurements; geometry", Status.Computed),
            new("fit", "least-squares rigid fit of the mold lines, tan α = Σ cross/Σ dot", "geometry", Status.Computed),
            new("departure", "far end of a facet, square to the planned facet: the planned form touches its curve at every fold, so this is the distance from the curve to first order", "geometry", Status.Computed),
            new("corrections", "depth-first search over whole steps of the stop, deepening the number of corrected folds; exact geometry of sharp mold lines, facets kept", "derived by this project, checked against full enumeration", Status.Computed),
            new("suspect", "bounds as stated with each", "not yet checked against measured forms", Status.Assumption),
        };
        if (job.Panel is not null)
            basis.Add(new("panel", "the panel pulled in simulation over the planned form and over the form as it is, with the same lever", PlanBasis.WrapModel, Status.Model));
        return basis;
    }
}
