using Forming.Jobs;
using Forming.Materials;
using Forming.Plans.Drafts;
using Forming.Prediction;
using Forming.Results;

namespace Forming.Plans.Notes;

/// <summary>The cautions that a job calls for, in our own words; local law, machine manuals and licensed practice come first.</summary>
internal static class SafetyNotes
{
    /// <summary>Energy past which a panel let go can strike hard [J]: an assumption.</summary>
    private const double StrikingEnergyJ = 5;

    /// <summary>Hold-down past which a pair of hand-tightened clamps may slip [N]: an assumption.</summary>
    private const double SlippingClampN = 5000;

    private static readonly SafetyNote Estimates = new(
        "estimates",
        SafetyLevel.Caution,
        $"These values are estimates from nominal thickness and typical properties, not a design approval. Try a strip of the same sheet first. Local law, codes and the machine maker's instructions come first; where they call for a licensed engineer or contractor, get that person's approval. Not for pressure-retaining, aircraft primary structure, lifting or life-safety parts without approval by a qualified person.");

    internal static readonly SafetyNote Edges = new(
        "sharp-edges",
        SafetyLevel.Warning,
        $"Cut edges and corners slice: deburr before handling, wear cut-resistant gloves to carry and eye protection to cut. Take gloves off before working a brake or anything else that turns or closes: a glove is drawn in with the hand.");

    private static readonly SafetyNote LeafPinch = new(
        "brake-pinch",
        SafetyLevel.Danger,
        $"The clamping beam and the leaf crush fingers: keep hands off the beam's edge and the hinge line, let one person give the word, and hold narrow strips with a backing piece, never by hand. Stand clear of the leaf's and counterweight's swing; never lengthen the handle.");

    private static readonly SafetyNote PressPinch = new(
        "brake-pinch",
        SafetyLevel.Danger,
        $"A press brake closes with force enough to sever: use it guarded and locked out for set-up as the maker and local law require, hands never between punch and die, and mind the flange that whips up as the ram comes down.");

    private static readonly SafetyNote Clamps = new(
        "clamp-and-wrap",
        SafetyLevel.Warning,
        $"Anchor the form so that it cannot roll, slide or tip, and clamp the lead-in along its whole width before pulling. Never stand between form and panel, and never put a hand between them to feel for contact.");

    private static readonly SafetyNote UnknownRelease = new(
        "springback-release",
        SafetyLevel.Warning,
        $"A pulled panel springs open when let go, and one that does not lie over the form can slip off it: ease it off at both ends, faces and bystanders out of its path, before any clamp is opened.");

    private static readonly SafetyNote Mirrored = new(
        "second-half-swings",
        SafetyLevel.Warning,
        $"While the second half is pulled, the finished half swings with it: clear its path over bench and people, and support its weight.");

    private static readonly SafetyNote Collapse = new(
        "form-collapse",
        SafetyLevel.Danger,
        $"The bare form may fold up under this pull and let the panel go all at once: put ribs cut to its inside under it before anyone pulls, and stop if it creeps or creaks.");

    private static readonly SafetyNote Recoil = new(
        "cable-recoil",
        SafetyLevel.Danger,
        $"A cable, strap or hook that breaks or slips lashes back: use gear rated for the pull, hang a weight on the cable's middle, and let nobody stand in line with it or step over it.");

    private static readonly SafetyNote Hooked = new(
        "hooked-panel",
        SafetyLevel.Caution,
        $"A panel that wraps past half a turn hooks round the form: slide it off along its folds, supported at both ends; do not prise it open.");

    private static readonly SafetyNote Zinc = new(
        "zinc-fume",
        SafetyLevel.Danger,
        $"Zinc coating gives off harmful fume when welded, cut or heated: strip it first and use local exhaust.");

    private static readonly SafetyNote Stainless = new(
        "chromium-fume",
        SafetyLevel.Warning,
        $"Welding or grinding stainless steel can release hexavalent chromium: local exhaust and breathing protection as local rules require.");

    private static readonly SafetyNote AluminiumDust = new(
        "aluminium-dust",
        SafetyLevel.Warning,
        $"Fine aluminium dust burns and can explode: collect it wet or in rated equipment, and keep it away from steel sparks.");

