using System.ComponentModel.DataAnnotations;

namespace FormApi.Http.Links;

/// <summary>Where callers reach the service; settings under <c>Links</c>.</summary>
internal sealed class PublicAddress : IValidatableObject
{
    /// <summary>Name of the section in the settings.</summary>
    public const string Section = "Links";

    // A longer one makes a symbol that a camera hardly reads.
    private const int LongestOnPaper = 1024;

    /// <summary>Address in front of relative links, such as <c>https://forms.example</c>; null where drawings carry no link.</summary>
    public string? PublicBaseUrl { get; set; }

    /// <summary>A link as it goes on a drawing; null where no address is set, or it would be too long to read.</summary>
    /// <param name="relative">The relative link, or null.</param>
    public string? OnPaper(string? relative) =>
        PublicBaseUrl is { } address && relative is not null && address.TrimEnd('/') + relative is { Length: < LongestOnPaper } link
            ? link
            : null;

    /// <inheritdoc/>
    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (PublicBaseUrl is null)
            yield break;
        Uri.TryCreate(PublicBaseUrl, UriKind.Absolute, out var address);
        if (address is not { Scheme: "http" or "https", Query: "", Fragment: "" })
            yield return new($"{Section}:{nameof(PublicBaseUrl)} is not an absolute http or https address.", [nameof(PublicBaseUrl)]);
    }
}
