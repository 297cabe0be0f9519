using Forming.Materials;
using Forming.Springback;
using Forming.TestStrips;

namespace Forming.Verification;

/// <summary>Springback and moments against published formulas and what was computed from them, forwards and backwards.</summary>
internal static class SpringbackChecks
{
    private const double Inch = 25.4; // mm
    private const double Psi = 0.00689475729; // MPa
    private static readonly int[] FactorColumns = [16, 25, 40, 63, 100];

    /// <summary>The tables.</summary>
    public static IEnumerable<CheckTable> Tables() =>
    [
        CheckTable.Read("springback-closed-form", "Springback of a sheet without hardening", "x = Ri Y/(E t) = {x}", ClosedForm),
        CheckTable.Read(
            "springback-forward-cases",
            "Springback of a wide sheet",
            "{name}: {thickness} mm bent to {radius} mm; yield {yield} MPa, modulus {modulus} MPa, Poisson's ratio {poisson}",
            Forward),
        CheckTable.Read(
            "springback-inverse-cases",
            "From the wanted radius to the formed one",
            "{name}: {thickness} mm, wanted inside radius {wanted} mm; yield {yield} MPa, modulus {modulus} MPa",
            Inverse),
        CheckTable.Read(
            "kalpakjian-schmid-springback-example",
            "Springback of the textbook's 20-gauge steel",
            "0.0359 in bent to 0.5 in, yield 40 000 psi, modulus {modulusPsi} psi",
            Textbook),
        CheckTable.Read(
            "marciniak-moments",
            "Moments at first yield, in the bend and fully plastic",
            "{name}: {thickness} mm, yield {yield} MPa, modulus {modulus} MPa; bent to a mid-surface radius of {midRadius} mm",
            Moments),
        CheckTable.Read(
            "power-law-moments",
            "Moment by the power law alone",
            "{name}: K {strengthCoefficient} MPa, n {n}, {thickness} mm bent to {radius} mm",
            row => [row.Near("moment", "moment per width", "N·mm/mm", 2e-6, () => PowerLaw(row).At(1 / row["radius"]).MomentPerWidth)]),
        CheckTable.Read(
            "tabellenbuch-springback-factors",
            "Springback factors of the German textbook tables",
            "{name}: modulus {modulus} MPa, one flow stress of {flowStress} MPa fitted to the row",
            Factors),
    ];

    private static CheckValue[] ClosedForm(PrintedRow row) =>
    [
        row.Within("ratio", "Ri/Rf", "", 1e-12, () =>
        {
            var law = BendingLaw.Of(new Sheet(TextbookMetal.Perfect(69e3, 0.33, 145), 1.5));
            var loaded = law.YieldCurvature / (2 * row["x"]);
            return law.Release(loaded) / loaded;
        }),
        row.Near("x", "x, learnt back from a strip with the printed ratio", "", 1e-6, () =>
        {
            const double modulus = 200e3, mid = 100, thickness = 1.5;
            var yieldMpa = row["x"] * modulus * thickness / mid;
            var lesson = SpringbackStrips.Learn(new()
            {
                Sheet = new(TextbookMetal.Uniaxial(modulus, yieldMpa * 0.8), thickness),
                Strips = [SpringbackStrip.Round(mid - (thickness / 2), (mid / row["ratio"]) - (thickness / 2), thickness)],
            });
            return 2 / Math.Sqrt(3) * lesson.AloneMpa.Value * mid / (modulus * thickness);
        }),
    ];

    private static CheckValue[] Forward(PrintedRow row)
    {
        double radius = row["radius"], half = row["thickness"] / 2;
        double Kept(double bent) =>
            BendingLaw.Of(new Sheet(TextbookMetal.Perfect(row["modulus"], row["poisson"], row["yield"]), row["thickness"])).Release(1 / bent) * bent;
        return
        [
            row.Within("insideRatio", "Ri/Rf, inside radius in x", "", 6e-7, () => Kept(radius)),
            row.Within("insideReleased", "released inside radius, inside radius in x", "mm", 1e-3, () => radius / Kept(radius)),
            row.Within("midRatio", "Ri/Rf, mid-surface radius in x", "", 6e-7, () => Kept(radius + half)),
            row.Within("midReleased", "released inside radius, mid-surface radius in x", "mm", 1e-3, () => ((radius + half) / Kept(radius + half)) - half),
        ];
    }