    private static readonly SafetyNote FireMetal = new(
        "metal-fire",
        SafetyLevel.Danger,
        $"Chips and dust of magnesium and titanium burn fiercely: keep class D powder or dry sand at hand, never water or foam, and collect dust apart from steel.");

    internal static readonly SafetyNote Noise = new(
        "noise",
        SafetyLevel.Caution,
        $"Hammering and dropped sheet are loud: wear hearing protection where the limit for your shop may be passed.");

    public static IReadOnlyList<SafetyNote> Of(PlanDraft draft)
    {
        var notes = new List<SafetyNote>(12)
        {
            Estimates,
            Edges,
            draft.Brake.Kind == BrakeKind.Leaf ? LeafPinch : PressPinch,
            Clamps,
            Release(draft.Pull.EnergyReleasedJ),
        };
        AddPull(notes, Math.Max(draft.Pull.ForceN, draft.SecondHalf?.ForceN ?? 0), draft.Pull.ClampLoadN, draft.Panel.PullBy);
        if (draft.Form.Backing == FormBacking.None && draft.Give.ShareOfYield >= WorkingLimits.NearYield)
            notes.Add(Collapse);
        if (draft.Panel.Mirrored)
            notes.Add(draft.SecondHalf is { } half ? Swinging(half.MassKg) : Mirrored);
        if (draft.FinishedSweep > Math.PI)
            notes.Add(Hooked);
        var heavier = Math.Max(draft.PanelBlank.MassKg, draft.FormBlank.MassKg);
        AddMass(notes, heavier, draft.Panel.PullBy);
        if (draft.Brake.Capacity is null)
            notes.Add(Rating(draft.Form.Sheet.ThicknessMm, draft.Form.Sheet.Material.Name, draft.Form.WidthMm));
        AddMetals(notes, draft.Panel.Sheet.Material.Family, draft.Form.Sheet.Material.Family);
        notes.Add(Noise);
        return notes;
    }

    /// <summary>The cautions of a pull over a form, without those of folding it.</summary>
    /// <param name="prediction">The pull.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="form">Family of the form's metal.</param>
    public static IReadOnlyList<SafetyNote> OfPull(PanelPrediction prediction, PanelSpec panel, MetalFamily form)
    {
        var notes = new List<SafetyNote>(10)
        {
            Estimates,
            Edges,
            Clamps,
            prediction.Pull is { } released ? Release(released.EnergyReleasedJ) : UnknownRelease,
        };
        if (prediction.Pull is { } pull)
            AddPull(notes, pull.ForceN, pull.ClampLoadN, panel.PullBy);
        if (prediction.Give?.ShareOfYield >= WorkingLimits.NearYield)
            notes.Add(Collapse);
        if (panel.Mirrored)
            notes.Add(Mirrored);
        if (prediction.Shape?.Sweep.Radians > Math.PI)
            notes.Add(Hooked);
        AddMetals(notes, panel.Sheet.Material.Family, form);
        return notes;
    }

    private static SafetyNote Release(double energy)
    {
        return new(
            "springback-release",
            energy > StrikingEnergyJ ? SafetyLevel.Danger : SafetyLevel.Warning,
            $"The pulled panel holds about {Figure.Energy(energy)} and springs open when let go: ease it off at both ends, faces and bystanders out of its path, before any clamp is opened.");
    }

    private static void AddPull(List<SafetyNote> notes, double forceN, double clampLoadN, PullBy by)
    {
        if (clampLoadN > SlippingClampN)
            notes.Add(ClampSlip(clampLoadN));
        if (forceN > by.LimitN)
            notes.Add(Force(forceN, by));
        if (by.RatedN is not null || forceN > PullBy.MostPeople * WorkingLimits.HandForceN)
            notes.Add(Recoil);
    }

    private static SafetyNote ClampSlip(double newtons) => new(
        "clamp-slip",
        SafetyLevel.Danger,
        $"The clamps hold down about {Figure.Force(newtons)}. One that slips or breaks throws panel and form up at whoever pulls: use a stiff bar along the whole lead-in and clamps rated for the load, tighten them again after the first facet, and keep everybody out of line with them.");

