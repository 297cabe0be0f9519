using Forming.Contact;
using Forming.Springback;

namespace Forming.Facets;

/// <summary>Tells whether a facet would show, from where it lies on the curve.</summary>
/// <param name="Law">The panel's bending law.</param>
/// <param name="Finish">The limits.</param>
/// <param name="LeverMm">Hand to the end of the curve [mm], at least 0.</param>
/// <param name="CurveMidMm">Mid-surface length of the whole curve [mm].</param>
/// <param name="FirstFacetFactor">How much more the first facet of a curved stretch shows.</param>
public sealed record FacetJudge(BendingLaw Law, Finish Finish, double LeverMm, double CurveMidMm, double FirstFacetFactor)
{
    /// <summary>A lever is shortened to this share of the longest where the plan chooses it.</summary>
    public const double LeverShare = 0.96;

    /// <summary>A lever that agrees this closely with a facet is as long as it: it was chosen so.</summary>
    private const double Equal = 1 + 1e-9;

    /// <summary>How far the panel slides forward under the hand until the last facet is pulled down [mm].</summary>
    public double SlideMm { get; init; }

    /// <summary>Shortest lever that pulls a facet down before the hand itself comes down on the form.</summary>
    /// <param name="facetMm">Facet width [mm].</param>
    /// <param name="slideMm">The panel's slide [mm].</param>
    /// <remarks>One facet, and half a facet beside the slide: of 500 simulated pulls with short levers none that held this came
    /// down.</remarks>
    public static double LeastLeverMm(double facetMm, double slideMm) => Math.Max(facetMm, slideMm + (facetMm / 2));

    /// <summary>Whether the lever is long enough to pull a facet down and for the slide of the panel as well.</summary>
    /// <param name="facetMm">Facet width [mm].</param>
    public bool ReachesPast(double facetMm) => LeverMm * Equal >= LeastLeverMm(facetMm, SlideMm);

    /// <summary>Whether the lever is long enough to pull a facet down.</summary>
    /// <param name="facetMm">Facet width [mm].</param>
    public bool CanPullDown(double facetMm) => LeverMm * Equal >= facetMm;

    /// <summary>Lever while the panel touches a fold: hand to the end of the curve and the arc still to wrap [mm].</summary>
    /// <param name="fold">The fold's place.</param>
    public double LeverAt(ContactPoint fold) => LeverMm + Math.Max(0, CurveMidMm - fold.MidMm);

    /// <summary>What the plan expects of a facet, with the lever no longer than keeps the wrap in order.</summary>
    /// <param name="facetMm">Facet width [mm].</param>
    /// <param name="from">The fold before it.</param>
    /// <param name="tightest">The panel's state where it is bent the most anywhere over the facet.</param>
    /// <param name="isFirst">Whether it is the first of its curved stretch.</param>
    public Ripple RippleOf(double facetMm, in ContactPoint from, in BentState tightest, bool isFirst)
    {
        var ripple = PrintThrough.Compute(facetMm, PlanningLever(from, tightest), tightest, Law.Stiffness) ?? default;
        return isFirst ? ripple.Times(FirstFacetFactor) : ripple;
    }

    /// <summary>Widest facet that passes, with the lever no longer than keeps the wrap in order.</summary>
    /// <param name="from">The fold before the facet.</param>
    /// <param name="tightest">The panel's state where it is bent the most anywhere over the facet.</param>
    /// <param name="isFirst">Whether it is the first of its curved stretch.</param>
    /// <returns>Facet width [mm]; infinite where nothing would show.</returns>
    public double AllowedFacet(in ContactPoint from, in BentState tightest, bool isFirst) => PrintThrough.AllowedFacet(
        PlanningLever(from, tightest), tightest, Law.Stiffness, Finish, isFirst ? FirstFacetFactor : 1) ?? 0;

    private double PlanningLever(in ContactPoint fold, in BentState state)
    {
        var lever = LeverAt(fold);
        return state.IsPlastic ? Math.Min(lever, LeverShare * PrintThrough.LongestLever(state)) : lever;
    }
}
