using Forming.Springback;

namespace Forming.Prediction;

/// <summary>Pulls a panel over a faceted form and lets it go.</summary>
/// <remarks>Source key <c>wrap-model</c>; no measured panels stand behind it.</remarks>
public static class PanelWrap
{
    /// <summary>Pulls and lets go.</summary>
    /// <param name="form">The form.</param>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="setup">Clamp and hand.</param>
    /// <param name="cancellation">Ends the work early.</param>
    public static WrappedPanel Compute(StandingForm form, BendingLaw law, WrapSetup setup, CancellationToken cancellation = default) =>
        throw new NotImplementedException();
}
