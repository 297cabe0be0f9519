namespace FormApi.Http.Json;

/// <summary>Other words by which people mean the same; they are read, never written.</summary>
/// <param name="words">The words.</param>
[AttributeUsage(AttributeTargets.Field)]
internal sealed class AlsoWrittenAttribute(params string[] words) : Attribute
{
    /// <summary>The words.</summary>
    public IReadOnlyList<string> Words => words;
}
