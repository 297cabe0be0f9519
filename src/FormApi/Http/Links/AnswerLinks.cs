using System.IO.Compression;

namespace FormApi.Http.Links;

/// <summary>The links that go with an answer.</summary>
internal static class AnswerLinks
{
    private const string Path = "/v1/links/";

    /// <summary>Links of a form.</summary>
    /// <param name="shown">The form request.</param>
    /// <param name="canBeMade">Whether no check failed: a machine never receives a form that cannot be made.</param>
    public static LinksResult OfForm(ReadOnlySpan<byte> shown, bool canBeMade)
    {
        var form = LinkText.Of(shown);
        return new(
            To(form, "form"),
            To(form, "drawing"),
            canBeMade ? To(form, "program") : null);
    }

    /// <summary>A relative link, or null where it would be too long.</summary>
    /// <param name="shown">The request in its canonical spelling.</param>
    /// <param name="what">What it leads to.</param>
    public static string? To(ReadOnlySpan<byte> shown, string what) => To(LinkText.Of(shown), what);

    /// <summary>The shortest link, for a symbol that a camera reads.</summary>
    /// <param name="shown">The request in its canonical spelling.</param>
    /// <param name="what">What it leads to: <c>drawing</c> or <c>program</c>.</param>
    public static string? Shortest(ReadOnlySpan<byte> shown, string what) => To(LinkText.Of(shown, CompressionLevel.SmallestSize), what);

    private static string? To(string? text, string what) => text is null ? null : Path + text + "/" + what;
}
