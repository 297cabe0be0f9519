using System.Runtime.CompilerServices;

namespace Forming.Drawing.Tests;

/// <summary>Pictures a person has looked at, kept beside the tests; <c>UPDATE_GOLDEN=1</c> rewrites them.</summary>
internal static class Golden
{
    public static void Matches(string name, string actual)
    {
        var path = Path.Combine(Folder(), name);
        if (Environment.GetEnvironmentVariable("UPDATE_GOLDEN") == "1")
        {
            Directory.CreateDirectory(Folder());
            File.WriteAllText(path, actual);
        }

        Assert.Equal(File.ReadAllText(path), actual);
    }

    private static string Folder([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "Golden");
}
