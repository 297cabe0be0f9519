namespace FormApi.Tests;

/// <summary>What is shipped of others is named, with its licence beside it.</summary>
public sealed class LicencesTests
{
    private static string Shipped { get; } = Path.GetDirectoryName(typeof(Program).Assembly.Location)!;

    [Theory]
    [InlineData("LICENSE", "MIT License")]
    [InlineData("THIRD-PARTY-NOTICES.txt", "Apache License")]
    [InlineData("LiberationSans-LICENSE.txt", "SIL Open Font License")]
    public void Licences_are_shipped(string file, string words) =>
        Assert.Contains(words, File.ReadAllText(Path.Combine(Shipped, file)), StringComparison.OrdinalIgnoreCase);

    [Fact]
    public void Every_package_that_the_service_loads_is_named()
    {
        var notices = File.ReadAllText(Path.Combine(Shipped, "THIRD-PARTY-NOTICES.txt"));
        var assets = File.ReadAllText(Path.Combine(Shipped, "FormApi.deps.json"));
        using var dependencies = System.Text.Json.JsonDocument.Parse(assets);
        var target = dependencies.RootElement.GetProperty("targets").EnumerateObject().First().Value;
        var packages = target.EnumerateObject()
            .Where(library => library.Value.TryGetProperty("runtime", out _) || library.Value.TryGetProperty("runtimeTargets", out _))
            .Select(library => library.Name.Split('/')[0])
            .Where(name => !name.StartsWith("FormApi", StringComparison.Ordinal) && !name.StartsWith("Forming", StringComparison.Ordinal))
            .ToArray();
        Assert.NotEmpty(packages);
        Assert.All(packages, name => Assert.Matches($@"(?m)^(- |  )(.*, )?{System.Text.RegularExpressions.Regex.Escape(name)}(,| |\r?$)", notices));
    }
}
