using Forming.Checks;
using Forming.Layout;
using Forming.Results;

namespace Forming.Plans.Notes;

/// <summary>What a job is, in one sentence.</summary>
internal static class Headline
{
    // Below about this radius over thickness a bend is made in one stroke: common practice, no source.
    private const double ThinSheet = 5;

    /// <summary>The sentence.</summary>
    /// <param name="checks">The checks.</param>
    /// <param name="folds">Number of folds.</param>
    /// <param name="settings">The stop settings.</param>
    /// <param name="tightestMm">Tightest radius of the finished curve [mm].</param>
    /// <param name="thicknessMm">Thickness of the panel's sheet [mm].</param>
    public static FormattableString Of(
        IReadOnlyList<Check> checks, int folds, IReadOnlyList<StopSetting> settings, double tightestMm, double thicknessMm)
    {
        FormattableString form = $"{Count(folds, "fold")} in {Count(settings.Count, "stop setting")}";
        var failed = checks.FirstOrDefault(check => check.Verdict == Verdict.Fail);
        if (failed is not null && tightestMm < ThinSheet * thicknessMm)
            return $"Bend it directly in the brake: {Figure.Length(tightestMm)} is sharper than this sheet bends over a form.";
        if (failed is not null)
            return $"Cannot be made: {failed.Text}.";
        if (checks.FirstOrDefault(check => check.Verdict == Verdict.Warn) is { } warned)
            return $"Look first: {warned.Text}. {form}.";
        return $"Ready: {form}.";
    }

    private static string Count(int count, string what) => FormattableString.Invariant($"{count} {what}{(count == 1 ? "" : "s")}");
}
