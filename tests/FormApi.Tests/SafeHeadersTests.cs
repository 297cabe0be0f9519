using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace FormApi.Tests;

/// <summary>What browsers are told, and the protocols that are spoken.</summary>
public sealed class SafeHeadersTests
{
    [Theory]
    [InlineData("/v1/materials")]
    [InlineData("/nowhere")]
    [InlineData("/docs/index.html")]
    [InlineData("/metrics")]
    [InlineData("/")]
    [InlineData("/page/service-worker.js")]
    public async Task Every_answer_may_load_nothing_from_elsewhere(string path)
    {
        using var service = Service.In("Production");
        using var response = await service.Client.GetAsync(path);
        Assert.Equal("nosniff", response.Headers.GetValues("X-Content-Type-Options").Single());
        var policy = response.Headers.GetValues("Content-Security-Policy").Single();
        Assert.StartsWith(path.StartsWith("/docs", StringComparison.Ordinal) ? "default-src 'self'" : "default-src 'none'", policy, StringComparison.Ordinal);
        Assert.Contains("frame-ancestors 'none'", policy, StringComparison.Ordinal);
        Assert.False(response.Headers.Contains("Server"));
    }

    [Theory]
    [InlineData("https://shop.example", true)]
    [InlineData("https://other.example", false)]
    public async Task Pages_of_the_origins_on_the_list_may_call_and_see_errors_too(string origin, bool isAllowed)
    {
        using var service = Service.With(("Cors:Origins:0", "https://shop.example"));
        foreach (var path in (string[])["/v1/materials", "/v1/materials/none", "/v1/forms"])
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, path);
            request.Headers.Add("Origin", origin);
            using var response = await service.Client.SendAsync(request);
            Assert.Equal(isAllowed, response.Headers.TryGetValues("Access-Control-Allow-Origin", out var allowed));
            Assert.True(!isAllowed || allowed!.Single() == origin);
        }

        using var asking = new HttpRequestMessage(HttpMethod.Options, "/v1/forms");
        asking.Headers.Add("Origin", origin);
        asking.Headers.Add("Access-Control-Request-Method", "POST");
        asking.Headers.Add("Access-Control-Request-Headers", "content-type, x-api-key, prefer");
        using var asked = await service.Client.SendAsync(asking);
        Assert.Equal(isAllowed, asked.Headers.Contains("Access-Control-Allow-Headers"));
    }

    [Fact]
    public async Task A_proxy_is_believed_only_where_its_network_is_named()
    {
        foreach (var network in (string[])["127.0.0.0/8", "10.0.0.0/8"])
        {
            using var service = Service.OnPort(("Proxies:Networks:0", network), ("Limits:CallerPerSecond", "0.1"), ("Limits:CallerBurst", "1"));
            var statuses = new List<int>();
            foreach (var caller in (string[])["192.0.2.1", "192.0.2.2"])
            {
                using var request = new HttpRequestMessage(HttpMethod.Post, "/v1/forms") { Content = new StringContent("{}", null, "application/json") };
                request.Content = new StringContent(Requests.Arc().ToJsonString(), null, "application/json");
                request.Headers.Add("X-Forwarded-For", caller);
                using var response = await service.Client.SendAsync(request);
                statuses.Add((int)response.StatusCode);
            }

            Assert.Equal(network == "127.0.0.0/8" ? [200, 200] : [200, 429], statuses);
        }
    }

    [Fact]
    public async Task Tls_is_set_as_Kestrel_sets_it_and_browsers_are_told_to_stay_with_it()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        using var certificate = new CertificateRequest("CN=forms.example", key, HashAlgorithmName.SHA256)
            .CreateSelfSigned(DateTimeOffset.UtcNow.AddDays(-1), DateTimeOffset.UtcNow.AddDays(1));
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            var (pem, keyPem) = (Path.Combine(folder.FullName, "tls.pem"), Path.Combine(folder.FullName, "tls.key"));
            await File.WriteAllTextAsync(pem, certificate.ExportCertificatePem());
            await File.WriteAllTextAsync(keyPem, key.ExportPkcs8PrivateKeyPem());
            using var service = Service.OnPort(
                ("Kestrel:Endpoints:Tls:Url", "https://127.0.0.1:0"),
                ("Kestrel:Endpoints:Tls:Certificate:Path", pem),
                ("Kestrel:Endpoints:Tls:Certificate:KeyPath", keyPem));
            using var handler = new SocketsHttpHandler();
            handler.SslOptions.RemoteCertificateValidationCallback =
                (_, shown, _, _) => shown!.GetCertHashString() == certificate.GetCertHashString();
            using var client = new HttpClient(handler) { BaseAddress = service.Client.BaseAddress };
            using var request = new HttpRequestMessage(HttpMethod.Get, "/v1/materials") { Version = HttpVersion.Version20, VersionPolicy = HttpVersionPolicy.RequestVersionExact };
            request.Headers.Host = "forms.example";
            using var response = await client.SendAsync(request);
            Assert.Equal(("https", HttpStatusCode.OK, HttpVersion.Version20), (client.BaseAddress!.Scheme, response.StatusCode, response.Version));
            Assert.StartsWith("max-age=", response.Headers.GetValues("Strict-Transport-Security").Single(), StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Fact]
    public async Task Http_2_is_spoken_without_tls_where_it_alone_is_set()
    {
        using var service = Service.OnPort(("Kestrel:EndpointDefaults:Protocols", "Http2"));
        using var request = new HttpRequestMessage(HttpMethod.Get, "/v1/materials") { Version = HttpVersion.Version20, VersionPolicy = HttpVersionPolicy.RequestVersionExact };
        using var response = await service.Client.SendAsync(request);
        Assert.Equal((HttpStatusCode.OK, HttpVersion.Version20), (response.StatusCode, response.Version));
    }
}
