using FormApi.Hosting.Settings;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.Extensions.Options;

namespace FormApi.Hosting;

/// <summary>What a browser is told about every answer, and who is believed about the caller.</summary>
internal static class SafeHeaders
{
    // An answer is data: nothing is loaded or framed from it. The pages for reading have a policy of their own.
    private const string Policy = "default-src 'none'; frame-ancestors 'none'";

    private static readonly string[] Shown = ["ETag", "Retry-After", "Preference-Applied", "Content-Disposition"];

    /// <summary>Adds the origins, the proxies and the age of transport security.</summary>
    /// <param name="builder">The service being built.</param>
    public static void AddSafeHeaders(this WebApplicationBuilder builder)
    {
        var services = builder.Services;
        services.AddOptions<CorsSettings>().BindConfiguration(CorsSettings.Section);
        services.AddOptions<ProxySettings>().BindConfiguration(ProxySettings.Section);
        var origins = builder.Configuration.GetSection(CorsSettings.Section).Get<CorsSettings>()?.Origins ?? [];
        services.AddCors(cors => cors.AddDefaultPolicy(policy => policy
            .WithOrigins([.. origins]).AllowAnyHeader().WithMethods("GET", "HEAD", "POST").WithExposedHeaders(Shown)));
        services.Configure<ForwardedHeadersOptions>(forwarded =>
        {
            var networks = builder.Configuration.GetSection(ProxySettings.Section).Get<ProxySettings>()?.Networks ?? [];
            forwarded.ForwardedHeaders = networks.Count > 0
                ? ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto
                : ForwardedHeaders.None;
            forwarded.ForwardLimit = null;
            forwarded.KnownProxies.Clear();
            forwarded.KnownIPNetworks.Clear();
            foreach (var network in networks)
                forwarded.KnownIPNetworks.Add(System.Net.IPNetwork.Parse(network));
        });
        services.AddHsts(hsts => hsts.MaxAge = TimeSpan.FromDays(365));
    }

    /// <summary>Puts them on whatever goes out, problems too.</summary>
    /// <param name="app">The service.</param>
    public static void UseSafeHeaders(this WebApplication app)
    {
        app.UseForwardedHeaders();
        app.UseHsts();
        app.Use((context, next) =>
        {
            var headers = context.Response.Headers;
            headers.ContentSecurityPolicy = Policy;
            headers.XContentTypeOptions = "nosniff";
            return next(context);
        });
        if (app.Services.GetRequiredService<IOptions<CorsSettings>>().Value.Origins.Count > 0)
            app.UseCors();
    }
}
