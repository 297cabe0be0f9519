using Forming.Plans;

namespace Forming.Tests;

/// <summary>The calculation knows nothing of HTTP, JSON or logs.</summary>
public class ArchitectureTests
{
    private static readonly string[] References =
        [.. typeof(FormPlan).Assembly.GetReferencedAssemblies().Select(reference => reference.Name!)];

    [Fact]
    public void The_library_stands_on_the_framework_and_MathNet_alone() =>
        Assert.All(References, name => Assert.True(name.StartsWith("System.", StringComparison.Ordinal) || name == "MathNet.Numerics", name));

    [Theory]
    [InlineData("System.Text.Json")]
    [InlineData("System.Net.Http")]
    [InlineData("System.Console")]
    public void The_library_reads_no_JSON_and_talks_to_nobody(string name) => Assert.DoesNotContain(name, References);
}
