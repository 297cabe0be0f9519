using Forming.Jobs;
using Forming.Plans;
using Forming.Springback;
using Xunit.Abstractions;

namespace Forming.Tests.Wrapping;

/// <summary>A small change of a job changes a solved plan by little, except where a fold comes or goes.</summary>
public class SolvedScanTests(ITestOutputHelper output)
{
    public static TheoryData<string, FormBacking> Scans => new()
    {
        { "radius", FormBacking.Ribs },
        { "radius", FormBacking.None },
        { "thickness", FormBacking.Ribs },
        { "thickness", FormBacking.None },
        { "yield", FormBacking.Ribs },
        { "yield", FormBacking.None },
        { "lead-out", FormBacking.Ribs },
        { "lead-out", FormBacking.None },
    };

    [Theory]
    [InlineData("radius", FormBacking.None)]
    [InlineData("thickness", FormBacking.Ribs)]
    [InlineData("lead-out", FormBacking.Ribs)]
    public void Next_to_a_job_lies_a_plan_that_is_nearly_the_same(string what, FormBacking backing) =>
        Follow(what, backing, Enumerable.Range(40, 12).Select(i => i / 200.0));

    [Theory]
    [Trait("Category", "Slow")]
    [MemberData(nameof(Scans))]
    public void All_along_a_scan_neighbours_have_nearly_the_same_plan(string what, FormBacking backing) =>
        Follow(what, backing, Enumerable.Range(0, 201).Select(i => i / 200.0));

    private void Follow(string what, FormBacking backing, IEnumerable<double> shares)
    {
        FormPlan? before = null;
        double sweep = 0, lever = 0, force = 0;
        var counts = 0;
        foreach (var share in shares)
        {
            var plan = PlanAt(what, share, backing);
            Workshop.Within(0.05, 90, plan.Panel.Prediction!.Shape!.Sweep.Degrees);
            if (before is not null && before.Form.Stations.Count == plan.Form.Stations.Count)
            {
                sweep = Math.Max(sweep, Math.Abs((plan.Form.Sweep - before.Form.Sweep).Degrees));
                lever = Math.Max(lever, Math.Abs((plan.Panel.Pull.LeverMm / before.Panel.Pull.LeverMm) - 1));
                force = Math.Max(force, Math.Abs((plan.Panel.Prediction.Pull!.ForceN / before.Panel.Prediction!.Pull!.ForceN) - 1));
            }
            else
            {
                counts++;
            }

            before = plan;
        }

        output.WriteLine($"{what}, {backing}: form sweep {sweep:0.00}°, lever {lever:P1}, force {force:P1} from one to the next; {counts - 1} changes of count");
        Assert.True(sweep < 0.6 && lever < 0.02 && force < 0.03, $"form sweep {sweep:0.00}°, lever {lever:P1}, force {force:P1}");
        Assert.True(counts <= 5, $"{counts - 1} changes of count");
    }

    private static FormPlan PlanAt(string what, double share, FormBacking backing)
    {
        var steel = Workshop.Of("steel-cr-cs");
        var panel = Workshop.Panel(Workshop.Arc(what == "radius" ? 80 * Math.Pow(2.5, share) : 120, 90)) with
        {
            Sheet = new(
                what == "yield" ? steel with { YieldMpa = 150 * (1 + share) } : steel,
                what == "thickness" ? 0.8 + share : 1),
            LeadOutMm = what == "lead-out" ? 60 + (140 * share) : 150,
            Springback = new SolvedOnWrap(),
        };
        return Workshop.Plan(panel, Workshop.Form() with { Backing = backing });
    }
}
