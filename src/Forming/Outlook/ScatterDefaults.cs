using Forming.Jobs;
using Forming.Materials;
using Forming.Results;
using Forming.Tolerances;

namespace Forming.Outlook;

/// <summary>How much sheets and folds differ where the caller does not say.</summary>
public static class ScatterDefaults
{
    /// <summary>Of the yield stress, as a share: source key <c>sekulski</c>, 8.19 % for ship plate.</summary>
    public const double Yield = 0.08;

    /// <summary>
    /// Of a yield stress or a factor measured on the coil, as a share: an assumption, about what one strip read to 1 % leaves.
    /// </summary>
    public const double MeasuredYield = 0.02;

    /// <summary>Of Young's modulus, as a share: an assumption.</summary>
    public const double Modulus = 0.02;

    /// <summary>Of the thickness where no table was read, as a share of it: an assumption.</summary>
    private const double ThicknessShare = 0.03;

    /// <summary>Half of a tolerance is one standard deviation: 95 % of sheets are within it (assumption).</summary>
    private const double ShareOfTolerance = 0.5;

    /// <summary>The scatter of a panel's sheet and of hand-set folds.</summary>
    /// <param name="sheet">The panel's sheet.</param>
    /// <param name="isMeasured">Whether its yield stress or its springback was measured.</param>
    public static Scatter Of(Sheet sheet, bool isMeasured) => new(
        isMeasured ? MeasuredYield : Yield,
        ThicknessTolerance.Of(sheet) is { } tolerance ? ShareOfTolerance * tolerance.Mm : ThicknessShare * sheet.ThicknessMm,
        Modulus,
        FoldAccuracy.Default.Scatter,
        FoldAccuracy.Default.MarkScatterMm);

    /// <summary>The scatter of a panel: the caller's, or the defaults.</summary>
    /// <param name="panel">The panel.</param>
    public static Scatter Of(PanelSpec panel) => panel.Scatter ?? Of(panel.Sheet, panel.HasMeasuredSpringback);

    /// <summary>What the scatter of a panel rests on; a value that is the default counts as the default.</summary>
    /// <param name="panel">The panel.</param>
    public static IEnumerable<Basis> BasisOf(PanelSpec panel)
    {
        var (used, assumed) = (Of(panel), Of(panel.Sheet, panel.HasMeasuredSpringback));
        yield return Line(
            "yield",
            used.Yield == assumed.Yield,
            panel.HasMeasuredSpringback
                ? Assumed("2 %, about what one strip read to 1 % leaves")
                : ("8 %; the whole flow curve scales with the yield", CitationOf("sekulski"), Status.PublishedAsQuoted));
        yield return Line(
            "thickness",
            Near(used.ThicknessMm, assumed.ThicknessMm),
            ThicknessTolerance.Of(panel.Sheet) is { } tolerance
                ? ("half of the standard's tolerance", CitationOf(tolerance.Source), Status.PublishedAsQuoted)
                : Assumed("3 % of the thickness"));
        yield return Line("modulus", used.Modulus == assumed.Modulus, Assumed("2 %"));
        yield return Line(
            "foldAngle", Near(used.FoldAngle.Radians, assumed.FoldAngle.Radians), Assumed("±1° at two standard deviations, hand-set brakes"));
        yield return Line("mark", Near(used.MarkMm, assumed.MarkMm), Assumed("±0.8 mm at two standard deviations, hand-set brakes"));

        static Basis Line(string field, bool isDefault, (string Method, string Source, Status Status) own) => isDefault
            ? new("panel.scatter." + field, own.Method, own.Source, own.Status)
            : new("panel.scatter." + field, "as given", "caller", Status.Caller);

        static (string, string, Status) Assumed(string method) => (method, CitationOf("assumption"), Status.Assumption);

        // A default that went through the caller's units and back is still the default.
        static bool Near(double used, double assumed) => Math.Abs(used - assumed) <= 1e-9 * assumed;

        static string CitationOf(string key) => SourceCatalog.Find(key).Citation;
    }
}
