using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Text.Json;

namespace Forming.Drawing.Tests;

/// <summary>
/// General-purpose readers, which know nothing of this project: from npm, <c>npm ci</c> in <c>readers/</c> installs them; and ezdxf, which
/// Debian has as <c>python3-ezdxf</c>.
/// </summary>
internal static class Readers
{
    /// <summary>Every reader of DXF files; all report alike.</summary>
    public static IReadOnlyList<string> OfDxf { get; } = ["read-dxf.cjs", "read-dxf.py"];

    // Debian's packages are for Debian's interpreter, which need not be the first on the path.
    private static string Python { get; } = File.Exists("/usr/bin/python3") ? "/usr/bin/python3" : "python3";

    /// <summary>Why a test that needs the readers is skipped, or null where they are installed; with CI set they must be.</summary>
    public static string? WhySkipped { get; } =
        (Directory.Exists(Path.Combine(Folder(), "node_modules")) && HasEzdxf()) || Environment.GetEnvironmentVariable("CI") is not null
            ? null
            : $"Run npm ci in {Folder()} and apt-get install python3-ezdxf first.";

    /// <summary>Lets a reader read a file.</summary>
    /// <returns>What it read.</returns>
    public static JsonDocument Run(string script, byte[] file)
    {
        using var node = Process.Start(new ProcessStartInfo(script.EndsWith(".py", StringComparison.Ordinal) ? Python : "node", [Path.Combine(Folder(), script)])
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

    private static bool HasEzdxf()
    {
        try
        {
            using var python = Process.Start(new ProcessStartInfo(Python, ["-c", "import ezdxf"]) { RedirectStandardError = true })!;
            python.WaitForExit();
            return python.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
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
