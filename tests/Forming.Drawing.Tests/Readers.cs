using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Text.Json;

namespace Forming.Drawing.Tests;

/// <summary>General-purpose readers from npm, which know nothing of this project: <c>npm ci</c> in <c>readers/</c> installs them.</summary>
internal static class Readers
{
    /// <summary>Why a test that needs the readers is skipped, or null where they are installed; with CI set they must be.</summary>
    public static string? WhySkipped =>
        Directory.Exists(Path.Combine(Folder(), "node_modules")) || Environment.GetEnvironmentVariable("CI") is not null
            ? null
            : $"Run npm ci in {Folder()} first.";

    /// <summary>Lets a reader read a file.</summary>
    /// <returns>What it read.</returns>
    public static JsonDocument Run(string script, byte[] file)
    {
        using var node = Process.Start(new ProcessStartInfo("node", [Path.Combine(Folder(), script)])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        })!;
        node.StandardInput.BaseStream.Write(file);
        node.StandardInput.Close();
        var report = node.StandardOutput.ReadToEnd();
        node.WaitForExit();
        Assert.Equal(0, node.ExitCode);
        return JsonDocument.Parse(report);
    }

    private static string Folder([CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "readers");
}

/// <summary>A fact that an independent reader tells; skipped where the readers are not installed.</summary>
internal sealed class ReaderFactAttribute : FactAttribute
{
    public ReaderFactAttribute() => Skip = Readers.WhySkipped;
}

/// <summary>A theory that an independent reader tells; skipped where the readers are not installed.</summary>
internal sealed class ReaderTheoryAttribute : TheoryAttribute
{
    public ReaderTheoryAttribute() => Skip = Readers.WhySkipped;
}
