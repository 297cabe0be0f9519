using Forming.Facets;
using Forming.Materials;
using Forming.Prediction;
using Forming.Pulling;
using Forming.Results;
using Forming.Springback;

namespace Forming.TestStrips;

/// <summary>From strips judged smooth or showing to the ripple that a shop's eye allows.</summary>
/// <remarks>
/// Each strip is given the ripple of its own simulated pull, as plans are counted by, so most of what the simulation is out by falls away
/// between strip and plan; where that pull cannot be followed, the closed form for a first guess (<see cref="PrintThrough"/>) stands in.
/// The limit is bracketed, not averaged: a verdict says only which side it lies on.
/// </remarks>
public static class PrintStrips
{
    /// <summary>Least and greatest ripple that a plan takes as its limit [mm].</summary>
    private const double LeastMm = 0.0001;
    private const double MostMm = 100;

    private const double Doubling = 2;

    // No finish binds by its slope here: half a turn is more than any facet has.
    private static readonly Angle AnySlope = new(Math.PI);

    /// <summary>What the strips teach.</summary>
    /// <param name="question">The strips and their material.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    /// <exception cref="NoSolutionException">
    /// <c>strips.no-hardening</c>: the material's hardening is not known, so no ripple is. <c>strips.none-usable</c>: no strip shows
    /// anything. <c>strips.facet-too-short</c>: a form's folds leave a facet no straight part.
    /// </exception>
    public static PrintLesson Learn(PrintQuestion question, CancellationToken cancellation = default)
    {
        var (material, strips) = question;
        if (!FlowCurve.Of(material).IsKnown)
            throw NoHardening(material);
        for (var i = 0; i < strips.Count; i++)
            strips[i].Over?.RefuseShortFacets(i);
        var work = new PullWork(PullWork.Most);
        PrintReading[] readings = [.. strips.Select(strip => ReadingOf(material, strip, work, cancellation))];
        if (Array.TrueForAll(readings, reading => reading.RippleMm is null))
            throw NoneUsable();
        var smooth = Usable(strips, readings, shows: false);
        var showing = Usable(strips, readings, shows: true);
        double? most = smooth.Count > 0 ? smooth.Max(Ripple) : null;
        double? least = showing.Count > 0 ? showing.Min(Ripple) : null;
        var below = smooth.Where(i => !(Ripple(i) >= least) && Ripple(i) is >= LeastMm and <= MostMm).ToArray();
        int? setter = below.Length > 0 ? below.MaxBy(Ripple) : null;
        double? allowed = setter is { } at ? Ripple(at) : null;
        return new(
            most, least, allowed, setter is { } there ? readings[there].Slope : null, readings, ContradictionsOf(readings, smooth, showing))
        {
            Outliers = [],
            Changes = ChangesOf(allowed, setter is { } one ? readings[one].Slope : null),
            Planning = allowed is null ? null : StripNotes.Planning,
            Next = NextOf(material, strips, readings, allowed, least),
            Notes = NotesOf(strips, readings, allowed, least),
            Safety = StripSafety.OverTheForm,
            Basis = GroundsOf(readings),
        };

        double Ripple(int i) => readings[i].RippleMm!.Value;
    }

    private static NoSolutionException NoHardening(Material material) => new(
        "strips.no-hardening",
        "material",
        $"the hardening of {material.Name} is not known, and print-through is nearly inversely proportional to it: no ripple can be given",
        $"a material with ultimate strength above yield and elongation, or with strengthCoefficient and strainHardening");

    private static NoSolutionException NoneUsable() => new(
        "strips.none-usable",
        "strips",
        $"no strip shows where the limit is: each stays elastic on its form, or its lever is so long that the sheet may arch over folds",
        $"at least one strip bent past yield, with a lever that keeps the wrap in order");

    private static List<int> Usable(IReadOnlyList<PrintStrip> strips, PrintReading[] readings, bool shows) =>
        [.. Enumerable.Range(0, strips.Count).Where(i => strips[i].Shows == shows && readings[i].RippleMm is not null)];

