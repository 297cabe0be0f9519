using System.Collections.Frozen;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;

namespace FormApi.Page;

/// <summary>Every file of the bench page, from the service itself, and the one fingerprint that names them all.</summary>
/// <remarks>
/// Modules name each other by plain relative names. A fingerprint in each name would need an import map, which is a script inside the page;
/// so the fingerprint is in the directory, and every file below it may be kept for good.
/// </remarks>
internal sealed class PageFiles
{
    private const string Start = "index.html";
    private const string Worker = "service-worker.js";
    private const string Prefix = "page/";

    // What the two files at the root put in place of these words.
    private const string AddressMark = "@address@";
    private const string FilesMark = "@files@";
    private const string ModulesMark = "<!-- @modules@ -->";

    private readonly FrozenDictionary<string, PageFile> _files;

    private PageFiles(IReadOnlyList<PageFile> files)
    {
        Fingerprint = FingerprintOf(files);
        _files = files.Where(file => file.Name is not (Start or Worker)).ToFrozenDictionary(file => file.Name, StringComparer.Ordinal);
        StartPage = Filled(files.Single(file => file.Name == Start));
        ServiceWorker = Filled(files.Single(file => file.Name == Worker));
    }

    /// <summary>The files that were built into the service.</summary>
    public static PageFiles Built { get; } = new(
    [
        .. typeof(PageFiles).Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(name => PageFile.Of(name[Prefix.Length..].Replace('\\', '/'), BytesOf(name))),
    ]);

    /// <summary>What names the content of all files together.</summary>
    public string Fingerprint { get; }

    /// <summary>Directory of the files, relative to the page.</summary>
    public string Address => $"page/{Fingerprint}";

    /// <summary>The page itself.</summary>
    public PageFile StartPage { get; }

    /// <summary>The script that lets it work without the network.</summary>
    public PageFile ServiceWorker { get; }

    /// <summary>Every file below <see cref="Address"/>.</summary>
    public IEnumerable<PageFile> All => _files.Values;

    /// <summary>A file, or null.</summary>
    /// <param name="fingerprint">The fingerprint it was asked for with.</param>
    /// <param name="name">Its name.</param>
    public PageFile? Find(string fingerprint, string name) => fingerprint == Fingerprint ? _files.GetValueOrDefault(name) : null;

    private PageFile Filled(PageFile file)
    {
        var names = _files.Keys.Order(StringComparer.Ordinal).ToArray();
        // Named at once, all are fetched at once, and not one after the other as they name each other.
        var modules = names.Where(name => name.EndsWith(".js", StringComparison.Ordinal)).Select(name => $"<link rel=\"modulepreload\" href=\"./{Address}/{name}\">");
        var list = string.Join(",\n  ", names.Select(name => $"\"{JavaScriptEncoder.Default.Encode(name).Replace("\\/", "/", StringComparison.Ordinal)}\""));
        var text = Encoding.UTF8.GetString(file.Content)
            .Replace(AddressMark, Address, StringComparison.Ordinal)
            .Replace($"\"{FilesMark}\"", list, StringComparison.Ordinal)
            .Replace(ModulesMark, string.Join("\n  ", modules), StringComparison.Ordinal);
        return file with { Content = Encoding.UTF8.GetBytes(text) };
    }

    private static string FingerprintOf(IEnumerable<PageFile> files)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var file in files)
        {
            hash.AppendData(Encoding.UTF8.GetBytes(file.Name + "\n"));
            hash.AppendData(file.Content);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset().AsSpan(0, 8));
    }

    private static byte[] BytesOf(string resource)
    {
        using var stream = typeof(PageFiles).Assembly.GetManifestResourceStream(resource)!;
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }
}
