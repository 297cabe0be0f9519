using Forming.Checks;
using Forming.Outlook;

namespace Forming.Plans.Checks;

/// <summary>Whether it is sure enough what comes off the form.</summary>
internal static class OutlookChecks
{
    /// <summary>A band that reaches further than this past its value calls for a strip: an assumption.</summary>
    private const double MostReach = 0.10;

    // Warns, and first of all where most of the bend springs back: the form may be right and the panel still off.
    public static void AddTo(List<Check> checks, PanelOutlook outlook) =>
        checks.Insert(outlook.IsUnsure ? 0 : checks.Count, Of(outlook));

    private static Check Of(PanelOutlook outlook)
    {
        if (outlook.Reach is not { } reach)
            return new(CheckIds.Outlook, Verdict.Warn, null, MostReach, outlook.Text);
        if (outlook.IsMeasured)
            return new(CheckIds.Outlook, Verdict.Pass, reach, null, outlook.Text);
        return reach <= MostReach
            ? new(CheckIds.Outlook, Verdict.Pass, reach, MostReach, outlook.Text)
            : new(CheckIds.Outlook, Verdict.Warn, reach, MostReach, $"bend a strip first: {outlook.Text}");
    }
}
