using FormApi.Http.Problems;
using Forming.Plans;

namespace FormApi.Tests;

/// <summary>What may know what.</summary>
public sealed class ArchitectureTests
{
    private static readonly string[] HostWords = ["System.Text.Json", "System.Net", "Microsoft.", "Serilog", "FluentValidation"];

    [Fact]
    public void The_calculation_knows_nothing_of_the_host()
    {
        foreach (var reference in typeof(FormPlan).Assembly.GetReferencedAssemblies())
        {
            Assert.True(reference.Name!.StartsWith("System.", StringComparison.Ordinal) || reference.Name == "MathNet.Numerics", reference.Name);
            Assert.DoesNotContain(HostWords, word => reference.Name.StartsWith(word, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void The_host_calculates_nothing()
    {
        var words = new[] { "Math.Sin", "Math.Cos", "Math.Tan", "Math.Atan", "Math.Sqrt", "Math.PI", "Math.Exp", "Math.Log" };
        foreach (var file in Directory.GetFiles(Repository.PathOf("src", "FormApi"), "*.cs", SearchOption.AllDirectories))
        {
            if (file.Contains(Path.DirectorySeparatorChar + "obj" + Path.DirectorySeparatorChar, StringComparison.Ordinal))
                continue;
            var text = File.ReadAllText(file);
            Assert.DoesNotContain(words, word => text.Contains(word, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Every_capability_has_requests_to_try()
    {
        foreach (var folder in Directory.GetDirectories(Repository.PathOf("src", "FormApi", "Features")))
        {
            var name = System.Text.Json.JsonNamingPolicy.KebabCaseLower.ConvertName(Path.GetFileName(folder));
            Assert.True(File.Exists(Repository.PathOf("openapi", "requests", name + ".http")), name);
        }
    }

    [Fact]
    public void Every_problem_has_its_own_code_and_an_explanation()
    {
        Assert.Equal(ProblemKinds.All.Count, ProblemKinds.All.Select(kind => kind.Code).Distinct().Count());
        Assert.All(ProblemKinds.All, kind => Assert.NotEmpty(kind.Text));
    }
}
