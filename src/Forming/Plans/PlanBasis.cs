using Forming.Curves;
using Forming.Jobs;
using Forming.Materials;
using Forming.Outlook;
using Forming.Plans.Drafts;
using Forming.Results;
using Forming.Springback;

namespace Forming.Plans;

/// <summary>What every headline value rests on.</summary>
internal static class PlanBasis
{
    /// <summary>What is named in place of a published text where a value is from the wrap model.</summary>
    internal const string WrapModel = "the project's own wrap model; not yet checked against measured panels";

    private const string FromStrengths = "from yield, ultimate strength and elongation";

    private static readonly Basis PureBending = new(
        "form.sweep",
        "elastic-plastic pure bending of a wide sheet, released elastically, point by point along the curve",
        "Marciniak, Duncan & Hu, Mechanics of Sheet Metal Forming, ch. 6; without hardening the closed form that goes back to Gardiner 1957",
        Status.Published);

    private static readonly Basis Stations = new(
        "form.stations",
        "fold centres on the inner parallel curve; straight parts are their chords; bend allowance a (r + K t), setback (r + t) tan(a/2)",
        "geometry; Kalpakjian & Schmid eq. 16.2; FAA AC 43.13-1B ¶4-56",
        Status.Published);

    private static readonly Basis PublishedFactor = new(
        "form.neutralFactor", "K = (0.65 + 0.5 log10(r/t))/2, at most 0.5, at every angle", "DIN 6935", Status.PublishedAsQuoted);

    private static readonly Basis GivenFactor = new("form.neutralFactor", "as given", "caller", Status.Caller);

    private static readonly Basis EstimatedStop = new(
        "form.stations.stopAngle",
        "springback of the fold by pure bending, and the sheet's bending between nose and leaf; a first guess until a test strip says better",
        "Marciniak, Duncan & Hu ch. 6; reach is an assumption",
        Status.Estimated);

    private static readonly Basis GivenStop = new("form.stations.stopAngle", "offset + slope × fold angle", "caller's test strips", Status.Caller);

    private static readonly Basis PrintThrough = new(
        "panel.printThrough.ripple", "closed form fitted to simulated wraps", WrapModel, Status.Model);

    private static readonly Basis Limits = new(
        "panel.printThrough.allowedRipple", "visibility limits by finish", "not yet checked against measured panels", Status.Assumption);

    private static readonly Basis OwnLimits = new("panel.printThrough.allowedRipple", "as given", "caller", Status.Caller);

    private static readonly Basis PanelBlank = new(
        "panel.blank", "mid-surface length; below five thicknesses the neutral line of DIN 6935", "geometry; DIN 6935", Status.Computed);

    private static readonly Basis Pull = new(
        "panel.pull.force", "1.02 M/l, the largest over the wrap", WrapModel, Status.Model);

    private static readonly Basis ClampLoad = new(
        "panel.pull.clampLoad", "M over the depth on which a clamp bears right up to the first fold; 1.5 M/d for one a distance d behind it", "statics; the propped beam, and one simulated case", Status.Model);

    private static readonly Basis Energy = new(
        "panel.pull.energyReleased", "integral of M²/(2E'I) over curve and lever", "elastic beam theory", Status.Computed);

    private static readonly Basis Give = new(
        "form.give",
        "moment F h - M(panel) on the form, F = M/l square to the panel's end, which is l (k - W/M) further round, at most 0.8 rad; turned into rotation by the form's stiffness, which reads 0.9 to 1.3 times the true one, 1.6 times for a panel that springs back by two thirds; a clamp a distance d behind the first fold adds 0.75 M d/(E'I)",
        "statics; finite elements of five cases",
        Status.Estimated);

    private static readonly Basis Outlook = new(
        "panel.outlook",
        "yield stress, thickness and modulus to both sides over the planned form in simulation; fold angles and marks by first-order sums; 95 % of normal ln R, sweep and ln ripple",
        WrapModel,
        Status.Model);

    private static readonly Basis QuickOutlook = Outlook with
    {
        Method = "yield stress, thickness and modulus to both sides in pure bending at the mean curvature; fold angles and marks by first-order sums; 95 % of normal ln R and sweep",
        Source = "Marciniak, Duncan & Hu ch. 6",
        Status = Status.Estimated,
    };

    /// <summary>How far a bare form gives where the pull over it was simulated.</summary>
    internal static readonly Basis CoupledGive = new(
        "form.give",
        "the form as an elastic beam from the clamp on, in balance with the panel on its folds; finite elements turn 3 to 5 % further in three cases",
        WrapModel,
        Status.Model);

    private static readonly Basis RibsBetween = new(
        "form.ribs",
        "one at each edge and at most 200 mm apart, closer where the largest push on a fold would take the form's sheet, a plate on two ribs, past half its yield",
        "plate theory (Levy); both limits are assumptions",
        Status.Computed);

    private static readonly Basis HandForce = new(
        "checks.hand-force", "225 N, standing, whole body", "Ergonomic Design for People at Work, vol. 2 (1986), quoted", Status.PublishedAsQuoted);

    private static readonly Basis Stock = new(
        "panel.blank.stock", "whole blanks side by side, no allowance for the cut; default sheet sizes", "common practice, no source", Status.CommonPractice);

