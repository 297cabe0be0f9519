using Forming.Jobs;
using Forming.Plans;

namespace Forming.Estimates;

/// <summary>Time to build the form, element by element.</summary>
public static class BuildTime
{
    /// <summary>The elements in the order of the work.</summary>
    /// <param name="quantities">What there is to do on one form.</param>
    /// <param name="rates">What it takes.</param>
    /// <param name="spread">How far the times may lie off.</param>
    /// <returns>Times of all forms together; the brake is set up and strips are folded once for all.</returns>
    public static IReadOnlyList<WorkElement> Of(FormQuantities quantities, FormRates rates, Spread spread)
    {
        var metres = quantities.EdgeMm / 1000;
        var forms = quantities.Forms;
        // Every form after the first starts again at the first stop.
        var stops = (forms * (quantities.StopChanges + 1)) - 1;
        return
        [
            EachForm("layout", "set out the flat blank and mark the folds", quantities.Marks, WorkUnit.Mark, rates.Layout),
            EachForm("cutting", "cut the blank, all round", metres, WorkUnit.Metre, rates.Cutting),
            new("test-strips", "fold test strips of the same sheet and measure them", quantities.Strips, WorkUnit.Strip, spread.Around(rates.TestStrips.MinutesFor(quantities.Strips))),
            new("set-up", "set up the brake and its first stop, then change the stop", stops, WorkUnit.StopChange, spread.Around(rates.SetUp.FixedMinutes + (stops * rates.SetUp.EachMinutes))),
            EachForm("handling", "put the blank into the brake", quantities.Handlings, WorkUnit.Handling, rates.Handling),
            EachForm("folding", "fold", quantities.Folds, WorkUnit.Fold, rates.Folding),
            EachForm("checking", "check by template", quantities.Checks, WorkUnit.Check, rates.Checking),
            EachForm("finishing", "deburr all round and clean", metres, WorkUnit.Metre, rates.Finishing),
            EachForm("ribs", "cut ribs to the inside of the form and set them", quantities.Ribs, WorkUnit.Rib, rates.Ribs),
        ];

        WorkElement EachForm(string id, string text, double quantity, WorkUnit unit, ElementRate rate) =>
            new(id, text, forms * quantity, unit, spread.Around(forms * rate.MinutesFor(quantity)));
    }
}

/// <summary>Time of panels, element by element, once the form is built.</summary>
public static class PanelTime
{
    /// <summary>Getting the bench ready, once for a batch.</summary>
    /// <param name="forms">Forms that the panel needs.</param>
    /// <param name="rate">What it takes.</param>
    /// <param name="spread">How far the time may lie off.</param>
    public static WorkElement SetUp(int forms, ElementRate rate, Spread spread) =>
        new("set-up", "get the bench ready and fix the form to it", forms, WorkUnit.Form, spread.Around(rate.MinutesFor(forms)));

    /// <summary>The elements in the order of the work, before any learning.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="crew">Who lays up, clamps and pulls; all else is the work of one person.</param>
    /// <param name="rates">What it takes.</param>
    /// <param name="spread">How far the times may lie off.</param>
    public static IReadOnlyList<WorkElement> Of(FormPlan plan, PanelSpec panel, Crew crew, PanelRates rates, Spread spread)
    {
        var metres = BlankEdges.RoundMm(plan.Panel.Blank) / 1000;
        var pulls = panel.Mirrored ? 2 : 1;
        return
        [
            Element("cutting", "cut the blank, all round", metres, WorkUnit.Metre, rates.Cutting),
            Element("marking", "mark where the form will lie", plan.Panel.Marks.Count, WorkUnit.Mark, rates.Marking),
            Element("laying-up", "lay the panel up to its marks, take it off", pulls, WorkUnit.Pull, rates.LayingUp, crew.People),
            Element("clamping", "clamp, unclamp", pulls * crew.Clamps, WorkUnit.Clamp, rates.Clamping, crew.People),
            Element("rigging", "rig the winch or press, take it off", crew.UsesWinch ? pulls : 0, WorkUnit.Pull, rates.Rigging, crew.People),
            Element("pulling", "pull round the form and ease off", pulls, WorkUnit.Pull, rates.Pulling, crew.People),
            Element("trimming", "trim both ends", TrimmedMetres(plan, panel), WorkUnit.Metre, rates.Trimming),
            Element("checking", "check by template", pulls, WorkUnit.Check, rates.Checking),
            Element("finishing", "deburr all round and clean", metres, WorkUnit.Metre, rates.Finishing),
        ];

        WorkElement Element(string id, string text, double quantity, WorkUnit unit, ElementRate rate, int people = 1) =>
            new(id, text, quantity, unit, spread.Around(people * rate.MinutesFor(quantity))) { People = people };
    }

    /// <summary>Elements that a panel takes however it is bent: cut, trimmed, deburred.</summary>
    /// <param name="work">Elements of a panel.</param>
    /// <returns>Their time [min].</returns>
    public static Band OfAnyMethod(IEnumerable<WorkElement> work) =>
        Band.Sum(work.Where(element => element.Unit == WorkUnit.Metre).Select(element => element.Minutes));

    private static double TrimmedMetres(FormPlan plan, PanelSpec panel) =>
        panel.TrimMm > 0 ? BlankEdges.EndsMm(plan.Panel.Blank) / 1000 : 0;
}
