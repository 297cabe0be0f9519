using System.Runtime.CompilerServices;

namespace FormApi.Client.Tests;

/// <summary>The sample in the package's README is the one that is compiled here, and it gets an answer.</summary>
public sealed class PackageReadmeTests(Caller caller) : IClassFixture<Caller>
{
    [Fact]
    public void The_readme_shows_the_sample_that_is_compiled()
    {
        var code = File.ReadAllLines(Beside("ReadmeSample.cs"))
            .SkipWhile(line => line != "    {").Skip(1).TakeWhile(line => line != "    }").Select(line => line["        ".Length..]);
        var shown = File.ReadAllLines(Beside("../../src/FormApi.Client/README.md"))
            .SkipWhile(line => line != "```csharp").Skip(1).TakeWhile(line => line != "```").ToArray();
        Assert.NotEmpty(shown);
        Assert.Equal(code, shown);
    }

    [Fact]
    public async Task The_sample_is_answered()
    {
        var said = await ReadmeSample.Plan(caller.Http);
        Assert.Matches("^(Ready|Attention): [1-9][0-9]* folds, turned [0-9.]+° in all$", said);
    }

    private static string Beside(string name, [CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, name);
}
