using Forming.Jobs;
using Forming.Materials;
using Forming.Outlook;
using Forming.Results;
using Forming.Springback;

namespace Forming.Learning;

/// <summary>
/// What is known of a sheet before anything is measured on it: how far sheets of its grade differ, one standard deviation each, of
/// logarithms.
/// </summary>
/// <param name="Yield">Of the yield stress and the whole flow curve with it.</param>
/// <param name="Thickness">Of the thickness.</param>
/// <param name="Modulus">Of Young's modulus.</param>
/// <param name="Hardening">Of the exponent n; 0 where the sheet is taken as not hardening.</param>
public sealed record SheetPrior(double Yield, double Thickness, double Modulus, double Hardening)
{
    /// <summary>The exponents of a grade's sheets differ by this share: an assumption.</summary>
    private const double HardeningShare = 0.1;

    /// <summary>A micrometer reads a thickness this well [mm]: an assumption, ±0.01 mm at two standard deviations.</summary>
    private const double MicrometerMm = 0.005;

    /// <summary>
    /// Of the effective yield stress. Springback goes with yield over modulus times thickness, so it alone shows nothing but that.
    /// </summary>
    public double Effective => Math.Sqrt((Yield * Yield) + (Thickness * Thickness) + (Modulus * Modulus));

    /// <summary>Share of the yield stress in the variance of the effective one: the rest is thickness and modulus.</summary>
    public double YieldShare => Effective > 0 ? Yield * Yield / (Effective * Effective) : 1;

    /// <summary>A grade's sheets, one of which was picked.</summary>
    /// <param name="sheet">Material and thickness.</param>
    /// <param name="isThicknessMeasured">Whether its thickness was read with a micrometer and is not a nominal one.</param>
    /// <param name="scatter">The caller's scatter, or null for the defaults.</param>
    public static SheetPrior Of(Sheet sheet, bool isThicknessMeasured = false, Scatter? scatter = null)
    {
        var used = scatter ?? ScatterDefaults.Of(sheet, isMeasured: false);
        return new(
            used.Yield,
            (isThicknessMeasured ? Math.Min(MicrometerMm, used.ThicknessMm) : used.ThicknessMm) / sheet.ThicknessMm,
            used.Modulus,
            FlowCurve.Of(sheet.Material).IsKnown ? HardeningShare : 0);
    }

    /// <summary>What the readings of a posterior say of the yield stress itself.</summary>
    /// <param name="effective">The effective yield factor, learnt with this as its prior.</param>
    /// <returns>The factor on the grade's yield stress: wider than the effective one by what thickness and modulus may have done.</returns>
    public Interval YieldOf(YieldPosterior effective)
    {
        var share = YieldShare;
        var deviation = Math.Sqrt((share * share * effective.Deviation * effective.Deviation) + (Yield * Yield * (1 - share)));
        var mean = share * effective.LnFactor;
        return new(
            Math.Exp(mean),
            Math.Exp(mean - (YieldPosterior.TwoSided * deviation)),
            Math.Exp(mean + (YieldPosterior.TwoSided * deviation)));
    }

    /// <summary>The same of the thickness, as a factor on the one that was used.</summary>
    /// <param name="effective">The effective yield factor, learnt with this as its prior.</param>
    public Interval ThicknessOf(YieldPosterior effective)
    {
        var share = Effective > 0 ? Thickness * Thickness / (Effective * Effective) : 0;
        var deviation = Math.Sqrt((share * share * effective.Deviation * effective.Deviation) + (Thickness * Thickness * (1 - share)));
        // A thinner sheet springs back like a stronger one.
        var mean = -share * effective.LnFactor;
        return new(
            Math.Exp(mean),
            Math.Exp(mean - (YieldPosterior.TwoSided * deviation)),
            Math.Exp(mean + (YieldPosterior.TwoSided * deviation)));
    }

    /// <summary>What the prior rests on.</summary>
    /// <param name="quantity">Name of the value in the answer.</param>
    public Basis BasisOf(string quantity) => new(
        quantity,
        FormattableString.Invariant($"lognormal about the grade: yield {Yield:P1}, thickness {Thickness:P1}, modulus {Modulus:P1}, exponent n {Hardening:P0}, one standard deviation each; together {Effective:P1} of the effective yield"),
        "yield: " + SourceCatalog.Find("sekulski").Citation + "; the others: as panel.scatter, or an assumption",
        Status.PublishedAsQuoted);
}
