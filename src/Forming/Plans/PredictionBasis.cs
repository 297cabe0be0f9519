using Forming.Jobs;
using Forming.Prediction;
using Forming.Results;
using Forming.Springback;

namespace Forming.Plans;

/// <summary>What the values of a prediction rest on.</summary>
internal static class PredictionBasis
{
    /// <summary>Adds the grounds of a prediction.</summary>
    /// <param name="basis">Destination.</param>
    /// <param name="prediction">The prediction.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="where">Where its values are in the answer, with a dot at its end, or nothing.</param>
    public static void AddTo(List<Basis> basis, PanelPrediction prediction, PanelSpec panel, string where)
    {
        basis.Add(new(
            where + "radius",
            "a strip on its mid surface, large rotations, elastic-plastic in plane strain, pulled over circles at the folds without friction, force square to the sheet's end; every place keeps its largest curvature and springs back elastically",
            PlanBasis.WrapModel,
            Status.Model));
        if (prediction.Shape?.Ends is not null)
        {
            basis.Add(new(
                where + "ends",
                "strips square to the folds at the near end, the middle and the far end, five where the ends differ twofold, each pulled over its own facets by a bar that stays along the last fold; let go they turn every facet alike, by the mean that costs the least elastic energy",
                PlanBasis.WrapModel,
                Status.Model));
        }

        basis.Add(new(
            where + "ripple", "peak to valley and largest slope of each facet from its own smooth arc", PlanBasis.WrapModel, Status.Model));
        basis.Add(new(
            where + "miss", "largest distance at equal lengths along the mid surface, after the least-squares rigid fit and with the lead-in flats laid on each other", "geometry", Status.Computed));
        basis.Add(new(
            where + "force", "equilibrium of the strip when it touches each fold, the largest over the pull", PlanBasis.WrapModel, Status.Model));
        basis.Add(prediction.ClampGapMm > 0
            ? new(where + "clamp", "clamped behind the first fold, half a facet where it is full and nothing else is said", "the project's wrap study", Status.Assumption)
            : new(where + "clamp", "clamped at the first fold's tangent point, where the curve begins", "the project's wrap study", Status.Assumption));
        if (prediction.AssumedHardeningMpa is not null)
        {
            basis.Add(new(
                where + "hardening",
                "a small linear hardening in place of none, because a perfectly plastic sheet would fold at a hinge without length: ripple is not given",
                "no data",
                Status.Assumption));
        }

        if (panel.Springback is MeasuredFactor)
        {
            basis.Add(new(
                where + "springback",
                "the sheet's own bending law; the measured factor shaped the form and has no part in the prediction",
                PlanBasis.WrapModel,
                Status.Model));
        }
    }

    /// <summary>The grounds of a prediction without a plan.</summary>
    /// <param name="prediction">The prediction.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="isStanding">Whether the form was given by its stations.</param>
    public static IReadOnlyList<Basis> Of(PanelPrediction prediction, PanelSpec panel, bool isStanding)
    {
        var basis = new List<Basis>(16);
        AddTo(basis, prediction, panel, "");
        basis.Add(new("longestLever", "0.8/(k - W/M) less the arc still to wrap, the least over the facets", PlanBasis.WrapModel, Status.Model));
        basis.Add(prediction.ClampGapMm > 0
            ? new("pull.clampLoad", "largest shear of the strip at the clamp, which the first fold's push calls for", PlanBasis.WrapModel, Status.Model)
            : new("pull.clampLoad", "the largest moment at the clamp over the depth on which it bears", "statics", Status.Model));
        basis.Add(new("pull.energyReleased", "integral of M²/(2E'I) over curve and lever", "elastic beam theory", Status.Computed));
        basis.Add(new("checks.hand-force", "225 N, standing, whole body", "Ergonomic Design for People at Work, vol. 2 (1986), quoted", Status.PublishedAsQuoted));
        if (prediction.Give is not null)
            basis.Add(PlanBasis.CoupledGive with { Quantity = "give" });
        if (isStanding)
            basis.Add(new("folds", "facets and fold angles as given, taken as true", "caller", Status.Caller));
        basis.Add(new("finishes", "visibility limits by finish", "not yet checked against measured panels", Status.Assumption));
        if (panel.Finish.IsOwn)
            basis.Add(new("finishes.own", "as given", "caller", Status.Caller));
        if (panel.Mirrored)
            basis.Add(new("curve", "the first half; the second is pulled from the other edge over the same form", "common practice, no source", Status.CommonPractice));
        PlanBasis.AddPanelSheet(basis, panel, panel.Law());
        return basis;
    }
}
