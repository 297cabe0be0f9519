using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Pulling;
using Forming.Results;
using Forming.Springback;

namespace Forming.Prediction;

/// <summary>How a panel comes off a form: pulled over its facets and let go, or why not.</summary>
/// <remarks>Source key <c>wrap-model</c>; not yet checked against measured panels.</remarks>
public sealed record PanelPrediction
{
    /// <summary>Flatter than this the panel has no radius to speak of [1/mm].</summary>
    private const double LeastCurvature = 1e-7;

    /// <summary>So many folds of a dozen were passed over at the end where facets are narrow for the sheet.</summary>
    private const int MostPassedAtEnd = 2;

    private static readonly Finish[] Named = [Finish.Gloss, Finish.Satin, Finish.Hidden];

    /// <summary>Why the panel does not lie over the form, or null where it does.</summary>
    public FormattableString? WhyNot { get; init; }

    /// <summary>Whether the solver gave up: then nothing is known of the panel, and it may well lie over the form.</summary>
    public bool GaveUp { get; init; }

    /// <summary>Folds that the panel landed on; one that it arched over is not counted.</summary>
    public int FoldsReached => Folds - Untouched.Count;

    /// <summary>Numbers of the folds that it did not touch, from 1.</summary>
    public IReadOnlyList<int> Untouched { get; init; } = [];

    /// <summary>Width over which the panel is pulled [mm]; 0 where nothing could be pulled.</summary>
    public double WidthMm { get; init; }

    /// <summary>Folds of the form.</summary>
    public int Folds { get; init; }

    /// <summary>
    /// Hand to the end of the curve [mm]; null where nothing could be pulled. Longer than the job's where that is too short and the caller
    /// left it open.
    /// </summary>
    public double? LeverMm { get; init; }

    /// <summary>
    /// Where the job's lever is so short that the hand meets the form first: a longer one that was tried and reaches [mm]; else null.
    /// </summary>
    public double? LeastLeverMm { get; init; }

    /// <summary>Longest lever that keeps the wrap in order [mm]; 0 where none does, null where any does.</summary>
    public double? LongestLeverMm { get; init; }

    /// <summary>Clamp behind the first fold's tangent point [mm].</summary>
    public double ClampGapMm { get; init; }

    /// <summary>The panel let go, or null where it does not lie over the form.</summary>
    public PredictedShape? Shape { get; init; }

    /// <summary>How much of the facets will show.</summary>
    public required PredictedRipple Ripple { get; init; }

    /// <summary>Whether it shows at each named finish and at the panel's own.</summary>
    public required IReadOnlyList<FinishVerdict> Finishes { get; init; }

    /// <summary>The pull, a step for each fold reached.</summary>
    public IReadOnlyList<PullStep> Steps { get; init; } = [];

    /// <summary>What the pull takes, or null where the panel does not lie over the form.</summary>
    public PredictedPull? Pull { get; init; }

    /// <summary>Hardening that was put in place of none [MPa], or null.</summary>
    public double? AssumedHardeningMpa { get; init; }

    /// <summary>How far the form gave under the pull; null for a rigid form, and where the panel does not lie over it.</summary>
    public FormGive? Give { get; init; }

    /// <summary>Largest force of the panel on a fold beyond the first [N/mm]; null where it does not lie over the form.</summary>
    public double? FoldPushPerWidth { get; init; }

    /// <summary>Whether the panel lies over every fold, in their order.</summary>
    public bool Wraps => Shape is not null;

    /// <summary>Whether the panel landed on the folds one after another, and passed over none that comes before another.</summary>
    /// <remarks>
    /// A stiff sheet may meet the lead-out while the last folds, <see cref="MostPassedAtEnd"/> at most, are not touched yet: nothing comes
    /// after them.
    /// </remarks>
    public bool LandsInOrder => Wraps
        && Steps.Count >= Folds - MostPassedAtEnd
        && Steps.SkipLast(1).Select((step, i) => step.Fold == i + 2).All(isNext => isNext);

    /// <summary>Whether the facets pass the panel's finish.</summary>
    /// <param name="finish">The limits.</param>
    public bool Passes(Finish finish) =>
        Ripple is { HeightMm: { } height, Slope: { } slope } && new Ripple(height, slope).Passes(finish);

