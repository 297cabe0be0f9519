using Forming.Springback;

namespace Forming.Contact;

/// <summary>From the curvature wanted in the finished panel to the panel's state on the form.</summary>
/// <param name="Law">Bending law of the panel's sheet, for moments and for springback unless it was measured.</param>
/// <param name="MeasuredFactor">Measured springback factor, or null.</param>
/// <param name="FacetSet">Share of the curvature that facets set on top, by the place along the curve's mid surface [mm], or null.</param>
public sealed record FormingRule(BendingLaw Law, double? MeasuredFactor = null, Func<double, double>? FacetSet = null)
{
    /// <summary>Whether a bend of constant radius stays one on the form.</summary>
    public bool KeepsArcs => FacetSet is null;

    /// <summary>The panel's state on the form.</summary>
    /// <param name="finishedCurvature">Wanted mid-surface curvature [1/mm], at least 0.</param>
    /// <param name="midMm">Place along the curve's mid surface [mm].</param>
    public BentState StateFor(double finishedCurvature, double midMm) => MeasuredFactor is { } factor
        ? Law.At(finishedCurvature / factor)
        : Law.LoadedFor(finishedCurvature, FacetSet?.Invoke(midMm) ?? 0);
}
