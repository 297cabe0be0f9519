using Forming.Curves;
using Forming.Facets;
using Forming.Materials;
using Forming.Plans.Drafts;
using Forming.Results;
using Forming.Springback;

namespace Forming.Plans.Notes;

/// <summary>Hints that save a panel: common practice of the trade, no source.</summary>
internal static class ShopNotes
{
    private static readonly ShopNote Burr = new(
        "burr-side",
        $"Cut both blanks so that the burr faces away from the contact: a burr between form and panel prints, and scratches as the panel slides.");

    private static readonly ShopNote Marking = new(
        "marking-face",
        $"Mark the form on the face that becomes the inside of its folds: it lies up, under the nose. Pencil or ink only; never scribe a contact face or a panel.");

    private static readonly ShopNote Sight = new(
        "sight-line",
        $"Sight lines are for the lead-in side clamped; turned end for end, set the other side's tangent line.");

    private static readonly ShopNote Film = new(
        "film-between",
        $"Put film or clean paper tape between form and panel: these metals gall or stain each other, and grit prints. Allow for its thickness.");

    private static readonly ShopNote Wear = new(
        "remeasure-form",
        $"Measure a form again after many panels, by template across several folds: folds open under repeated pulls.");

    private static readonly ShopNote Template = new(
        "check-by-template",
        $"Check the form with a template every few folds and close the angle with the last one or two.");

    private static readonly ShopNote Strip = new(
        "test-strip",
        $"Bend test strips of the same sheet first: stop angles here are a first guess, and yield varies by a tenth or two within one grade.");

    private static readonly ShopNote FullEnds = new(
        "clamp-back",
        $"With full folds at the ends, clamp the panel half a facet short of the first fold, or it will not touch the folds in order.");

    private static readonly ShopNote Second = new(
        "second-half",
        $"Work the second half from the other edge over the same form, after turning the panel end for end.");

    private static readonly ShopNote TaperFace = new(
        "taper-face",
        $"Coordinates of the flat are as seen from the contact face; marks go on the other face, where near and far change sides. The SVG, PDF and DXF show the face that is marked.");

    private static readonly ShopNote OppositeHand = new(
        "opposite-hand",
        $"The second half of this panel needs an opposite-hand form: the same blank, marked on the other face and folded the other way.");

    private static readonly ShopNote Bar = new(
        "pull-by-bar",
        $"Pull by a long straight bar clamped along the whole edge: it keeps the panel level and its edge straight.");

    private static readonly ShopNote Fluting = new(
        "fluting",
        $"Aged or annealed low-carbon steel may kink at random where it should bend evenly (fluting; from memory): temper-rolled sheet does not.");

    private static readonly ShopNote ActualYield = new(
        "actual-yield",
        $"Your yield must be this sheet's own, not a certificate's minimum: plates run 31 % above nominal (Z. Sekulski, abstract read), and the panel would come off too open.");

    private static readonly ShopNote Friction = new(
        "friction",
        $"Friction between panel and form is left out: in finite elements a coefficient of 0.2 changes the radius by 0.6 %.");

    /// <summary>Machinery's Handbook, straight stock before bending, 0.55 t + 1.57 r for soft brass and copper: from memory.</summary>
    private const double SoftFactor = 0.35;

    /// <summary>The same, 0.71 t + 1.57 r for cold-rolled and spring steel: from memory.</summary>
    private const double HardFactor = 0.45;

    /// <summary>Two hands this far apart keep an edge level and straight without a bar [mm]: an assumption.</summary>
    private const double HandsApartMm = 300;

    /// <summary>What a hit turns a panel that is bumped directly [rad]: trade articles.</summary>
    private const double TurnPerHit = 2 * Math.PI / 180;

    /// <summary>Steel that yields sooner is taken for low-carbon steel [MPa]: an assumption.</summary>
    private const double LowCarbonYieldMpa = 300;

    /// <summary>Share of the bending moment past which the weight of what hangs free is said.</summary>
    private const double WeightShare = 0.05;

