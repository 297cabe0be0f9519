namespace FormApi.Http.Json;

/// <summary>How lists go into an answer.</summary>
internal static class Lists
{
    /// <summary>Every item, mapped.</summary>
    /// <typeparam name="TFrom">From this.</typeparam>
    /// <typeparam name="TTo">To this.</typeparam>
    /// <param name="items">The items.</param>
    /// <param name="map">How.</param>
    public static TTo[] Map<TFrom, TTo>(IReadOnlyList<TFrom> items, Func<TFrom, TTo> map)
    {
        var mapped = new TTo[items.Count];
        for (var i = 0; i < mapped.Length; i++)
            mapped[i] = map(items[i]);
        return mapped;
    }
}