    private static PrintReading ReadingOf(Material material, PrintStrip strip, PullWork work, CancellationToken cancellation)
    {
        var (law, state) = StateOf(material, strip);
        var lever = strip.LeverMm ?? DefaultLever(state);
        if (!state.IsPlastic)
            return new(lever, null, null, $"the sheet stays elastic at {Figure.Length(strip.FormRadiusMm)}: nothing is set, so nothing shows");
        if (PrintPull.Of(material, strip, lever, work, cancellation) is { } pulled)
            return new(lever, pulled.HeightMm, pulled.Slope, null, IsSimulated: true);
        var longest = PrintThrough.LongestLever(state);
        if (lever > longest)
        {
            return new(
                lever, null, null, $"with a lever of {Figure.Length(lever)} the sheet may arch over folds, past {Figure.Length(longest)}: its ripple is not known");
        }

        if (PrintThrough.Compute(strip.FacetMm, lever, state, law.Stiffness)?.Times(FactorOf(strip)) is not { HeightMm: > 0 } ripple)
            return new(lever, null, null, $"the sheet is only just past yield at {Figure.Length(strip.FormRadiusMm)}: it leaves no ripple to judge");
        return new(lever, ripple.HeightMm, ripple.Slope, null);
    }

    private static (BendingLaw Law, BentState State) StateOf(Material material, PrintStrip strip)
    {
        var law = BendingLaw.Of(new Sheet(material, strip.ThicknessMm));
        return (law, law.At(1 / (strip.FormRadiusMm + (strip.ThicknessMm / 2))));
    }

    private static double DefaultLever(BentState state) =>
        state.IsPlastic ? Math.Min(Lever.MostMm, FacetJudge.LeverShare * PrintThrough.LongestLever(state)) : Lever.MostMm;

    private static double FactorOf(PrintStrip strip) => strip.IsFirstFacet ? PrintThrough.FirstFacetHalf : 1;

    private static PrintContradiction[] ContradictionsOf(PrintReading[] readings, List<int> smooth, List<int> showing) =>
    [
        .. from one in smooth
           from other in showing
           where readings[one].RippleMm >= readings[other].RippleMm
           select new PrintContradiction(one, other, $"judged smooth at a ripple of {Length(readings[one])}, while {Length(readings[other])} was judged to show: look at both again, side by side and in one light"),
    ];

    private static Figure Length(PrintReading reading) => Figure.Length(reading.RippleMm!.Value);

    private static FormattableString ChangesOf(double? allowed, Angle? slope) => allowed is { } ripple
        ? $"The next form may leave a ripple of {Figure.Length(ripple)} in place of its finish's limit, so its facets grow or shrink to that. The finish's limit of slope still applies; the strip that set the limit was smooth at {Figure.Angle(slope!.Value.Radians)}; put that into panel.allowedSlope if you want it too."
        : (FormattableString)$"Nothing changes yet: no strip was judged smooth below the smallest ripple that shows, so there is no limit to plan with.";

