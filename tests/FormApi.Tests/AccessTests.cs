using System.Net;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using FormApi.Hosting.Access;
using Microsoft.AspNetCore.Authentication.JwtBearer;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.IdentityModel.JsonWebTokens;
using Microsoft.IdentityModel.Protocols.OpenIdConnect;
using Microsoft.IdentityModel.Tokens;

namespace FormApi.Tests;

/// <summary>Keys and tokens: who may call what.</summary>
public sealed class AccessTests
{
    private const string Issuer = "https://login.example";

    private static (string, string)[] Keys(params (string Name, string Key, string Scopes)[] keys) =>
    [
        .. keys.SelectMany((key, i) => new[]
        {
            ($"Access:Keys:{i}:Name", key.Name),
            ($"Access:Keys:{i}:Sha256", Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(key.Key)))),
            ($"Access:Keys:{i}:Scopes", key.Scopes),
        }),
    ];

    [Theory]
    [InlineData("/v1/materials", "bench-key", 200)]
    [InlineData("/v1/materials", "scrape-key", 403)]
    [InlineData("/v1/materials", "other-key", 401)]
    [InlineData("/v1/materials", null, 401)]
    [InlineData("/metrics", "scrape-key", 200)]
    [InlineData("/metrics", "bench-key", 403)]
    [InlineData("/openapi/v1.json", "bench-key", 200)]
    [InlineData("/docs/index.html", null, 401)]
    [InlineData("/", null, 200)]
    [InlineData("/health/live", null, 200)]
    [InlineData("/problems/unauthorized", null, 200)]
    [Trait("Category", "Long")]
    public async Task A_key_opens_what_its_scopes_say(string path, string? key, int status)
    {
        using var service = Service.With(Keys(("bench", "bench-key", "compute docs"), ("scrape", "scrape-key", "metrics")));
        using var response = await Get(service, path, key);
        Assert.Equal(status, (int)response.StatusCode);
        if (status is 401 or 403)
            Assert.Equal(status == 401 ? "unauthorized" : "forbidden", (string)JsonNode.Parse(await response.Content.ReadAsStringAsync())!["code"]!);
        Assert.Equal(status == 401, response.Headers.WwwAuthenticate.Count > 0);
    }

    [Fact]
    public async Task A_body_is_not_read_before_the_key_is_known()
    {
        using var service = Service.With(Keys(("bench", "bench-key", "compute")));
        using var response = await service.Post("/v1/forms", "not even JSON");
        Assert.Equal(HttpStatusCode.Unauthorized, response.StatusCode);
    }

    [Theory]
    [InlineData("anybody:bench-key", 200)]
    [InlineData(":bench-key", 200)]
    [InlineData("bench:other-key", 401)]
    [InlineData("bench-key", 401)]
    public async Task A_browser_asks_a_person_for_the_key_and_sends_it_as_the_password(string pair, int status)
    {
        using var service = Service.With(Keys(("bench", "bench-key", "compute docs")));
        using var first = await Get(service, "/docs/index.html", null, "text/html");
        Assert.StartsWith("Basic realm=", first.Headers.WwwAuthenticate.ToString(), StringComparison.Ordinal);
        using var request = new HttpRequestMessage(HttpMethod.Get, "/docs/index.html");
        request.Headers.Accept.ParseAdd("text/html");
        request.Headers.Authorization = new("Basic", Convert.ToBase64String(Encoding.UTF8.GetBytes(pair)));
        using var response = await service.Client.SendAsync(request);
        Assert.Equal(status, (int)response.StatusCode);
    }

    [Fact]
    public async Task While_keys_are_changed_the_old_and_the_new_one_open()
    {
        using var service = Service.With(Keys(("bench", "old-key", "compute"), ("bench", "new-key", "compute")));
        foreach (var key in (string[])["old-key", "new-key"])
        {
            using var response = await Get(service, "/v1/limits", key);
            Assert.Equal("bench", (string)JsonNode.Parse(await response.Content.ReadAsStringAsync())!["caller"]!);
        }
    }

    [Fact]
    public void A_new_key_is_let_in_by_the_line_that_comes_with_it()
    {
        var (key, line) = ApiKeys.New("bench");
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, $"# keys of the shop\n\n{line}\n");
            var keys = ApiKeys.Of(new() { KeysFile = file });
            Assert.Equal("bench", keys.Find(key)!.Name);
            Assert.Null(keys.Find(key + " "));
            File.AppendAllText(file, "bench abc compute\n");
            Assert.Contains("Line 4", Assert.Throws<FormatException>(() => ApiKeys.Of(new() { KeysFile = file })).Message, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Theory]
    [InlineData("compute", Issuer, "forms", 5, 200)]
    [InlineData("metrics docs", Issuer, "forms", 5, 403)]
    [InlineData("docs compute", Issuer, "forms", 5, 200)]
    [InlineData("compute", "https://other.example", "forms", 5, 401)]
    [InlineData("compute", Issuer, "others", 5, 401)]
    [InlineData("compute", Issuer, "forms", -60, 401)]
    [Trait("Category", "Long")]
    public async Task A_token_of_the_issuer_opens_what_its_scope_says(string scope, string issuer, string audience, int minutes, int status)
    {
        using var signing = RSA.Create(2048);
        var key = new RsaSecurityKey(signing) { KeyId = "one" };
        using var service = Service.Trusting(
            services => services.Configure<JwtBearerOptions>(JwtBearerDefaults.AuthenticationScheme, options =>
            {
                options.Configuration = new OpenIdConnectConfiguration { Issuer = Issuer };
                options.Configuration.SigningKeys.Add(key);
            }),
            ("Access:Jwt:Authority", Issuer), ("Access:Jwt:Audience", "forms"));
        var now = DateTime.UtcNow;
        var token = new JsonWebTokenHandler().CreateToken(new SecurityTokenDescriptor
        {
            Issuer = issuer,
            Audience = audience,
            NotBefore = now.AddMinutes(Math.Min(0, minutes) - 1),
            IssuedAt = now.AddMinutes(Math.Min(0, minutes) - 1),
            Expires = now.AddMinutes(minutes),
            Claims = new Dictionary<string, object> { ["scope"] = scope, ["sub"] = "quoting" },
            SigningCredentials = new(key, SecurityAlgorithms.RsaSha256),
        });
        using var request = new HttpRequestMessage(HttpMethod.Get, "/v1/limits");
        request.Headers.Authorization = new("Bearer", token);
        using var response = await service.Client.SendAsync(request);
        Assert.Equal(status, (int)response.StatusCode);
        if (status == 200)
            Assert.Equal("quoting", (string)JsonNode.Parse(await response.Content.ReadAsStringAsync())!["caller"]!);
    }

    private static Task<HttpResponseMessage> Get(Service service, string path, string? key, string accept = "*/*")
    {
        var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.Accept.ParseAdd(accept);
        if (key is not null)
            request.Headers.Add(ApiKeyHandler.Header, key);
        return service.Client.SendAsync(request);
    }
}
