using FormApi.Http.Rules;

namespace FormApi.Http.Links;

/// <summary>Where callers reach the service; settings under <c>Links</c>.</summary>
internal sealed class PublicAddress
{
    /// <summary>Name of the section in the settings.</summary>
    public const string Section = "Links";

    // A longer one makes a symbol that a camera hardly reads.
    private const int LongestOnPaper = 1024;

    /// <summary>Address in front of relative links, such as <c>https://forms.example</c>; null where drawings carry no link.</summary>
    [AllowedText(@"https?://[^?#\s]+", "an address such as https://forms.example")]
    public string? PublicBaseUrl { get; set; }

    /// <summary>A link as it goes on a drawing; null where no address is set, or it would be too long to read.</summary>
    /// <param name="relative">The relative link, or null.</param>
    public string? OnPaper(string? relative) =>
        PublicBaseUrl is { } address && relative is not null && address.TrimEnd('/') + relative is { Length: < LongestOnPaper } link
            ? link
            : null;
}
