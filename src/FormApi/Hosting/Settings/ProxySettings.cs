using FormApi.Http.Rules;

namespace FormApi.Hosting.Settings;

/// <summary>Proxies in front of the service; settings under <c>Proxies</c>.</summary>
internal sealed class ProxySettings
{
    /// <summary>Name of the section in the settings.</summary>
    public const string Section = "Proxies";

    /// <summary>Networks of proxies whose <c>X-Forwarded-For</c> and <c>X-Forwarded-Proto</c> are believed.</summary>
    [AllowedText(@"[0-9a-fA-F.:]+/\d{1,3}", "a network such as 10.0.0.0/8")]
    public IReadOnlyList<string> Networks { get; set; } = [];
}
