namespace FormApi.Http.Results;

/// <summary>Media types in which a calculation answers with a file instead of JSON.</summary>
/// <param name="media">The media types.</param>
internal sealed class FilesToo(params string[] media)
{
    /// <summary>The media types.</summary>
    public IReadOnlyList<string> Media => media;
}
