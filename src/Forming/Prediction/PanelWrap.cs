using Forming.Springback;

namespace Forming.Prediction;

/// <summary>How the panel is held and pulled.</summary>
/// <param name="LeverMm">Hand beyond the last fold, along the sheet [mm], &gt; 0.</param>
/// <param name="ClampGapMm">Clamp behind the first fold's tangent point [mm], at least 0.</param>
/// <param name="Beam">The form as a beam that gives under the pull; null for a rigid form.</param>
public sealed record WrapSetup(double LeverMm, double ClampGapMm = 0, FormBeam? Beam = null);

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

    /// <summary>
    /// Six keep a usual facet's ripple within a tenth of the limit of many; a pull that cannot be followed with them mostly can with
    /// another number.
    /// </summary>
    private static readonly int[] ElementsPerFacet = [6, 8, 5];

    /// <summary>Pulls and lets go.</summary>
    /// <param name="form">The form; facets longer than their setbacks.</param>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="setup">Clamp and hand.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <returns>The panel let go, or how far the pull got.</returns>
    public static WrappedPanel Compute(StandingForm form, BendingLaw law, WrapSetup setup, CancellationToken cancellation = default) =>
        Compute(form, law, setup, new(PullWork.Most), cancellation);

    internal static WrappedPanel Compute(
        StandingForm form, BendingLaw law, WrapSetup setup, PullWork work, CancellationToken cancellation) =>
        Compute([FormStrip.Only(form, setup)], law, work, cancellation);

    /// <summary>Pulls strips of one panel and lets them go together.</summary>
    /// <param name="strips">The strips; the middle one stands for the panel.</param>
    /// <param name="law">The panel's bending law.</param>
    /// <param name="work">What the pulls may take.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <returns>The panel let go, or how far the first strip got that cannot be followed.</returns>
    internal static WrappedPanel Compute(IReadOnlyList<FormStrip> strips, BendingLaw law, PullWork work, CancellationToken cancellation)
    {
        EngineWork.Wraps.Add(strips.Count);
        double? assumed = law.Flow.Hardening == 0 ? HardeningOfPerfect * law.PlaneModulusMpa : null;
        if (assumed is { } slope)
            law = law.WithLinearHardening(slope);
        var pulls = new PullOver[strips.Count];
        for (var p = 0; p < pulls.Length; p++)
        {
            (pulls[p], var end) = Pulled(strips[p], law, work, cancellation);
            if (pulls.Length == 1 || end != WrapEnd.Complete)
                return ReleasedShape.Of(pulls[p], end, assumed);
        }

        return CoupledRelease.Of(strips, pulls, assumed);
    }

    private static (PullOver Pull, WrapEnd End) Pulled(FormStrip strip, BendingLaw law, PullWork work, CancellationToken cancellation)
    {
        (PullOver, WrapEnd) last = default;
        foreach (var perFacet in ElementsPerFacet)
        {
            PullOver pull;
            var end = WrapEnd.Complete;
            if (strip.Before is { } form)
            {
                pull = new(new(form, law.ThicknessMm, strip.Setup), law, strip.Setup, perFacet, work, cancellation);
                end = pull.Run();
                if (end == WrapEnd.Complete)
                    pull = pull.Again(new(strip.Form, law.ThicknessMm, strip.Setup), work, cancellation);
            }
            else
            {
                pull = new(new(strip.Form, law.ThicknessMm, strip.Setup), law, strip.Setup, perFacet, work, cancellation);
            }

            if (end == WrapEnd.Complete)
                end = pull.Run();
            last = (pull, end);
            if (end != WrapEnd.SolverGaveUp)
                break;
        }

        return last;
    }
}

/// <summary>The pull when the panel reaches a fold.</summary>
/// <param name="Fold">Number of the fold just touched, from 1; one more than there are folds when the panel meets the lead-out.</param>
/// <param name="EndAngle">Direction of the sheet's end: how far the hand has turned it.</param>
/// <param name="ForcePerWidth">Hand force, square to the sheet's end [N/mm].</param>
/// <param name="ClampMomentPerWidth">Size of the moment at the clamp [N·mm/mm]; behind a full first fold it bends the sheet the other
/// way.</param>
/// <param name="ClampShearPerWidth">Force with which a clamp behind the first fold holds the sheet down against that fold's push [N/mm]; 0
/// for a clamp at the fold.</param>
public sealed record PullStep(int Fold, Angle EndAngle, double ForcePerWidth, double ClampMomentPerWidth, double ClampShearPerWidth);

/// <summary>A panel pulled over a standing form and let go, or how far the pull got.</summary>
public sealed record WrappedPanel
{
    /// <summary>How the pull ended; short of complete there is no released shape.</summary>
    public required WrapEnd End { get; init; }

    /// <summary>The pull, a step for each fold reached.</summary>
    public required IReadOnlyList<PullStep> Pull { get; init; }

    /// <summary>Numbers of the folds that the panel did not touch, from 1.</summary>
    public required IReadOnlyList<int> Untouched { get; init; }

    /// <summary>The panel let go, clamp to hand; empty where the pull was not complete.</summary>
    public required IReadOnlyList<ReleasedPoint> Curve { get; init; }

    /// <summary>What each facet left; empty where the pull was not complete.</summary>
    public required IReadOnlyList<ReleasedFacet> Facets { get; init; }

    /// <summary>The strips of a tapered panel, near end to far end; empty for a straight one.</summary>
    public IReadOnlyList<WrappedStrip> Strips { get; init; } = [];

    /// <summary>
    /// Curvature of the circle that fits the mid surface best over the form's <see cref="StandingForm.MiddleFolds"/> [1/mm]; 0 is flat.
    /// </summary>
    public required double MeanCurvature { get; init; }

    /// <summary>Turn of the whole panel after it was let go.</summary>
    public required Angle Sweep { get; init; }

    /// <summary>How the form stood when the pull was done; a rigid form has not moved.</summary>
    public FormState Form { get; init; }

    /// <summary>Largest force with which the panel pressed on a fold beyond the first, which the clamp holds [N/mm].</summary>
    public double FoldPushPerWidth { get; init; }

    /// <summary>Hardening that was put in place of none, so that a hinge has a length [MPa], or null.</summary>
    public required double? AssumedHardeningMpa { get; init; }

    /// <summary>The same with another place for its beginning.</summary>
    /// <param name="clampMm">Where the clamp is then [mm].</param>
    public WrappedPanel From(double clampMm) => clampMm == 0 ? this : this with
    {
        Curve =
        [
            .. Curve.Select(point => point with
            {
                AlongMm = point.AlongMm + clampMm,
                Position = point.Position + new Point(clampMm, 0),
            }),
        ],
    };
}

/// <summary>How a pull ended.</summary>
public enum WrapEnd
{
    /// <summary>The panel lies over every fold, in their order.</summary>
    Complete,

    /// <summary>The free side curled up too far before the panel touched the next fold.</summary>
    CurlsUp,

    /// <summary>
    /// The sheet slid forward until the hand met the form, with folds or the lead-out still ahead of it: the lever is too short.
    /// </summary>
    HandComesDown,

    /// <summary>The solver found no balance to go on with: that says nothing of the panel.</summary>
    SolverGaveUp,

    /// <summary>The solver took all the work that one prediction may take: that says nothing of the panel.</summary>
    WorkRanOut,
}
