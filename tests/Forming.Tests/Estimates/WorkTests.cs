using Forming.Estimates;
using Forming.Layout;
using static Forming.Tests.Workshop;

namespace Forming.Tests.Estimates;

/// <summary>Elements of work, by hand.</summary>
public class WorkTests
{
    private static readonly Spread Sure = new(1, 1);

    private static readonly FormQuantities Ten = new()
    {
        Forms = 1,
        Marks = 10,
        EdgeMm = 2400,
        Strips = 3,
        StopChanges = 2,
        Handlings = 2,
        Folds = 10,
        Checks = 4,
        Ribs = 0,
    };

    // Layout 10 + 10 × 1.5 = 25; cutting 5 + 2.4 × 2 = 9.8; strips 3 × 6 = 18; set-up 20 + 2 × 3 = 26; handling 2 × 2 = 4;
    // folding 10 × 1 = 10; checking 5 + 4 × 2 = 13; finishing 5 + 2.4 × 2 = 9.8. Sum 115.6.
    [Fact]
    public void A_form_of_ten_folds_is_built_in_these_minutes()
    {
        double[] minutes = [25, 9.8, 18, 26, 4, 10, 13, 9.8, 0];
        AssertMinutes(minutes, BuildTime.Of(Ten, FormRates.Default, Sure));
        Within(1e-12, 115.6, minutes.Sum());
    }

    // Twice everything but strips and set-up: 18, and 20 + 5 × 3, two changes on each form and one back to the first stop between them.
    [Fact]
    public void A_second_form_shares_strips_and_set_up() =>
        AssertMinutes([50, 19.6, 18, 35, 8, 20, 26, 19.6, 0], BuildTime.Of(Ten with { Forms = 2 }, FormRates.Default, Sure));

    [Fact]
    public void What_is_not_done_takes_no_time_at_all()
    {
        var work = BuildTime.Of(Ten with { Strips = 0, Checks = 0 }, FormRates.Default with { TestStrips = new(7, 6) }, Sure);
        Assert.Equal(0, work.Single(element => element.Id == "test-strips").Minutes.Likely);
        Assert.Equal(0, work.Single(element => element.Id == "checking").Minutes.Likely);
    }

    [Fact]
    public void A_rate_moves_its_own_element_only()
    {
        var (before, after) = (BuildTime.Of(Ten, FormRates.Default, Sure), BuildTime.Of(Ten, FormRates.Default with { Folding = new(1, 2.5) }, Sure));
        Assert.Equal(26, after.Single(element => element.Id == "folding").Minutes.Likely);
        Assert.Equal(before.Where(element => element.Id != "folding"), after.Where(element => element.Id != "folding"));
    }

    // Six ribs: 15 + 6 × 10.
    [Fact]
    public void Ribs_are_cut_one_by_one() =>
        Assert.Equal(75, BuildTime.Of(Ten with { Ribs = 6 }, FormRates.Default, Sure).Single(element => element.Id == "ribs").Minutes.Likely);

    // Cutting 4 + e × 1.5, four marks 1 + 2, laying up 3, two clamps 2, pulling 2, no trim, a check 3, finishing 2 + e × 1, e the edge
    // in metres; one person.
    [Fact]
    public void A_panel_takes_these_minutes()
    {
        var panel = Panel(Arc(90, 90));
        var plan = Plan(panel);
        var metres = 2 * (plan.Panel.Blank.LengthMm + 300) / 1000;
        Assert.Equal(4, plan.Panel.Marks.Count);
        AssertMinutes([4 + (1.5 * metres), 3, 3, 2, 0, 2, 0, 3, 2 + metres], PanelTime.Of(plan, panel, Crew.Of(plan, panel, new()), PanelRates.Default, Sure));
    }

    // Both ends of 300 mm: 0.6 m × 3.
    [Fact]
    public void Trim_is_cut_off_at_both_ends()
    {
        var panel = Panel(Arc(90, 90)) with { TrimMm = 10 };
        var plan = Plan(panel);
        var trimming = PanelTime.Of(plan, panel, Crew.Of(plan, panel, new()), PanelRates.Default, Sure).Single(element => element.Id == "trimming");
        Within(1e-9, 0.6, trimming.Quantity);
        Within(1e-9, 1.8, trimming.Minutes.Likely);
    }

    // Half folds at both ends, stops H and F: 1H 2F 3F 4F, turned, 7H 6F 5F: F, H, F are three changes.
    // Every fold at a stop of its own: six changes. One stop: none. A single fold: none.
    [Fact]
    public void Stops_change_as_folds_go_to_the_middle()
    {
        Assert.Equal(3, FormQuantities.ChangesToTheMiddle(7, [Setting(1, 7), Setting(2, 3, 4, 5, 6)]));
        Assert.Equal(6, FormQuantities.ChangesToTheMiddle(7, [.. Enumerable.Range(1, 7).Select(number => Setting(number))]));
        Assert.Equal(0, FormQuantities.ChangesToTheMiddle(7, [Setting(1, 2, 3, 4, 5, 6, 7)]));
        Assert.Equal(0, FormQuantities.ChangesToTheMiddle(1, [Setting(1)]));

        static StopSetting Setting(params int[] stations) => new(Angle.Zero, null, null, stations);
    }

    private static void AssertMinutes(double[] expected, IReadOnlyList<WorkElement> work)
    {
        Assert.Equal(expected.Length, work.Count);
        for (var i = 0; i < expected.Length; i++)
            Within(1e-9, expected[i], work[i].Minutes.Likely);
    }
}
