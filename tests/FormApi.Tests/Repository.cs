namespace FormApi.Tests;

/// <summary>Files that are committed beside the code.</summary>
public static class Repository
{
    public static string Root { get; } = FindRoot();

    /// <summary>Whether committed files are to be rewritten instead of compared.</summary>
    public static bool Updates { get; } = Environment.GetEnvironmentVariable("UPDATE_CONTRACT") == "1";

    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    /// <summary>Holds bytes against a committed file, or rewrites the file.</summary>
    public static void Compare(string path, byte[] actual)
    {
        if (Updates)
        {
            File.WriteAllBytes(path, actual);
            return;
        }

        Assert.True(File.Exists(path), $"{path} is missing; UPDATE_CONTRACT=1 writes it.");
        Assert.True(
            File.ReadAllBytes(path).AsSpan().SequenceEqual(actual),
            $"{path} differs; look at what UPDATE_CONTRACT=1 changes (twice: examples are built into the contract).");
    }

    private static string FindRoot()
    {
        var here = new DirectoryInfo(AppContext.BaseDirectory);
        while (here is not null && !File.Exists(Path.Combine(here.FullName, "FormApi.sln")))
            here = here.Parent;
        return here?.FullName ?? throw new DirectoryNotFoundException("FormApi.sln is not above the tests.");
    }
}
