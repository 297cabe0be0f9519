namespace FormApi.Http.Results;

/// <summary>What a caller prefers (RFC 7240).</summary>
internal static class Preference
{
    /// <summary>The preference for a short answer.</summary>
    public const string Minimal = "return=minimal";

    private static readonly object Key = new();

    /// <summary>Whether the caller prefers a short answer.</summary>
    /// <param name="context">The request.</param>
    public static bool IsMinimal(HttpContext context)
    {
        if (context.Items.TryGetValue(Key, out var known))
            return (bool)known!;
        var prefer = context.Request.Headers["Prefer"];
        var isMinimal = prefer.Count > 0 && AsksForMinimal(prefer!);
        context.Items[Key] = isMinimal;
        return isMinimal;
    }

    /// <summary>Whether the caller is given a short answer; the response then says so.</summary>
    /// <param name="context">The request.</param>
    public static bool IsApplied(HttpContext context)
    {
        var isMinimal = IsMinimal(context);
        if (isMinimal)
            context.Response.Headers["Preference-Applied"] = Minimal;
        return isMinimal;
    }

    // The first of two that contradict each other counts (RFC 7240, section 2).
    private static bool AsksForMinimal(IEnumerable<string> headers) => headers
        .SelectMany(header => header.Split(','))
        .Select(preference => preference.Split(';')[0].Replace(" ", "", StringComparison.Ordinal).Replace("\"", "", StringComparison.Ordinal))
        .FirstOrDefault(preference => preference.StartsWith("return=", StringComparison.OrdinalIgnoreCase))
        ?.Equals(Minimal, StringComparison.OrdinalIgnoreCase) == true;
}
