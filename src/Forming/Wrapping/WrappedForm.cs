using Forming.Contact;
using Forming.Curves;
using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Pulling;
using Forming.Springback;
using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace Forming.Wrapping;

/// <summary>The contact curve, the lever and the folds, found together: each depends on the others once facets add to the set.</summary>
/// <param name="Rule">From finished to formed curvature.</param>
/// <param name="Contact">The contact curve.</param>
/// <param name="Judge">Tells whether a facet would show.</param>
/// <param name="Folds">The folds.</param>
/// <param name="Tightest">The panel's state where it is bent the most.</param>
/// <param name="LongestLeverMm">Longest lever that keeps the wrap in order, hand to the end of the curve [mm]; 0 or less where none does,
/// infinite where any does.</param>
internal sealed record WrappedForm(
    FormingRule Rule, ContactCurve Contact, FacetJudge Judge, PlacedFolds Folds, BentState Tightest, double LongestLeverMm)
{
    /// <summary>Share of a facet over its lever that is set on top of pure bending: source key <c>wrap-model</c>.</summary>
    private const double FacetSetFactor = 0.30;

    private const int MostRounds = 12;

    private const int QuadratureOrder = 5;

    public static WrappedForm Solve(FinishedCurve finished, FormJob job, FoldShape fold, CancellationToken cancellation)
    {
        var panel = job.Panel;
        var law = panel.Law();
        var wrapped = Of(new(law, (panel.Springback as MeasuredFactor)?.Factor));
        if (panel.Springback is not WrappedOverFacets)
            return wrapped;

        for (var round = 0; round < MostRounds; round++)
        {
            cancellation.ThrowIfCancellationRequested();
            var before = wrapped.Contact.Sweep;
            wrapped = Of(wrapped.OverFacets());
            if (Math.Abs((wrapped.Contact.Sweep - before).Radians) < 1e-10)
                break;
        }

        return wrapped;

        WrappedForm Of(FormingRule rule)
        {
            var contact = ContactCurve.Solve(finished, rule, panel.Sheet.ThicknessMm, cancellation);
            var places = contact.Extremes;
            var longest = Lever.LongestMm(places, contact.MidMm);
            var inOrder = Lever.LongestMm(places, contact.MidMm, FacetJudge.LeverShare);
            var springback = contact.Runs.Sum(run => run.Integral(state => state.MomentPerWidth)) / law.Stiffness;
            var slide = Lever.SlideMm(contact.MidMm, contact.Sweep.Radians, springback);
            var choice = new LeverChoice(job, longest, inOrder, slide);
            return choice.Settle(With, wrapped => wrapped.Folds.WidestFacetMm);

            WrappedForm With(double lever)
            {
                var judge = choice.JudgeAt(lever, law, contact.MidMm);
                var folds = PlacedFolds.Solve(
                    contact, choice.Stepping, fold, judge, job.Brake.MinFacetMm, job.Marks.Tape.ResolutionMm, cancellation);
                return new(rule, contact, judge, folds, TightestOf(finished, contact, rule), longest);
            }
        }
    }

    /// <summary>How many folds the finish asks for, whatever the caller fixed and the brake can fold.</summary>
    /// <param name="job">What is asked.</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public int FoldsWanted(FormJob job, FoldShape fold, CancellationToken cancellation)
    {
        var free = job.Form.Stepping with { Folds = null, FoldAngle = null, SpacingMm = null };
        return PlacedFolds.Solve(Contact, free, fold, Judge, 0, job.Marks.Tape.ResolutionMm, cancellation).Polygon.Angles.Length;
    }

    /// <summary>Form sweep that the model not in use would ask for: over these facets after pure bending, else pure bending.</summary>
    /// <param name="finished">The finished curve on the mid surface.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public Angle OtherSweep(FinishedCurve finished, PanelSpec panel, CancellationToken cancellation)
    {
        var other = panel.Springback is PureBending ? OverFacets() : new FormingRule(BendingLaw.Of(panel.Sheet));
        if (!finished.Bends.All(bend => bend is ArcSpan))
            return ContactCurve.Solve(finished, other, Contact.ThicknessMm, cancellation).Sweep;

        double sweep = 0, before = 0;
        foreach (var span in finished.Spans)
        {
            if (span is BendSpan bend)
            {
                var start = before;
                var curvature = 1 / bend.TightestRadiusMm;
                sweep += GaussLegendreRule.Integrate(
                    mid => other.StateFor(curvature, mid).Curvature, start, start + bend.LengthMm, QuadratureOrder);
            }

            before += span.LengthMm;
        }

        return new(sweep);
    }

    // k_f = k - M/E'I + 0.30 (c/l) k, with the facet c as a straight line along each curved stretch.
    private FormingRule OverFacets()
    {
        var polygon = Folds.Polygon;
        var stretches = new List<(double EndMid, double Intercept, double Slope)>();
        var first = 0;
        foreach (var last in Folds.LastOfStretch)
        {
            var middles = Enumerable.Range(first, last - first)
                .Select(j => (polygon.Places[j].MidMm + polygon.Places[j + 1].MidMm) / 2).ToArray();
            var facets = polygon.Facets[first..last];
            var (intercept, slope) = facets.Length > 2 ? Fit.Line(middles, facets) : (facets.DefaultIfEmpty(0).Average(), 0);
            stretches.Add((polygon.Places[last].MidMm, intercept, slope));
            first = last + 1;
        }

        var (lever, whole) = (Judge.LeverMm, Judge.CurveMidMm);
        return Rule with { MeasuredFactor = null, FacetSet = FacetSetAt };

        double FacetSetAt(double mid)
        {
            var i = 0;
            while (i < stretches.Count - 1 && mid > stretches[i].EndMid)
                i++;
            var facet = Math.Max(0, stretches[i].Intercept + (stretches[i].Slope * mid));
            return FacetSetFactor * facet / Math.Max(facet, lever + whole - mid);
        }
    }

    private static BentState TightestOf(FinishedCurve finished, ContactCurve contact, FormingRule rule)
    {
        if (rule.KeepsArcs)
            return rule.StateFor(1 / finished.TightestRadiusMm, 0);
        return contact.Extremes.Select(place => place.State).MaxBy(state => state.Curvature);
    }
}