    private static NextStrip NextOf(
        Material material, IReadOnlyList<PrintStrip> strips, PrintReading[] readings, double? allowed, double? least)
    {
        var wanted = (allowed, least) switch
        {
            ({ } from, { } to) => Math.Sqrt(from * to),
            ({ } from, null) => Doubling * from,
            (null, { } to) => to / Doubling,
            _ => LeastMm * Doubling,
        };
        var like = Enumerable.Range(0, strips.Count).Where(i => readings[i].RippleMm is not null)
            .MinBy(i => Math.Abs(Math.Log(readings[i].RippleMm!.Value / wanted)));
        var strip = strips[like];
        var (law, state) = StateOf(material, strip);
        // The closed form grows with the facet as the strip's ripple does, from what that was.
        var share = PrintThrough.Compute(strip.FacetMm, readings[like].LeverMm, state, law.Stiffness)?.HeightMm is > 0 and var closed
            ? closed / readings[like].RippleMm!.Value
            : 1;
        var facet = PrintThrough.AllowedFacet(
            readings[like].LeverMm, state, law.Stiffness, new Finish("next strip", share * wanted, AnySlope)) ?? strip.FacetMm;
        var (c, r) = (Figure.Length(facet), Figure.Length(strip.FormRadiusMm));
        var (t, l) = (Figure.Length(strip.ThicknessMm), Figure.Length(readings[like].LeverMm));
        FormattableString why = (allowed, least) switch
        {
            ({ } from, { } to) => $"Fold a form of {c} facets at a radius of {r}: in {t}, pulled at {l}, its ripple of {Figure.Length(wanted)} halves the gap between {Figure.Length(from)} and {Figure.Length(to)}.",
            ({ } from, null) => $"Fold a form of {c} facets at a radius of {r}: in {t}, pulled at {l}, its ripple of {Figure.Length(wanted)} is twice the {Figure.Length(from)} that was smooth, and no strip shows yet.",
            (null, { } to) => $"Fold a form of {c} facets at a radius of {r}: in {t}, pulled at {l}, its ripple of {Figure.Length(wanted)} is half of the {Figure.Length(to)} that shows, and none is smooth below that yet.",
            _ => $"Fold a form of {c} facets at a radius of {r}: in {t}, pulled at {l}, its ripple of {Figure.Length(wanted)} is within the range that a plan can use.",
        };
        return new(why)
        {
            FacetMm = facet,
            FormRadiusMm = strip.FormRadiusMm,
            ThicknessMm = strip.ThicknessMm,
            LeverMm = readings[like].LeverMm,
        };
    }

    private static List<ShopNote> NotesOf(
        IReadOnlyList<PrintStrip> strips, PrintReading[] readings, double? allowed, double? least)
    {
        var notes = new List<ShopNote>(3);
        if (allowed is not null && least is null)
            notes.Add(new("no-upper-end", $"No strip shows: the limit is at or above the largest ripple judged smooth; how far above is not known."));
        if (strips.Any(strip => strip.LeverMm is null))
        {
            notes.Add(new(
                "lever-chosen",
                $"Measure the lever of every strip: strips without one were calculated with the longest that keeps the wrap in order, at most {Figure.Length(Lever.MostMm)}, and ripple is nearly inversely proportional to the lever."));
        }

        var closed = readings.Count(reading => reading is { RippleMm: not null, IsSimulated: false });
        if (closed > 0)
        {
            notes.Add(new(
                "closed-form",
                $"The pull of {closed} of {readings.Length} strips cannot be followed with its lever: their ripple is from the closed form for a first guess, which may read several times high."));
        }

        notes.Add(new("same-light", $"Judge all strips in one light, with the finish the panel will have: paint and polish show more than bare sheet."));
        return notes;
    }

    private static List<Basis> GroundsOf(PrintReading[] readings)
    {
        var grounds = new List<Basis>(3);
        if (Array.Exists(readings, reading => reading.IsSimulated))
        {
            grounds.Add(new(
                "strips.ripple",
                "simulated pull of the strip over its own facets; where only facet and radius are given, over two to five like ones with folds of 4 mm outside radius (assumption)",
                "the project's own wrap model; not yet checked against measured panels",
                Status.Model));
        }

        if (Array.Exists(readings, reading => reading is { RippleMm: not null, IsSimulated: false }))
        {
            grounds.Add(new(
                "strips.ripple.closed",
                "closed form fitted to simulated wraps, where the strip's own cannot be followed; the first facet 1.8 times. Against held-out simulations predicted over simulated ran from 0.83 to 1.57 (5 % to 95 %)",
                "the project's own wrap model; not yet checked against measured panels",
                Status.Estimated));
        }

        grounds.Add(new(
            "allowedRipple",
            "the largest ripple judged smooth below every one judged to show: the careful end of the bracket",
            "the caller's strips",
            Status.Caller));
        return grounds;
    }
}