    private static SafetyNote Force(double newtons, PullBy by)
    {
        if (by.RatedN is { } rated)
        {
            return new(
                "pull-force",
                SafetyLevel.Danger,
                $"The pull is about {Figure.Force(newtons)}, more than the {Figure.Force(rated)} that what pulls it is rated for: use a winch or press rated for the pull on a stiff bar along the whole edge.");
        }

        if (newtons > PullBy.MostPeople * WorkingLimits.HandForceN)
        {
            return new(
                "pull-force",
                SafetyLevel.Danger,
                $"The pull is about {Figure.Force(newtons)}, too much for any crew: use a winch or press rated for it on a stiff bar along the whole edge.");
        }

        var people = Math.Ceiling(newtons / WorkingLimits.HandForceN);
        return new(
            "pull-force",
            SafetyLevel.Warning,
            by.People == 1
                ? $"The pull is about {Figure.Force(newtons)}; one standing person should not pull more than {Figure.Force(WorkingLimits.HandForceN)}: use {people:0} people on a stiff bar along the edge, or a winch rated for it."
                : (FormattableString)$"The pull is about {Figure.Force(newtons)}; {by.People} standing people should not pull more than {Figure.Force(by.LimitN)}: use {people:0} people on a stiff bar along the edge, or a winch rated for it.");
    }

    // What a hoist lifts may fall; what enough people lift is no more than the guidance allows.
    private static void AddMass(List<SafetyNote> notes, double kg, PullBy by)
    {
        if (by.RatedN is null ? kg > by.LimitKg : kg > WorkingLimits.LiftKg)
            notes.Add(Mass(kg, by));
    }

    private static SafetyNote Mass(double kg, PullBy by)
    {
        if (by.RatedN is not null)
        {
            return kg <= by.LimitKg
                ? new("lift-mass", SafetyLevel.Warning, $"A blank weighs about {Figure.Mass(kg)}: lift it with the gear that is rated for it, guide it by its edges, and nobody under it.")
                : new("lift-mass", SafetyLevel.Danger, $"A blank weighs about {Figure.Mass(kg)}, more than the {Figure.Mass(by.LimitKg)} that what lifts it is rated for: move it with a hoist or a forklift rated for it, not by hand, and nobody under it.");
        }

        if (kg > WorkingLimits.MostLifters * WorkingLimits.LiftKg)
        {
            return new(
                "lift-mass",
                SafetyLevel.Danger,
                $"A blank weighs about {Figure.Mass(kg)}: move it with a hoist or a forklift, not by hand, and nobody under it.");
        }

        var people = Math.Ceiling(kg / WorkingLimits.LiftKg);
        return new(
            "lift-mass",
            SafetyLevel.Warning,
            by.People == 1
                ? $"A blank weighs about {Figure.Mass(kg)}, above the {Figure.Mass(WorkingLimits.LiftKg)} that the lifting guidance allows under ideal conditions: lift it with {people:0} people or an aid, close to the body, and not in wind."
                : (FormattableString)$"A blank weighs about {Figure.Mass(kg)}, above the {Figure.Mass(by.LimitKg)} that the lifting guidance allows {by.People} people under ideal conditions: lift it with {people:0} people or an aid, close to the body, and not in wind.");
    }

    private static SafetyNote Swinging(double kg) => Mirrored with
    {
        Text = $"While the second half is pulled, the finished half, about {Figure.Mass(kg)}, swings with it: clear its path over bench and people, and support its weight.",
    };

    /// <summary>The caution for a brake whose rating is not stated.</summary>
    /// <param name="thicknessMm">Thickness of the form's sheet [mm].</param>
    /// <param name="material">What the sheet is called.</param>
    /// <param name="widthMm">Length of the folds [mm].</param>
    internal static SafetyNote Rating(double thicknessMm, string material, double widthMm) => new(
        "brake-rating",
        SafetyLevel.Caution,
        $"The request states no rating: check {Figure.Length(thicknessMm)} of {material} over {Figure.Length(widthMm)} against the brake maker's plate. Strong and stainless sheet cut it down.");

    private static void AddMetals(List<SafetyNote> notes, MetalFamily panel, MetalFamily form)
    {
        if (Involves(MetalFamily.GalvanizedSteel))
            notes.Add(Zinc);
        if (Involves(MetalFamily.Stainless))
            notes.Add(Stainless);
        if (Involves(MetalFamily.Aluminium))
            notes.Add(AluminiumDust);
        if (Involves(MetalFamily.Magnesium) || Involves(MetalFamily.Titanium))
            notes.Add(FireMetal);

        bool Involves(MetalFamily family) => panel == family || form == family;
    }
}
