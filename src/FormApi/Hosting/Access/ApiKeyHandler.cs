using System.Security.Claims;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;

namespace FormApi.Hosting.Access;

/// <summary>Lets in who sends a known key in <c>X-Api-Key</c>, or as scrapers of metrics can: <c>Authorization: ApiKey KEY</c>.</summary>
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

    /// <inheritdoc/>
    protected override Task<AuthenticateResult> HandleAuthenticateAsync() => Task.FromResult(Authenticate());

    /// <inheritdoc/>
    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Headers.WWWAuthenticate = $"{SchemeName} realm=\"FormApi\", header=\"{Header}\"";
        Response.StatusCode = StatusCodes.Status401Unauthorized;
        return Task.CompletedTask;
    }

    /// <summary>The key that a request has, or null.</summary>
    /// <param name="request">The request.</param>
    public static string? TextOf(HttpRequest request) => request.Headers[Header] switch
    {
        [{ } text] => text,
        [] when request.Headers.Authorization is [{ } text] && text.StartsWith(SchemeName + " ", StringComparison.OrdinalIgnoreCase) =>
            text[(SchemeName.Length + 1)..].Trim(),
        _ => null,
    };

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