    /// <summary>Pulls a panel over a form and lets it go.</summary>
    /// <param name="job">Panel and form.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static PanelPrediction Of(PredictionJob job, CancellationToken cancellation = default) =>
        Of(job, new(PullWork.Most), cancellation);

    internal static PanelPrediction Of(PredictionJob job, PullWork work, CancellationToken cancellation)
    {
        var panel = job.Panel;
        var count = job.Form.Folds;
        if (count < 2)
            return Without(panel, $"single folds leave no facets for the panel to wrap over");

        var finished = FinishedCurve.On(panel.Curve, panel.Surface, panel.Sheet.ThicknessMm, cancellation);
        var wanted = WantedCurve.Of(finished, panel.Sheet);
        var places = FoldPlaces.Of(job.Form, job.Ends, wanted, panel.Sheet.ThicknessMm);
        var hand = job.LeverMm + (job.IsStanding ? places.EndMm : wanted.EndMm) - places.AlongMm[^1];
        var lastFacet = job.Form.FacetsMm[^1];
        if (!(hand >= lastFacet))
        {
            return Without(panel, $"the hand would be {Figure.Length(Math.Max(0, hand))} past the last fold, less than the facet of {Figure.Length(lastFacet)} before it") with
            {
                Folds = count,
                LeverMm = job.LeverMm,
                LongestLeverMm = job.LongestLeverMm,
            };
        }

        var usual = Clamp.ChosenGapMm(job.Ends, job.Form.StraightMm(0));
        var gap = panel.Clamp.GapMm ?? usual;
        var law = panel.Law();
        var strips = PulledStrips.Of(job, finished, wanted, places, gap);
        var wrapped = PanelWrap.Compute(strips.At(job.LeverMm), law, work, cancellation);
        var further = wrapped.End == WrapEnd.HandComesDown ? HandFurtherOut(job, law, strips, work, cancellation) : null;
        var lever = job.LeverMm;
        if (further is { } reaches && panel.LeverMm is null)
        {
            (lever, wrapped) = reaches;
            hand += lever - job.LeverMm;
        }

        var (sweep, springback) = (places.Sweep, places.Springback(law));
        var isTooSpringy = springback > Lever.MostSpringback(sweep);
        // Such a panel may curl round to the lead-out and lie on hardly any fold.
        if (wrapped.End != WrapEnd.Complete || (isTooSpringy && 2 * wrapped.Untouched.Count > count))
        {
            return Without(panel, isTooSpringy ? SpringsBackTooFar(sweep, springback) : WhyNotOf(wrapped, job)) with
            {
                GaveUp = !isTooSpringy && wrapped.End is (WrapEnd.SolverGaveUp or WrapEnd.WorkRanOut),
                Folds = count,
                Untouched = wrapped.Untouched,
                LeverMm = lever,
                LongestLeverMm = job.LongestLeverMm,
                LeastLeverMm = further?.LeverMm,
                ClampGapMm = gap,
                Steps = wrapped.Pull,
                AssumedHardeningMpa = wrapped.AssumedHardeningMpa,
                WidthMm = panel.WidthMm,
            };
        }

        // The wanted curve begins where a panel is usually clamped.
        wrapped = wrapped.From(usual - gap);
        var shape = ShapeOf(wrapped, job, wanted, places, strips, IsRippleKnown(law, wrapped));
        var ripple = RippleOf(shape, panel.Finish, IsRippleKnown(law, wrapped));
        return new()
        {
            Folds = count,
            Untouched = wrapped.Untouched,
            LeverMm = lever,
            LongestLeverMm = job.LongestLeverMm,
            LeastLeverMm = further?.LeverMm,
            ClampGapMm = gap,
            Shape = shape,
            Ripple = ripple,
            Finishes = VerdictsOf(panel.Finish, ripple),
            Steps = wrapped.Pull,
            Give = job.Beam?.GiveOf(wrapped.Form),
            FoldPushPerWidth = wrapped.FoldPushPerWidth,
            Pull = PullOf(wrapped, law, panel, hand, gap, usual + places.AlongMm[^1]),
            AssumedHardeningMpa = wrapped.AssumedHardeningMpa,
            WidthMm = panel.WidthMm,
        };
    }

