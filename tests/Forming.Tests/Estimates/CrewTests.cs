using CsCheck;
using Forming.Estimates;
using Forming.Jobs;
using Forming.Plans;
using Forming.Pulling;
using static Forming.Tests.Workshop;

namespace Forming.Tests.Estimates;

/// <summary>Who pulls, how many clamps, and what that takes.</summary>
public class CrewTests
{
    private static readonly PanelSpec Corner = Panel(Arc(90, 90));
    private static readonly FormPlan Planned = Plan(Corner);

    // 225 N for each person: 100 N one, 225 N one, 226 N two, 1100 N five; past six, 1350 N, a winch, beside which one person lifts.
    [Theory]
    [InlineData(100, 1, false)]
    [InlineData(225, 1, false)]
    [InlineData(226, 2, false)]
    [InlineData(1100, 5, false)]
    [InlineData(1350, 6, false)]
    [InlineData(1351, 1, true)]
    public void A_harder_pull_takes_more_people_and_then_a_winch(double forceN, int people, bool winch)
    {
        var crew = Crew.Of(Pulled(pull => pull with { ForceN = forceN }), Corner, new());
        Assert.Equal((people, winch), (crew.People, crew.UsesWinch));
    }

    // 300 mm wide: one clamp at each end. 5000 N hold two clamps down as well, 10 001 N need three.
    [Theory]
    [InlineData(1000, 2)]
    [InlineData(10_000, 2)]
    [InlineData(10_001, 3)]
    [InlineData(42_000, 9)]
    public void A_harder_pull_takes_more_clamps(double loadN, int clamps) =>
        Assert.Equal(clamps, Crew.Of(Pulled(pull => pull with { ClampLoadN = loadN }), Corner, new()).Clamps);

    // 2500 mm: three people at 1200 mm each, and clamps at both ends with four more between, 500 mm apart.
    [Fact]
    public void A_wide_panel_takes_more_people_and_clamps()
    {
        var plan = Planned with { Panel = Planned.Panel with { Blank = Planned.Panel.Blank with { WidthMm = 2500 } } };
        var crew = Crew.Of(plan, Corner, new());
        Assert.Equal((3, 6), (crew.People, crew.Clamps));
    }

    // 23 kg each: 60 kg need three.
    [Fact]
    public void A_heavy_panel_takes_more_people() => Assert.Equal(
        3, Crew.Of(Planned with { Panel = Planned.Panel with { Blank = Planned.Panel.Blank with { MassKg = 60 } } }, Corner, new()).People);

    [Fact]
    public void The_callers_crew_wins_and_a_rated_winch_is_rigged()
    {
        Assert.Equal(5, Crew.Of(Planned, Corner, new(People: 5)).People);
        Assert.Equal(7, Crew.Of(Planned, Corner, new(Clamps: 7)).Clamps);
        Assert.Equal(2, Crew.Of(Planned, Corner with { PullBy = new(2) }, new()).People);
        var rated = Corner with { PullBy = new(1, 5000) };
        var crew = Crew.Of(Planned, rated, new());
        Assert.Equal((1, true), (crew.People, crew.UsesWinch));
        Assert.Equal(10, PanelTime.Of(Planned, rated, crew, PanelRates.Default, new(1, 1)).Single(element => element.Id == "rigging").Minutes.Likely);
    }

    // Four people: laying up 4 × 3, nine clamps 4 × 9, pulling 4 × 2; all else is the work of one.
    [Fact]
    public void Minutes_of_all_who_pull_count()
    {
        var plan = Pulled(pull => pull with { ForceN = 900, ClampLoadN = 42_000 });
        var work = PanelTime.Of(plan, Corner, Crew.Of(plan, Corner, new()), PanelRates.Default, new(1, 1));
        foreach (var (id, minutes) in new[] { ("laying-up", 12), ("clamping", 36), ("pulling", 8), ("checking", 3) })
            Assert.Equal(minutes, work.Single(element => element.Id == id).Minutes.Likely);
    }

    [Fact]
    public void Clamping_and_pulling_never_take_less_for_a_harder_pull() =>
        Gen.Select(Gen.Double[1, 1350], Gen.Double[1, 1350], Gen.Double[1, 1e5], Gen.Double[1, 1e5]).ForAll((force, otherForce, load, otherLoad) =>
            Assert.True(Minutes(Math.Min(force, otherForce), Math.Min(load, otherLoad)) <= Minutes(Math.Max(force, otherForce), Math.Max(load, otherLoad))), iter: 200);

    private static double Minutes(double forceN, double loadN)
    {
        var plan = Pulled(pull => pull with { ForceN = forceN, ClampLoadN = loadN });
        return PanelTime.Of(plan, Corner, Crew.Of(plan, Corner, new()), PanelRates.Default, new(1, 1)).Sum(element => element.Minutes.Likely);
    }

    private static FormPlan Pulled(Func<Pull, Pull> change) => Planned with { Panel = Planned.Panel with { Pull = change(Planned.Panel.Pull) } };
}
