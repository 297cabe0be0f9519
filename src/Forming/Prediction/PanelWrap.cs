using Forming.Springback;

namespace Forming.Prediction;

/// <summary>Pulls a panel over a faceted form and lets it go.</summary>
/// <remarks>
/// A strip of the panel, on its mid surface and elastic-plastic in plane strain, is wrapped over the folds with unilateral contact;
/// every place keeps the largest curvature it has seen and springs back elastically. Source key <c>wrap-model</c>: no measured panels
/// stand behind it.
/// </remarks>
public static class PanelWrap
{
    /// <summary>A sheet that does not harden bends at a point, a hinge without length; this share of E' hardens it a little.</summary>
    private const double HardeningOfPerfect = 0.005;

    /// <summary>Six keep a usual facet's ripple within a tenth of the limit of many; a pull that cannot be followed with them mostly can with another number.</summary>
    private static readonly int[] ElementsPerFacet = [6, 8, 5];

    /// <summary>Pulls and lets go.</summary>
    /// <param name="form">The form; facets longer than their setbacks.</param>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="setup">Clamp and hand.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <returns>The panel let go, or how far the pull got.</returns>
    public static WrappedPanel Compute(StandingForm form, BendingLaw law, WrapSetup setup, CancellationToken cancellation = default) =>
        Compute(form, law, setup, new(PullWork.Most), cancellation);

    internal static WrappedPanel Compute(StandingForm form, BendingLaw law, WrapSetup setup, PullWork work, CancellationToken cancellation)
    {
        double? assumed = law.Flow.Hardening == 0 ? HardeningOfPerfect * law.PlaneModulusMpa : null;
        if (assumed is { } slope)
            law = law.WithLinearHardening(slope);
        WrappedPanel? panel = null;
        foreach (var perFacet in ElementsPerFacet)
        {
            var pull = new PullOver(new(form, law.ThicknessMm, setup.LeverMm), law, setup, perFacet, work, cancellation);
            panel = ReleasedShape.Of(pull, pull.Run(), assumed);
            if (panel.End != WrapEnd.SolverGaveUp)
                break;
        }

        return panel!;
    }
}
