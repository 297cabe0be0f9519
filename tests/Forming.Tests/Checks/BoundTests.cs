using CsCheck;
using Forming.Checks;
using Forming.Programs;
using Forming.Programs.Brakes;
using Forming.Results;
using Forming.Tests.Plans;
using Forming.Tests.Programs;

namespace Forming.Tests.Checks;

/// <summary>To which side of its limit a figure should lie, and that the verdict says the same.</summary>
public sealed class BoundTests
{
    /// <summary>Figures that agree this closely are equal: planners stop at a limit itself.</summary>
    private const double Equal = 1e-9;

    private static readonly HashSet<string> Least =
    [
        "back-run", "clamp-access", "clamp-land", "clearance-lower", "clearance-self", "clearance-upper", "confidence", "die-opening", "entry", "fold-radius",
        "form-width", "front-run", "gauge-face", "marks-apart", "minimum-facet", "model-range", "panel-clamp", "panel-radius", "push", "removal",
        "second-half-clearance", "stop-resolution", "straight-part", "strength-coefficient",
    ];

    /// <summary>What is held from both sides: the check says which of the two limits it names.</summary>
    private static readonly HashSet<string> FromBothSides = ["fold-radius", "gauge-range", "lever"];

    [Fact]
    public void Room_reach_and_strength_have_a_least_figure_and_loads_and_errors_a_most()
    {
        CheckId[] all = [.. typeof(CheckIds).GetProperties().Select(property => (CheckId)property.GetValue(null)!)];
        Assert.Equal(Least.Order(), all.Where(id => id.Bound == Bound.Least).Select(id => id.Name).Order());
    }

    [Fact]
    public void The_verdict_on_a_plan_is_the_figure_against_its_limit() => RandomJobs.Any.ForAll(
        job =>
        {
            try
            {
                Assert.All(job.Plan().Checks, Agrees);
            }
            catch (NoSolutionException)
            {
            }
        },
        iter: 150);

    [Fact]
    public void The_verdict_on_a_simulated_pull_is_the_figure_against_its_limit() => RandomJobs.Plain.ForAll(
        job => Assert.All((job with { Panel = job.Panel with { Predict = true } }).Plan().Checks, Agrees), iter: 20);

    [Fact]
    public void The_verdict_on_a_program_is_the_figure_against_its_limit() => Parts.Uneven(4, 8, 20, 150).ForAll(
        part =>
        {
            foreach (var brake in new ProgramBrake[] { Parts.Leaf, Parts.Press, Parts.Leaf with { GaugeMinMm = 30, GaugeMaxMm = 60 } })
            {
                var program = BrakeProgram.Compute(part, brake, mostWork: 0);
                Assert.All(program.Checks, Agrees);
                Assert.All(program.Steps.SelectMany(step => step.Checks), Agrees);
            }
        },
        iter: 20);

    [Fact]
    public void A_gauge_that_cannot_come_so_near_has_a_least_distance_and_one_that_ends_too_early_a_most()
    {
        var part = Parts.Even(90, 90, 8);
        Assert.All(GaugedBy(Parts.Leaf with { GaugeMinMm = 400, GaugeMaxMm = 500 }), check => Assert.Equal((Bound.Least, 400.0), (check.Bound, check.Limit)));
        Assert.All(GaugedBy(Parts.Leaf with { GaugeMinMm = 1, GaugeMaxMm = 2 }), check => Assert.Equal((Bound.Most, 2.0), (check.Bound, check.Limit)));

        Forming.Checks.Check[] GaugedBy(ProgramBrake brake)
        {
            Forming.Checks.Check[] checks =
                [.. BrakeProgram.Compute(part, brake).Steps.SelectMany(step => step.Checks).Where(check => check.Id == "gauge-range" && check.Verdict == Verdict.Warn)];
            Assert.NotEmpty(checks);
            return checks;
        }
    }

    [Fact]
    public void A_facet_shows_by_its_height_or_its_slope_whichever_is_nearer_to_its_limit()
    {
        var panel = Workshop.Panel(Workshop.Arc(90, 90)) with { Predict = true, Finish = new("own", 0.001, Angle.FromDegrees(30)) };
        var plan = Workshop.Plan(panel, Workshop.Form(new() { Folds = 8 }));
        var check = Workshop.CheckOf(plan, "facets-show");
        Assert.Equal((Verdict.Warn, 1), (check.Verdict, check.Limit!.Value));
        Workshop.Near(plan.Panel.Prediction!.Ripple.HeightMm!.Value / 0.001, check.Value!.Value, 1e-12);
    }

    private static void Agrees(Forming.Checks.Check check)
    {
        Assert.True(check.Bound == check.Kind.Bound || FromBothSides.Contains(check.Id), check.Id);
        Assert.Null(CheckLimits.Contradiction(check.Id, Word(check.Verdict), check.Value, check.Limit, Word(check.Bound), Equal));

        static string Word<T>(T word) where T : struct, Enum => word.ToString().ToLowerInvariant();
    }
}
