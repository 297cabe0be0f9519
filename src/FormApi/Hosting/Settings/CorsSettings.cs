using FormApi.Http.Rules;

namespace FormApi.Hosting.Settings;

/// <summary>Pages of other origins that may call; settings under <c>Cors</c>.</summary>
internal sealed class CorsSettings
{
    /// <summary>Name of the section in the settings.</summary>
    public const string Section = "Cors";

    /// <summary>Origins whose pages may call from a browser.</summary>
    [AllowedText(@"https?://[^/\s]+", "an origin such as https://shop.example")]
    public IReadOnlyList<string> Origins { get; set; } = [];
}