    public static IReadOnlyList<ShopNote> Of(PlanDraft draft)
    {
        var notes = new List<ShopNote>(17);
        if (draft.Outlook.IsUnsure)
            notes.Add(new("outlook", $"More of the bend springs back than stays: {draft.Outlook.Text}."));
        notes.AddRange([FoldsOfForm(draft.FinishedSweep), Strip, Burr, Marking, Sight, Template, Wear]);
        AddPull(notes, draft);
        AddSheet(notes, draft.Panel.Sheet.Material);
        if (Marks(draft.Panel.Sheet.Material.Family, draft.Form.Sheet.Material.Family))
            notes.Add(Film);
        if (draft.Form.Stepping.Ends == SteppingEnds.Full)
            notes.Add(FullEnds);
        if (draft.Panel.Mirrored)
            notes.Add(draft.Taper is { NeedsOppositeHand: true } ? OppositeHand : Second);
        if (draft.PanelLaw.Flow.ReplacedShare > 0)
            notes.Add(FlowCurveReplaced(draft.Panel.Sheet.Material, draft.PanelLaw.Flow));

        var atMid = draft.BlankAtMidNeutralMm;
        if (draft.Form.NeutralFactor is null && atMid > draft.Job.Marks.Tape.ResolutionMm / 2)
            notes.Add(NeutralFactor(draft, atMid));

        if (draft.TakenAsFlat > 0)
        {
            notes.Add(new(
                "taken-as-flat",
                $"{Figure.Angle(draft.TakenAsFlat)} of the curve are left flat: over their whole length between flats they rise less than {Figure.Length(FinishedCurve.FlatSagittaMm)} above the chord. The panel turns that much less than the curve."));
        }

        if (draft.Taper is not null)
            notes.Add(TaperFace);

        foreach (var caution in draft.Panel.Sheet.Material.Cautions)
            notes.Add(new("panel-material", FormattableStringOf(caution)));
        return notes;
    }

    private static void AddPull(List<ShopNote> notes, PlanDraft draft)
    {
        if (draft.Panel.WidthMm > HandsApartMm)
            notes.Add(Bar);
        if (draft.Prediction is { Wraps: true })
            notes.Add(Friction);
        if (draft.Taper is not null)
            return;

        // The flat past the curve, level, about the end of the curve; further back it stands upright or is on the form already.
        var panel = draft.Panel;
        var free = draft.PanelBlank.LengthMm - panel.TrimMm - panel.LeadInMm - draft.Finished!.LengthMm;
        var weight = panel.Sheet.Material.DensityKgPerCubicMetre * 1e-9 * WorkingLimits.Gravity * panel.Sheet.ThicknessMm * free * free / 2;
        if (weight > WeightShare * draft.Pull.MomentPerWidth)
        {
            notes.Add(new(
                "own-weight",
                $"The {Figure.Length(Math.Round(free))} past the curve weigh down with up to {weight / draft.Pull.MomentPerWidth:P0} of the bending moment, which is left out: prop that end up, or pull that much harder."));
        }
    }

    private static void AddSheet(List<ShopNote> notes, Material sheet)
    {
        if (sheet is { Family: MetalFamily.Steel or MetalFamily.GalvanizedSteel, YieldMpa: < LowCarbonYieldMpa })
            notes.Add(Fluting);
        if (sheet.Provenance.TryGetValue("yield", out var from) && from.Status == Status.Caller)
            notes.Add(ActualYield);
    }

    // Between the handbook's rows for the softest and the hardest sheets.
    private static ShopNote NeutralFactor(PlanDraft draft, double atMidMm)
    {
        var (fold, sweep) = (draft.Fold, draft.FormSweep);
        double Longer(double factor) => sweep * (factor - fold.NeutralFactor) * fold.ThicknessMm;
        return new(
            "neutral-factor",
            $"The form's blank is for K = {fold.NeutralFactor:0.00} by DIN 6935; handbook rows for straight stock (from memory) amount to K = {SoftFactor:0.00} to {HardFactor:0.00}, which changes its length by {Figure.Length(Longer(SoftFactor))} to {Figure.Length(Longer(HardFactor))}; small folds hardly wrap the nose, and K = 0.50 makes it {Figure.Length(atMidMm)} longer. Fold a strip to see which is right on your brake.");
    }

    private static ShopNote FoldsOfForm(double sweep) => new(
        "folds-of-form",
        $"These are folds of the form, not of the panel: bumped directly, at about 2° a hit, the panel would take {(int)Math.Ceiling((sweep / TurnPerHit) - 1e-9)} hits.");

    private static ShopNote FlowCurveReplaced(Material material, FlowCurve flow)
    {
        FormattableString missed = flow.Misses == FlowCurveMiss.Ultimate ? $"ultimate strength" : (FormattableString)$"proof stress";
        FormattableString place = flow.ReplacedShare < 1 ? $"one between it and a curve" : (FormattableString)$"one";
        return new(
            "flow-curve-replaced",
            $"The usual flow curve of {material.Name} misses its {missed}; {place} through the proof stress and the ultimate strength is used in its place (n = {flow.Hardening:0.000}).");
    }

    // Soft and bright faces take marks from any metal; unlike metals stain or gall each other.
    private static bool Marks(MetalFamily panel, MetalFamily form) =>
        panel != form
            || panel is MetalFamily.Stainless or MetalFamily.Aluminium or MetalFamily.Copper or MetalFamily.Brass or MetalFamily.Titanium;

    private static FormattableString FormattableStringOf(string text) => $"{text}";
}