    /// <summary>What says that a panel cannot be predicted.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="why">Why not; its arguments are <see cref="Figure"/>s.</param>
    internal static PanelPrediction Without(PanelSpec panel, FormattableString why)
    {
        var ripple = new PredictedRipple("the panel does not lie over the form", null, null, null);
        return new() { WhyNot = why, Ripple = ripple, Finishes = VerdictsOf(panel.Finish, ripple) };
    }

    private static FormattableString SpringsBackTooFar(double sweep, double springback) => $"no lever pulls this panel over a form that turns {Figure.Angle(sweep)}: the panel would open by {Figure.Angle(springback)} when it is let go, and past about {Figure.Angle(Lever.MostSpringback(sweep))} the hand meets the form before the last fold, or, with a longer lever, the free side curls up before the first";

    private static FormattableString WhyNotOf(WrappedPanel wrapped, PredictionJob job)
    {
        var (lever, count) = (Figure.Length(job.LeverMm), job.Form.Folds);
        // The pull begins with the panel on the first fold.
        var front = Math.Min(count, wrapped.Pull.Select(step => step.Fold).DefaultIfEmpty(1).Max());
        return (wrapped.End, front == count) switch
        {
            (WrapEnd.HandComesDown, false) => $"with a lever of {lever} the hand meets the form before the panel touches fold {front + 1} of {count}",
            (WrapEnd.HandComesDown, true) => $"with a lever of {lever} the hand meets the form before the panel lies on the lead-out",
            (WrapEnd.CurlsUp, false) => $"with a lever of {lever} the free side curls up before the panel touches fold {front + 1} of {count}",
            (WrapEnd.CurlsUp, true) => $"with a lever of {lever} the free side curls up before the panel meets the lead-out",
            (WrapEnd.WorkRanOut, _) => $"the solver gave up past fold {front} of {count}: following this pull takes more work than one prediction may; this does not say that the panel cannot be pulled over the form",
            (_, false) => $"the solver gave up between folds {front} and {front + 1} of {count}: this does not say that the panel cannot be pulled over the form",
            _ => $"the solver gave up between the last fold and the lead-out: this does not say that the panel cannot be pulled over the form",
        };
    }

    // The panel does not lie tight on the folds, so it slides forward under the hand by a part of what is wrapped; a facet or a few make up
    // for it.
    private static (double LeverMm, WrappedPanel Panel)? HandFurtherOut(
        PredictionJob job, BendingLaw law, PulledStrips strips, PullWork work, CancellationToken cancellation)
    {
        var most = Math.Min(job.Panel.LeadOutMm, job.LongestLeverMm ?? double.PositiveInfinity) - job.LeverMm;
        for (var further = job.Form.FacetsMm[^1]; most > 0 && !work.IsSpent; further *= 2)
        {
            var moved = Math.Min(further, most);
            var wrapped = PanelWrap.Compute(strips.At(job.LeverMm + moved), law, work, cancellation);
            if (wrapped.End == WrapEnd.Complete)
                return (job.LeverMm + moved, wrapped);
            if (moved == most)
                break;
        }

        return null;
    }

    // Where nothing set, the hardening that is not known did not matter.
    private static bool IsRippleKnown(BendingLaw law, WrappedPanel wrapped) =>
        law.Flow.IsKnown || wrapped.Curve.All(point => Math.Abs(point.Curvature) < LeastCurvature);

    private static PredictedShape ShapeOf(
        WrappedPanel wrapped, PredictionJob job, WantedCurve wanted, FoldPlaces places, PulledStrips strips, bool isRippleKnown)
    {
        var panel = job.Panel;
        var (fitted, held) = CurveMiss.Of(wrapped.Curve, wanted);
        var wantedMean = WantedMean(wanted, places, job.Form.MiddleFolds);
        return new()
        {
            RadiusMm = RadiusOf(wrapped.MeanCurvature, panel),
            WantedRadiusMm = RadiusOf(wantedMean, panel),
            Ends = strips.EndsOf(wrapped, wantedMean, isRippleKnown),
            Sweep = wrapped.Sweep,
            WantedLengthMm = wanted.LengthMm,
            WantedSweep = wanted.Sweep,
            LeadOutOffset = LeadOutOffset(wrapped.Curve, wanted),
            MissMm = fitted,
            HeldMissMm = held,
            Curve = wrapped.Curve,
            Facets =
            [
                .. wrapped.Facets.Select((facet, j) => new PredictedFacet(
                    facet.Number,
                    job.Form.FacetsMm[j],
                    places.IsFlat[j],
                    isRippleKnown ? facet.RippleMm : null,
                    isRippleKnown ? facet.Slope : null,
                    RadiusOf(facet.MeanCurvature, panel))),
            ],
        };
    }

