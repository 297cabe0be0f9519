namespace FormApi.Page;

/// <summary>A file of the bench page.</summary>
/// <param name="Name">Its name below the page's address, such as <c>parts/plan.js</c>.</param>
/// <param name="MediaType">Its media type.</param>
/// <param name="Content">What it holds.</param>
internal sealed record PageFile(string Name, string MediaType, byte[] Content)
{
    /// <summary>A file whose name says what it is.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="content">What it holds.</param>
    public static PageFile Of(string name, byte[] content) => new(name, MediaTypeOf(name), content);

    private static string MediaTypeOf(string name) => Path.GetExtension(name) switch
    {
        ".html" => "text/html;charset=utf-8",
        ".css" => "text/css;charset=utf-8",
        ".js" => "text/javascript;charset=utf-8",
        ".svg" => "image/svg+xml",
        ".webmanifest" => "application/manifest+json",
        _ => "text/plain;charset=utf-8",
    };
}
