namespace FormApi.Http.Results;

/// <summary>What a handler's typed result holds.</summary>
internal static class NestedResults
{
    /// <summary>The result that is sent in the end.</summary>
    /// <param name="result">A result, perhaps one of several that a handler may give.</param>
    public static IResult Innermost(this IResult result)
    {
        while (result is INestedHttpResult nested)
            result = nested.Result;
        return result;
    }
}