    private static Point LeadOutOffset(IReadOnlyList<ReleasedPoint> curve, WantedCurve wanted)
    {
        var (aim, turn) = wanted.At(wanted.EndMm);
        var off = ReleasedPoint.At(curve, wanted.EndMm) - aim;
        var along = Point.Along(turn);
        return new(off.Dot(along), off.Dot(along.Left()));
    }

    // The wanted curve over the stretch from which the panel's own mean is taken.
    private static double WantedMean(WantedCurve wanted, FoldPlaces places, (int From, int To) middle)
    {
        var from = Math.Min(places.AlongMm[middle.From], wanted.LengthMm);
        var to = Math.Min(places.AlongMm[middle.To], wanted.LengthMm);
        return to > from ? (wanted.At(to).Turn - wanted.At(from).Turn) / (to - from) : 0;
    }

    /// <summary>The radius of a mid-surface curvature on the face that the curve was measured on.</summary>
    /// <param name="curvature">The curvature [1/mm].</param>
    /// <param name="panel">The panel.</param>
    /// <returns>The radius [mm]; null where the panel is flat.</returns>
    internal static double? RadiusOf(double curvature, PanelSpec panel)
    {
        if (!(curvature > LeastCurvature))
            return null;
        var half = panel.Sheet.ThicknessMm / 2;
        return (1 / curvature) + panel.Surface switch
        {
            Surface.Inside => -half,
            Surface.Outside => half,
            _ => 0,
        };
    }

    private static PredictedRipple RippleOf(PredictedShape shape, Finish finish, bool isKnown)
    {
        if (!isKnown)
            return new("the sheet's hardening is not known: give elongation, or strengthCoefficient and strainHardening", null, null, null);
        double height = 0, slope = 0, nearest = -1;
        int? at = null;
        foreach (var facet in shape.Facets.Where(facet => !facet.IsFlatOfCurve))
        {
            height = Math.Max(height, facet.RippleMm!.Value);
            slope = Math.Max(slope, facet.Slope!.Value.Radians);
            var share = Math.Max(facet.RippleMm.Value / finish.RippleMm, facet.Slope.Value.Radians / finish.Slope.Radians);
            if (share > nearest)
                (nearest, at) = (share, facet.Number);
        }

        return new(null, height, new Angle(slope), at);
    }

    private static FinishVerdict[] VerdictsOf(Finish own, PredictedRipple ripple)
    {
        Finish[] finishes = Named.Contains(own) ? Named : [.. Named, own];
        return [.. finishes.Select(finish => new FinishVerdict(
            finish, ripple is { HeightMm: { } height, Slope: { } slope } ? !new Ripple(height, slope).Passes(finish) : null))];
    }

    private static PredictedPull PullOf(
        WrappedPanel wrapped, BendingLaw law, PanelSpec panel, double hand, double clampGap, double lastFold)
    {
        var moment = wrapped.Pull.Max(step => step.ClampMomentPerWidth);
        var curve = wrapped.Curve;
        double energy = 0, endMoment = 0;
        for (var i = 1; i < curve.Count && curve[i].AlongMm <= lastFold; i++)
        {
            endMoment = law.LoadedFor(Math.Max(0, curve[i].Curvature)).MomentPerWidth;
            energy += endMoment * endMoment * (curve[i].AlongMm - curve[i - 1].AlongMm);
        }

        energy = (energy + (endMoment * endMoment * hand / 3)) / (2 * law.Stiffness);
        var shear = clampGap > 0
            ? wrapped.Pull.Max(step => step.ClampShearPerWidth)
            : panel.Clamp.LoadN(0, moment);
        return new(
            wrapped.Pull.Max(step => step.ForcePerWidth) * panel.WidthMm,
            moment,
            shear * panel.WidthMm,
            wrapped.Pull[^1].EndAngle,
            energy * panel.WidthMm / 1000);
    }
}