    private static readonly Basis TaperBalance = new(
        "taper",
        "rulings at equal tangent angles, the only developable sheet through both curves; released moments balanced along each ruling",
        "differential geometry of developable surfaces; least elastic energy",
        Status.Computed);

    public static IReadOnlyList<Basis> Of(PlanDraft draft)
    {
        var basis = new List<Basis>(28)
        {
            Springback(draft),
            FlowCurve(draft.Panel, draft.PanelLaw.Flow),
            Stations,
            draft.Form.NeutralFactor is null ? PublishedFactor : GivenFactor,
            draft.Form.Stop is null ? EstimatedStop : GivenStop,
            PrintThrough,
            draft.Panel.Finish.IsOwn ? OwnLimits : Limits,
            PanelBlank,
            Pull,
            ClampLoad,
            Energy,
            draft.IsGiveEstimated ? Give : CoupledGive,
            HandForce,
            Stock,
        };
        basis.Add(draft.Outlook.IsEstimated ? QuickOutlook : Outlook);
        basis.AddRange(ScatterDefaults.BasisOf(draft.Panel));
        if (draft.Form.Backing == FormBacking.Ribs && draft.Taper is null)
            basis.Add(RibsBetween);
        if (draft.Panel.Curve is PointsCurve)
            basis.Add(new("panel.curve", "fewest curvature knots whose fit keeps every point within the tolerance", "least squares", Status.Computed));
        if (draft.Taper is not null)
            basis.Add(TaperBalance);
        if (draft.Prediction is { } prediction)
            PredictionBasis.AddTo(basis, prediction, draft.Panel, "panel.outcome.");
        AddMaterial(basis, "panel", draft.Panel.Sheet.Material);
        AddMaterial(basis, "form", draft.Form.Sheet.Material);
        basis.AddRange(draft.Job.Assumed.Select(AssumptionBasis.Of));
        return basis;
    }

    /// <summary>Adds what is known of a panel's sheet.</summary>
    /// <param name="basis">Destination.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="law">Its bending law.</param>
    internal static void AddPanelSheet(List<Basis> basis, PanelSpec panel, BendingLaw law)
    {
        basis.Add(FlowCurve(panel, law.Flow));
        if (panel.Springback.YieldMpa is not null)
            basis.Add(new("panel.material.yield", "the measured effective yield", "caller's test strips", Status.Caller));
        else
            AddMaterial(basis, "panel", panel.Sheet.Material);
    }

    private static Basis Springback(PlanDraft draft) => draft.Panel.Springback switch
    {
        MeasuredFactor => new("form.sweep", "formed curvature = finished curvature over the measured factor", "caller's test strips", Status.Caller),
        SolvedOnWrap when draft.Solution is not null => new(
            "form.sweep", "folds and facets solved on the simulated pull: the finished sweep, and the least distance from the finished shape", WrapModel, Status.Model),
        _ => PureBending,
    };

    private static Basis FlowCurve(PanelSpec panel, FlowCurve flow) => flow.Origin switch
    {
        FlowCurveOrigin.Caller => new("panel.flowCurve", "K (eps0 + p)^n as given, through the yield", "caller", Status.Caller),
        FlowCurveOrigin.Catalogue => OfCatalogue(panel.Sheet.Material),
        FlowCurveOrigin.Estimated => new("panel.flowCurve", "Considère's criterion at half the elongation", FromStrengths, Status.Estimated),
        FlowCurveOrigin.CatalogueReplaced => Replaced("the catalogue's K and n miss", flow),
        FlowCurveOrigin.EstimateReplaced => Replaced("the first estimate misses", flow),
        _ => new("panel.flowCurve", "perfectly plastic: hardening is not known, so print-through is not known either", "no data", Status.Assumption),
    };

    private static Basis OfCatalogue(Material material)
    {
        const string method = "K (eps0 + p)^n of the catalogue, through the yield";
        return material.Provenance.TryGetValue("strainHardening", out var from)
            ? new("panel.flowCurve", method, CitationOf(from.Source), from.Status)
            : new("panel.flowCurve", method, "no source", Status.Assumption);
    }

    private static Basis Replaced(string what, FlowCurve flow)
    {
        var strength = flow.Misses == FlowCurveMiss.Ultimate ? "the ultimate strength" : "the proof stress";
        var share = flow.ReplacedShare < 1 ? FormattableString.Invariant($", for {Math.Max(flow.ReplacedShare, 0.01):P0} of the way") : "";
        return new(
            "panel.flowCurve",
            $"eps0 = 0.002 through yield and ultimate strength{share}: {what} {strength}",
            FromStrengths,
            Status.Estimated);
    }

    private static void AddMaterial(List<Basis> basis, string where, Material material)
    {
        Add("yield", "0.2 % proof stress");
        Add("minRadiusOverThickness", "smallest inside radius over thickness, across the grain, 90°; 1.5 times along it or unknown (assumption)");

        void Add(string property, string method)
        {
            if (material.Provenance.TryGetValue(property, out var from))
                basis.Add(new($"{where}.material.{property}", method, CitationOf(from.Source), from.Status));
        }
    }

    private static string CitationOf(string key) => SourceCatalog.TryFind(key, out var source) ? source!.Citation : key;
}
