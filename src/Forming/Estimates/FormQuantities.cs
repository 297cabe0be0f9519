using Forming.Jobs;
using Forming.Layout;
using Forming.Plans;

namespace Forming.Estimates;

/// <summary>Counts that a caller may know better, such as from a form's brake program; null takes an assumption.</summary>
/// <param name="Handlings">Times the blank is put into the brake: loaded, turned, drawn out and put in again.</param>
/// <param name="StopChanges">Changes of the stop after its first setting.</param>
/// <param name="Strips">Test strips folded first.</param>
/// <param name="Checks">Checks against a template.</param>
/// <param name="Ribs">Ribs cut for one form.</param>
/// <param name="Trials">Panels bent before the first good one.</param>
/// <param name="People">People who lay up, clamp and pull a panel.</param>
/// <param name="Clamps">Clamps of each pull.</param>
public sealed record WorkCounts(
    int? Handlings = null,
    int? StopChanges = null,
    int? Strips = null,
    int? Checks = null,
    int? Ribs = null,
    int? Trials = null,
    int? People = null,
    int? Clamps = null)
{
    /// <summary>Trial panels where nobody says how many: common practice, no source.</summary>
    public const int TrialsByDefault = 1;
}

/// <summary>What there is to do on one form.</summary>
public sealed record FormQuantities
{
    private const int StripsByDefault = 3;
    private const int FoldsToACheck = 3;

    /// <summary>Forms that the panel needs: two where its halves are of opposite hands.</summary>
    public required int Forms { get; init; }

    /// <summary>Marks on the flat: one a fold, on a taper one at each end of a fold.</summary>
    public required int Marks { get; init; }

    /// <summary>Edge of the flat blank all round [mm].</summary>
    public required double EdgeMm { get; init; }

    /// <summary>Test strips, for all forms together.</summary>
    public required int Strips { get; init; }

    /// <summary>Changes of the stop after its first setting.</summary>
    public required int StopChanges { get; init; }

    /// <summary>Times the blank is put into the brake.</summary>
    public required int Handlings { get; init; }

    /// <summary>Folds.</summary>
    public required int Folds { get; init; }

    /// <summary>Checks against a template.</summary>
    public required int Checks { get; init; }

    /// <summary>Ribs to cut and set.</summary>
    public required int Ribs { get; init; }

    /// <summary>Counts the work on a planned form.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="form">The form.</param>
    /// <param name="counts">What the caller knows better.</param>
    public static FormQuantities Of(FormPlan plan, PanelSpec panel, FormSpec form, WorkCounts counts)
    {
        var folds = plan.Form.Stations.Count;
        return new()
        {
            Forms = panel.Mirrored && plan.Taper is { NeedsOppositeHand: true } ? 2 : 1,
            Marks = plan.Taper is null ? folds : 2 * folds,
            EdgeMm = BlankEdges.RoundMm(plan.Form.Blank),
            Strips = counts.Strips ?? (form.Stop is null ? StripsByDefault : 0),
            StopChanges = counts.StopChanges ?? ChangesToTheMiddle(folds, plan.Form.StopSettings),
            Handlings = counts.Handlings ?? Math.Min(2, folds),
            Folds = folds,
            Checks = counts.Checks ?? ((folds + FoldsToACheck - 1) / FoldsToACheck),
            Ribs = counts.Ribs ?? (form.Backing == FormBacking.Ribs ? RibsOf(plan) : 0),
        };
    }

    /// <summary>
    /// Changes of the stop when folds are made from the lead-in to the middle, then, turned end for end, from the lead-out.
    /// </summary>
    /// <param name="folds">Number of folds.</param>
    /// <param name="settings">Settings of the stop with the folds they serve.</param>
    internal static int ChangesToTheMiddle(int folds, IReadOnlyList<StopSetting> settings)
    {
        var settingOf = new int[folds];
        for (var i = 0; i < settings.Count; i++)
        {
            foreach (var number in settings[i].Stations)
                settingOf[number - 1] = i;
        }

        var firstHalf = (folds + 1) / 2;
        var order = Enumerable.Range(0, firstHalf).Concat(Enumerable.Range(firstHalf, folds - firstHalf).Reverse()).ToArray();
        return Enumerable.Range(1, folds - 1).Count(i => settingOf[order[i]] != settingOf[order[i - 1]]);
    }

    // A taper has no plan of its ribs: they are as far apart as ribs may be.
    private static int RibsOf(FormPlan plan) =>
        plan.Form.Ribs?.AtMm.Count ?? 1 + (int)Math.Ceiling(plan.Form.Blank.WidthMm / Pulling.Ribs.MostSpacingMm);
}
