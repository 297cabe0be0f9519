namespace Forming.Verification;

/// <summary>Every check value, recomputed.</summary>
/// <param name="Tables">The tables, each with its results.</param>
public sealed record VerificationReport(IReadOnlyList<VerifiedTable> Tables)
{
    /// <summary>The results, value by value.</summary>
    public IReadOnlyList<CheckedValue> Values { get; } = [.. Tables.SelectMany(table => table.Values)];

    /// <summary>Ids of the values that failed.</summary>
    public IReadOnlyList<string> Failed { get; } =
        [.. Tables
            .SelectMany(table => table.Values)
            .Where(result => result.Verdict == CheckVerdict.Fail)
            .Select(result => result.Value.Id)];

    /// <summary>Whether every value is right; an engine that was compared with nothing has not passed.</summary>
    public CheckVerdict Verdict => Values.Count > 0 && Failed.Count == 0 ? CheckVerdict.Pass : CheckVerdict.Fail;

    /// <summary>Recomputes tables.</summary>
    /// <param name="tables">The tables.</param>
    public static VerificationReport Run(IEnumerable<CheckTable> tables) =>
        new([.. tables.Select(table => new VerifiedTable(table, [.. table.Values.Select(value => value.Verify())]))]);
}

/// <summary>A table and its results.</summary>
/// <param name="Table">The table.</param>
/// <param name="Values">Its values in their order.</param>
public sealed record VerifiedTable(CheckTable Table, IReadOnlyList<CheckedValue> Values);