    private static CheckValue[] Inverse(PrintedRow row)
    {
        var half = row["thickness"] / 2;
        var finished = 1 / (row["wanted"] + half);
        BendingLaw Law() => BendingLaw.Of(new Sheet(TextbookMetal.Uniaxial(row["modulus"], row["yield"]), row["thickness"]));
        double Loaded() => Law().LoadedFor(finished).Curvature;
        return
        [
            row.Within("f", "finished over yield curvature", "", 6e-7, () => finished / Law().YieldCurvature),
            row.Within("u", "loaded over yield curvature", "", 1e-6, () => Loaded() / Law().YieldCurvature),
            row.Within("formed", "formed inside radius", "mm", 1e-5, () => (1 / Loaded()) - half),
            row.Within("ratio", "Ri/Rf", "", 6e-7, () => finished / Loaded()),
            row.Within("elasticLimit", "mid-surface radius of first yield", "mm", 6e-4, () => 1 / Law().YieldCurvature),
        ];
    }

    private static CheckValue[] Textbook(PrintedRow row)
    {
        const double thickness = 0.0359 * Inch, formed = 0.5 * Inch;
        BendingLaw Law() => BendingLaw.Of(new Sheet(TextbookMetal.Uniaxial(row["modulusPsi"] * Psi, 40_000 * Psi), thickness));
        double Kept() => Law().Release(1 / formed) * formed;
        double Factor() => ((2 * formed / thickness) + 1) / ((2 * formed / Kept() / thickness) + 1);
        return
        [
            row.Within("x", "x = Ri Y/(E t)", "", 1e-6, () => Law().YieldCurvature * formed / 2),
            row.Within("ratio", "Ri/Rf", "", 1e-6, Kept),
            row.Within("releasedIn", "released radius", "in", 1e-6, () => formed / Kept() / Inch),
            row.Within("releasedMm", "released radius", "mm", 1e-4, () => formed / Kept()),
            row.Within("factor", "springback factor Ks", "", 1e-6, Factor),
            row.Within("bendFor90", "bend for 90°", "°", 0.006, () => 90 / Factor()),
        ];
    }

    private static CheckValue[] Moments(PrintedRow row)
    {
        BendingLaw Law() => BendingLaw.Of(new Sheet(TextbookMetal.Uniaxial(row["modulus"], row["yield"]), row["thickness"]));
        return
        [
            row.Within("firstYield", "moment per width at first yield", "N·mm/mm", 5e-4, () => Law().FirstYieldMoment),
            row.Within("bent", "moment per width in the bend", "N·mm/mm", 5e-7, () => Law().At(1 / row["midRadius"]).MomentPerWidth),
            row.Within("fullyPlastic", "moment per width, fully plastic", "N·mm/mm", 1e-3, () => Law().At(10).MomentPerWidth),
        ];
    }

    // Without an elastic core to speak of (E a million times too high) and yielding at a strain of 1e-8, only K eps^n is left.
    private static BendingLaw PowerLaw(PrintedRow row)
    {
        const double atOnce = 1e-8;
        var n = row["n"];
        return BendingLaw.Of(new Sheet(TextbookMetal.Swift(1e12, 0, row["strengthCoefficient"] * Math.Pow(atOnce, n), n, atOnce), row["thickness"]));
    }

    private static IEnumerable<CheckValue> Factors(PrintedRow row) => FactorColumns.Where(radius => row.Optional($"r{radius}") is not null)
        .Select(radius => row.Within($"r{radius}", $"springback factor at a radius of {radius} thicknesses", "", 0.05, () =>
        {
            var finished = 1 / (radius + 0.5);
            return finished / BendingLaw.Of(new Sheet(TextbookMetal.Uniaxial(row["modulus"], row["flowStress"]), 1)).LoadedFor(finished).Curvature;
        }));
}
