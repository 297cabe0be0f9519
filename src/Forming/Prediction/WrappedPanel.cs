namespace Forming.Prediction;

/// <summary>A panel pulled over a standing form and let go, or how far the pull got.</summary>
public sealed record WrappedPanel
{
    /// <summary>How the pull ended; short of complete there is no released shape.</summary>
    public required WrapEnd End { get; init; }

    /// <summary>The pull, a step for each fold reached.</summary>
    public required IReadOnlyList<PullStep> Pull { get; init; }

    /// <summary>Folds that the panel came to lie on, the first among them; one that it arched over is not counted.</summary>
    public required int FoldsTouched { get; init; }

    /// <summary>The panel let go, clamp to hand; empty where the pull was not complete.</summary>
    public required IReadOnlyList<ReleasedPoint> Curve { get; init; }

    /// <summary>What each facet left; empty where the pull was not complete.</summary>
    public required IReadOnlyList<ReleasedFacet> Facets { get; init; }

    /// <summary>Curvature of the circle that fits the mid surface best over the form's <see cref="StandingForm.MiddleFolds"/> [1/mm]; 0 is flat.</summary>
    public required double MeanCurvature { get; init; }

    /// <summary>Turn of the whole panel after it was let go.</summary>
    public required Angle Sweep { get; init; }

    /// <summary>Hardening that was put in place of none, so that a hinge has a length [MPa], or null.</summary>
    public required double? AssumedHardeningMpa { get; init; }
}
