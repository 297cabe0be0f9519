using System.Net;
using FormApi.Hosting.Settings;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.JwtBearer;

namespace FormApi.Hosting.Access;

/// <summary>Who may call what: keys, tokens, or everybody.</summary>
internal static class AccessSetup
{
    /// <summary>The claim that holds what a caller may do.</summary>
    public const string ScopeClaim = "scope";

    private const string ByWhatIsSent = "access";

    /// <summary>Adds keys and tokens, where any are set.</summary>
    /// <param name="builder">The service being built.</param>
    /// <exception cref="FormatException">A line of the file of keys is no key.</exception>
    public static void AddAccess(this WebApplicationBuilder builder)
    {
        var settings = SettingsOf(builder.Configuration);
        var keys = ApiKeys.Of(settings);
        builder.Services.AddSingleton(new AskedAccess(settings, keys));
        builder.Services.AddSingleton(keys);
        var authentication = builder.Services.AddAuthentication(ByWhatIsSent)
            .AddScheme<AuthenticationSchemeOptions, ApiKeyHandler>(ApiKeyHandler.SchemeName, null)
            .AddPolicyScheme(ByWhatIsSent, null, options => options.ForwardDefaultSelector = context =>
                settings.Jwt.Authority is null || ApiKeyHandler.TextOf(context.Request) is not null
                    || (keys.Count > 0 && context.Request.Headers.Authorization.Count == 0 && ApiKeyHandler.IsBrowser(context.Request))
                    ? ApiKeyHandler.SchemeName
                    : JwtBearerDefaults.AuthenticationScheme);
        if (settings.Jwt.Authority is { } authority)
        {
            authentication.AddJwtBearer(options =>
            {
                options.Authority = authority;
                options.Audience = settings.Jwt.Audience;
                options.MapInboundClaims = false;
                options.RequireHttpsMetadata = authority.StartsWith("https:", StringComparison.Ordinal) || !IsLoopback(authority);
                options.TokenValidationParameters.NameClaimType = "sub";
            });
        }

        var authorization = builder.Services.AddAuthorizationBuilder();
        foreach (var scope in Scopes.All)
            authorization.AddPolicy(scope, policy => policy.RequireAssertion(context => HasScope(context.User, scope)));
    }

    /// <summary>A group of routes that asks for a scope, where the service asks for any.</summary>
    /// <param name="app">The service.</param>
    /// <param name="scope">The scope.</param>
    public static RouteGroupBuilder MapScope(this WebApplication app, string scope)
    {
        var group = app.MapGroup("").Refuses(401, 403);
        return app.Services.GetRequiredService<AskedAccess>().IsAsked ? group.RequireAuthorization(scope) : group;
    }

    /// <summary>Why the service must not start, or null: beyond this machine somebody has to say who may call.</summary>
    /// <param name="configuration">The settings.</param>
    public static string? WhyNot(IConfiguration configuration)
    {
        var settings = SettingsOf(configuration);
        if (settings.Open || settings.Keys.Count > 0 || settings.KeysFile is not null || settings.Jwt.Authority is not null)
            return null;
        return Addresses(configuration).FirstOrDefault(address => !IsLoopback(address)) is { } open
            ? $"{open} can be reached from other machines, and nothing says who may call.\nSet Access__Keys__0__Name and Access__Keys__0__Sha256 (dotnet FormApi.dll --new-key NAME makes a key), Access__KeysFile, Access__Jwt__Authority, or Access__Open=true."
            : null;
    }

    /// <summary>The settings.</summary>
    /// <param name="configuration">Where they are.</param>
    public static AccessSettings SettingsOf(IConfiguration configuration) =>
        Clean(configuration.GetSection(AccessSettings.Section).Get<AccessSettings>() ?? new());

    // An empty text is a setting that was taken back.
    private static AccessSettings Clean(AccessSettings settings)
    {
        settings.KeysFile = string.IsNullOrEmpty(settings.KeysFile) ? null : settings.KeysFile;
        settings.Jwt.Authority = string.IsNullOrEmpty(settings.Jwt.Authority) ? null : settings.Jwt.Authority;
        return settings;
    }

    /// <summary>Where the service is going to listen.</summary>
    /// <param name="configuration">The settings.</param>
    public static IReadOnlyList<string> Addresses(IConfiguration configuration)
    {
        string[] endpoints = [.. configuration.GetSection("Kestrel:Endpoints").GetChildren().Select(endpoint => endpoint["Url"] ?? "http://+")];
        if (endpoints.Length > 0)
            return endpoints;
        if (configuration[WebHostDefaults.ServerUrlsKey] is { Length: > 0 } urls)
            return urls.Split(';');
        var ports = new[] { WebHostDefaults.HttpPortsKey, WebHostDefaults.HttpsPortsKey }
            .SelectMany(key => (configuration[key] ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries))
            .Select(port => "http://+:" + port)
            .ToArray();
        return ports.Length > 0 ? ports : [Address.Default];
    }

    private static bool IsLoopback(string address)
    {
        var binding = BindingAddress.Parse(address);
        return binding.IsUnixPipe || binding.Host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
            || (IPAddress.TryParse(binding.Host, out var ip) && IPAddress.IsLoopback(ip));
    }

    // A token has its scopes in one text (RFC 9068), a key as many claims.
    private static bool HasScope(System.Security.Claims.ClaimsPrincipal user, string scope) =>
        user.FindAll(ScopeClaim).SelectMany(claim => claim.Value.Split(' ')).Contains(scope);
}

/// <summary>Whom the service asks for what.</summary>
/// <param name="settings">The settings.</param>
/// <param name="keys">The keys.</param>
internal sealed class AskedAccess(AccessSettings settings, ApiKeys keys)
{
    /// <summary>Whether callers have to show a key or a token.</summary>
    public bool IsAsked => !settings.Open && (keys.Count > 0 || settings.Jwt.Authority is not null);

    /// <summary>The same in words, for the log.</summary>
    public string Words => !IsAsked
        ? "open"
        : string.Join(", ", new[] { keys.Count > 0 ? $"{keys.Count} keys" : null, settings.Jwt.Authority }.Where(word => word is not null));
}
