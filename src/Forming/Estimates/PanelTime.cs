using Forming.Jobs;
using Forming.Plans;

namespace Forming.Estimates;

/// <summary>Time of one panel, element by element, once the form stands.</summary>
public static class PanelTime
{
    /// <summary>The elements in the order of the work, before any learning.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="rates">What it takes.</param>
    /// <param name="spread">How far the times may lie off.</param>
    public static IReadOnlyList<WorkElement> Of(FormPlan plan, PanelSpec panel, PanelRates rates, Spread spread)
    {
        var blank = plan.Panel.Blank;
        var metres = BlankEdges.RoundMm(blank) / 1000;
        var trimmed = panel.TrimMm > 0 ? BlankEdges.EndsMm(blank) / 1000 : 0;
        var pulls = panel.Mirrored ? 2 : 1;
        return
        [
            Element("cutting", "cut the blank, all round", metres, WorkUnit.Metre, rates.Cutting),
            Element("marking", "mark where the form comes to lie", plan.Panel.Marks.Count, WorkUnit.Mark, rates.Marking),
            Element("clamping", "lay panel and form up, clamp, unclamp", pulls, WorkUnit.Pull, rates.Clamping),
            Element("pulling", "pull round the form and ease off", pulls, WorkUnit.Pull, rates.Pulling),
            Element("trimming", "trim both ends", trimmed, WorkUnit.Metre, rates.Trimming),
            Element("checking", "check by template", pulls, WorkUnit.Check, rates.Checking),
            Element("finishing", "deburr all round and clean", metres, WorkUnit.Metre, rates.Finishing),
        ];

        WorkElement Element(string id, string text, double quantity, WorkUnit unit, ElementRate rate) =>
            new(id, text, quantity, unit, spread.Around(rate.MinutesFor(quantity)));
    }
}
