using System.Security.Claims;
using System.Text;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;

namespace FormApi.Hosting.Access;

/// <summary>
/// Lets in who sends a known key in <c>X-Api-Key</c>, as scrapers of metrics can, <c>Authorization: ApiKey KEY</c>, or as a browser asks a
/// person for it: as the password, under any name (RFC 7617).
/// </summary>
/// <param name="options">Options of the framework.</param>
/// <param name="logger">Log of the framework.</param>
/// <param name="encoder">Encoder of the framework.</param>
/// <param name="keys">The keys.</param>
internal sealed class ApiKeyHandler(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, ApiKeys keys)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    /// <summary>Name of the scheme.</summary>
    public const string SchemeName = "ApiKey";

    /// <summary>The header that holds the key.</summary>
    public const string Header = "X-Api-Key";

    private const string Basic = "Basic";

    /// <inheritdoc/>
    protected override Task<AuthenticateResult> HandleAuthenticateAsync() => Task.FromResult(Authenticate());

    /// <inheritdoc/>
    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Headers.WWWAuthenticate = IsBrowser(Request)
            ? $"{Basic} realm=\"FormApi: any name, with your key as the password\", charset=\"UTF-8\""
            : $"{SchemeName} realm=\"FormApi\", header=\"{Header}\"";
        Response.StatusCode = StatusCodes.Status401Unauthorized;
        return Task.CompletedTask;
    }

    /// <summary>The key that a request has, or null.</summary>
    /// <param name="request">The request.</param>
    public static string? TextOf(HttpRequest request) => request.Headers[Header] switch
    {
        [{ } text] => text,
        [] when request.Headers.Authorization is [{ } sent] =>
            After(SchemeName, sent) ?? (After(Basic, sent) is { } pair ? PasswordIn(pair) : null),
        _ => null,
    };

    /// <summary>Whether a person looks at a page: then the browser is to ask for the key.</summary>
    /// <param name="request">The request.</param>
    public static bool IsBrowser(HttpRequest request) =>
        request.GetTypedHeaders().Accept.Any(type => type.MediaType.Equals("text/html", StringComparison.OrdinalIgnoreCase));

    private static string? After(string scheme, string sent) =>
        sent.StartsWith(scheme + " ", StringComparison.OrdinalIgnoreCase) ? sent[(scheme.Length + 1)..].Trim() : null;

    private static string? PasswordIn(string pair)
    {
        var bytes = new byte[pair.Length];
        return Convert.TryFromBase64String(pair, bytes, out var count)
            && Encoding.UTF8.GetString(bytes, 0, count).Split(':', 2) is [_, var key]
            ? key
            : null;
    }

    private AuthenticateResult Authenticate()
    {
        if (TextOf(Request) is not { } text)
            return AuthenticateResult.NoResult();
        if (keys.Find(text) is not { } key)
            return AuthenticateResult.Fail("The key is not known.");
        Claim[] claims = [new(ClaimTypes.Name, key.Name), .. key.Scopes.Select(scope => new Claim(AccessSetup.ScopeClaim, scope))];
        return AuthenticateResult.Success(new(new(new ClaimsIdentity(claims, SchemeName)), SchemeName));
    }
}
