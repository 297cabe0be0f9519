using CsCheck;
using Forming.Checks;
using Forming.Tests.Plans;
using Forming.Tests.Programs;

namespace Forming.Tests.Checks;

/// <summary>What checks are called, and in what they are measured.</summary>
public sealed class CheckIdsTests
{
    private static readonly CheckId[] All = [.. typeof(CheckIds).GetProperties().Select(property => (CheckId)property.GetValue(null)!)];

    [Fact]
    public void A_check_has_one_name_and_one_quantity()
    {
        Assert.Equal(All.Length, All.DistinctBy(id => id.Name).Count());
        Assert.All(All, id => Assert.Matches("^[a-z]+(-[a-z]+)*$", id.Name));
    }

    [Fact]
    public void A_plan_names_only_checks_that_are_listed() => RandomJobs.Plain.Sample(
        job => Assert.All(job.Plan().Checks, IsListed), iter: 60, seed: "0N0XIzNsQ0O2");

    [Fact]
    [Trait("Category", "Long")]
    public void A_program_names_only_checks_that_are_listed() => Parts.Uneven(4, 8, 20, 150).Sample(
        part =>
        {
            foreach (var brake in new Forming.Programs.Brakes.ProgramBrake[] { Parts.Leaf, Parts.Press })
            {
                var program = Forming.Programs.BrakeProgram.Compute(part, brake, mostWork: 0);
                Assert.All(program.Checks, IsListed);
                Assert.All(program.Steps.SelectMany(step => step.Checks), IsListed);
                Assert.All(program.OrdersTried.Select(order => order.FailedCheck).OfType<string>(), name => Assert.Contains(All, id => id.Name == name));
            }
        },
        iter: 20,
        seed: "0N0XIzNsQ0O2");

    private static void IsListed(Forming.Checks.Check check) => Assert.Contains(check.Kind, All);
}
