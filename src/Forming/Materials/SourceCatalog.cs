using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;
using Forming.Results;

namespace Forming.Materials;

/// <summary>Every source that the tables and methods cite, by key.</summary>
public static class SourceCatalog
{
    private static readonly Source[] Rows = [.. CsvTable.ReadEmbedded("sources.csv").Rows.Select(Read)];

    private static readonly FrozenDictionary<string, Source> ByKey =
        Rows.ToFrozenDictionary(source => source.Key, StringComparer.Ordinal);

    /// <summary>All sources, by key in ordinal order.</summary>
    public static IReadOnlyList<Source> All { get; } = Rows.AsReadOnly();

    /// <summary>The source of a key that the project itself cites.</summary>
    /// <param name="key">Key, as in <see cref="Source.Key"/>.</param>
    /// <exception cref="KeyNotFoundException">No source has this key.</exception>
    public static Source Find(string key) =>
        TryFind(key, out var source) ? source : throw new KeyNotFoundException($"No source has the key '{key}'.");

    /// <summary>Looks a source up.</summary>
    /// <param name="key">Key, as in <see cref="Source.Key"/>.</param>
    /// <param name="source">The source, or null where there is none.</param>
    /// <returns>Whether a source has this key.</returns>
    public static bool TryFind(string key, [NotNullWhen(true)] out Source? source) => ByKey.TryGetValue(key, out source);

    private static Source Read(CsvRow row) => new(
        row.Text("key"),
        row.Text("author"),
        row.Text("title"),
        row.OptionalInteger("year"),
        row.Text("place"),
        row.Text("access"),
        row.Word<Status>("status"));
}
