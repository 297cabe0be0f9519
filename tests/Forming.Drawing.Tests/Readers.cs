using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Text.Json;

namespace Forming.Drawing.Tests;

/// <summary>General-purpose readers from npm, which know nothing of this project: <c>npm ci</c> in <c>readers/</c> installs them.</summary>
internal static class Readers
{
    /// <summary>Lets a reader read a file.</summary>
    /// <returns>What it read, or null where the readers are not installed; with CI set they must be.</returns>
    public static JsonDocument? Run(string script, byte[] file, [CallerFilePath] string here = "")
    {
        var folder = Path.Combine(Path.GetDirectoryName(here)!, "readers");
        if (!Directory.Exists(Path.Combine(folder, "node_modules")))
        {
            Assert.True(Environment.GetEnvironmentVariable("CI") is null, $"Run npm ci in {folder} first.");
            return null;
        }

        using var node = Process.Start(new ProcessStartInfo("node", [Path.Combine(folder, script)])
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
}
