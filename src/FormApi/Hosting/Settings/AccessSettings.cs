using FormApi.Http.Rules;

namespace FormApi.Hosting.Settings;

/// <summary>Who may call; settings under <c>Access</c>.</summary>
internal sealed class AccessSettings
{
    /// <summary>Name of the section in the settings.</summary>
    public const string Section = "Access";

    /// <summary>Whether everybody who reaches the service may call it, at whatever address it listens.</summary>
    public bool Open { get; set; }

    /// <summary>Keys, each with a name, the SHA-256 of the key in hexadecimal, and its scopes.</summary>
    public IReadOnlyList<KeySettings> Keys { get; set; } = [];

    /// <summary>A file with more keys, a line each: name, SHA-256, scopes; read once at the start.</summary>
    public string? KeysFile { get; set; }

    /// <summary>Whose tokens (JWT) are taken.</summary>
    public JwtSettings Jwt { get; set; } = new();
}

/// <summary>A key that may be sent in <c>X-Api-Key</c>.</summary>
internal sealed class KeySettings
{
    /// <summary>Whose key it is, as logs and limits say.</summary>
    [AllowedText("[A-Za-z0-9._-]{1,64}", "up to 64 letters, digits, dots, dashes")]
    public string Name { get; set; } = "";

    /// <summary>SHA-256 of the key, in hexadecimal.</summary>
    [AllowedText("[0-9A-Fa-f]{64}", "64 hexadecimal digits")]
    public string Sha256 { get; set; } = "";

    /// <summary>What it opens: compute, metrics, docs, separated by blanks.</summary>
    [AllowedText("(compute|metrics|docs)( (compute|metrics|docs))*", "compute, metrics, docs, separated by blanks")]
    public string Scopes { get; set; } = "compute docs";
}

/// <summary>Tokens (JWT) of one issuer, checked by the framework; scopes are in the claim <c>scope</c> (RFC 9068).</summary>
internal sealed class JwtSettings
{
    /// <summary>Address of the issuer, where its keys are found.</summary>
    [AllowedText("https?://.+", "an address such as https://login.example")]
    public string? Authority { get; set; }

    /// <summary>For whom the token has to be; needed with an authority.</summary>
    public string? Audience { get; set; }
}
