using Forming.Contact;
using Forming.Curves;
using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Pulling;
using Forming.Springback;

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
    /// <summary>Whether the panel springs back so far that no lever pulls it over the form.</summary>
    public bool SpringsBackTooFar => SpringbackOf(Contact, Rule.Law) > Lever.MostSpringback(Contact.Sweep.Radians);

    public static WrappedForm Solve(FinishedCurve finished, FormJob job, FoldShape fold, CancellationToken cancellation)
    {
        var panel = job.Panel;
        var law = panel.Law();
        return Of(new(law, (panel.Springback as MeasuredFactor)?.Factor));

        WrappedForm Of(FormingRule rule)
        {
            var contact = ContactCurve.Solve(finished, rule, panel.Sheet.ThicknessMm, cancellation);
            var places = contact.Extremes;
            var longest = Lever.LongestMm(places, contact.MidMm);
            var inOrder = Lever.LongestMm(places, contact.MidMm, FacetJudge.LeverShare);
            var slide = Lever.SlideMm(contact.MidMm, contact.Sweep.Radians, SpringbackOf(contact, law));
            var followed = panel.Springback is SolvedOnWrap ? Lever.FollowedMm(contact.MidMm) : double.NegativeInfinity;
            var choice = new LeverChoice(job, Math.Max(longest, followed), Math.Max(inOrder, followed), slide);
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

    /// <summary>The same job on a corrected contact curve: lever, rule and number of folds stay.</summary>
    /// <param name="correction">How the form departs from pure bending.</param>
    /// <param name="finished">The finished curve on the mid surface.</param>
    /// <param name="job">What is asked; its number of folds is fixed.</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <param name="cancellation">Ends the work early.</param>
    public WrappedForm Corrected(
        ContactCorrection correction, FinishedCurve finished, FormJob job, FoldShape fold, CancellationToken cancellation)
    {
        var rule = Rule with { Correction = correction };
        var contact = ContactCurve.Solve(finished, rule, Contact.ThicknessMm, cancellation);
        var folds = PlacedFolds.Solve(
            contact, job.Form.Stepping, fold, Judge, job.Brake.MinFacetMm, job.Marks.Tape.ResolutionMm, cancellation);
        return this with
        {
            Rule = rule,
            Contact = contact,
            Folds = job.Form.Stepping.Rule == SteppingRule.EqualAngle
                ? folds.WithEvenAngles(fold, job.Form.Stepping.FoldAngle?.Radians)
                : folds,
            Tightest = TightestOf(finished, contact, rule),
            LongestLeverMm = Lever.LongestMm(contact.Extremes, contact.MidMm),
        };
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

    private static double SpringbackOf(ContactCurve contact, BendingLaw law) =>
        contact.Runs.Sum(run => run.Integral(state => state.MomentPerWidth)) / law.Stiffness;

    private static BentState TightestOf(FinishedCurve finished, ContactCurve contact, FormingRule rule)
    {
        if (rule.KeepsArcs)
            return rule.StateFor(1 / finished.TightestRadiusMm, 0);
        return contact.Extremes.Select(place => place.State).MaxBy(state => state.Curvature);
    }
}
