using Forming.Facets;
using Forming.Jobs;
using Forming.Pulling;
using Forming.Springback;

namespace Forming.Wrapping;

/// <summary>The lever of a job: the caller's, or the one chosen together with the folds that it allows.</summary>
/// <param name="job">What is asked.</param>
/// <param name="longestMm">Longest lever that keeps the wrap in order [mm].</param>
/// <param name="inOrderMm">The same with something in hand [mm].</param>
/// <param name="slideMm">How far the panel slides forward under the hand [mm].</param>
internal sealed class LeverChoice(FormJob job, double longestMm, double inOrderMm, double slideMm)
{
    /// <summary>Where the folds go; where the plan chooses the lever, with facets that a lever in order pulls down.</summary>
    public Stepping Stepping { get; } = job.Panel.LeverMm is null
        ? job.Form.Stepping.NoWiderThan(Lever.WidestFacetMm(longestMm, job.Brake.MinFacetMm))
        : job.Form.Stepping;

    /// <summary>Chooses lever and folds together.</summary>
    /// <typeparam name="T">A plan of folds.</typeparam>
    /// <param name="plan">The folds at a lever.</param>
    /// <param name="widestFacet">Their widest facet [mm].</param>
    public T Settle<T>(Func<double, T> plan, Func<T, double> widestFacet) => Lever.Settle(
        facet => Lever.Choose(inOrderMm, job.Panel.LeverMm, job.Panel.LeadOutMm, FacetJudge.LeastLeverMm(facet, slideMm)),
        plan,
        widestFacet);

    /// <summary>Tells whether a facet would show that is pulled at a lever.</summary>
    /// <param name="leverMm">The lever [mm].</param>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="curveMidMm">Mid-surface length of the curve [mm].</param>
    public FacetJudge JudgeAt(double leverMm, BendingLaw law, double curveMidMm)
    {
        var first = job.Form.Stepping.Ends == SteppingEnds.Half ? PrintThrough.FirstFacetHalf : PrintThrough.FirstFacetFull;
        return new(law, job.Panel.Finish, leverMm, curveMidMm, first) { SlideMm = slideMm };
    }
}
