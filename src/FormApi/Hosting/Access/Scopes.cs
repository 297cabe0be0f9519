namespace FormApi.Hosting.Access;

/// <summary>What a key or a token opens.</summary>
internal static class Scopes
{
    /// <summary>Everything that calculates, and the tables it calculates with.</summary>
    public const string Compute = "compute";

    /// <summary>The metrics.</summary>
    public const string Scrape = "metrics";

    /// <summary>The contract and its pages.</summary>
    public const string Docs = "docs";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } = [Compute, Scrape, Docs];
}
