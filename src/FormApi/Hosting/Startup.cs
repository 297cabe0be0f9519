using System.Globalization;
using FormApi.Hosting.Access;
using FormApi.Hosting.Settings;
using FormApi.Http;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.Options;

namespace FormApi.Hosting;

/// <summary>What is looked at before the service starts, and what it says once it has.</summary>
internal static partial class Startup
{
    /// <summary>Why the service must not start, in two lines, or null.</summary>
    /// <param name="configuration">The settings.</param>
    public static string? WhyNot(IConfiguration configuration) =>
        SettingsCheck.FirstFault(configuration) ?? AccessSetup.WhyNot(configuration);

    /// <summary>Says once what started: version, address, limits, access.</summary>
    /// <param name="app">The service.</param>
    public static void SayWhatStarts(this WebApplication app)
    {
        var limits = app.Services.GetRequiredService<IOptions<Limits>>().Value;
        var access = app.Services.GetRequiredService<AskedAccess>();
        app.Lifetime.ApplicationStarted.Register(() => Started(
            app.Logger,
            EngineVersion.Current,
            string.Join(' ', app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()?.Addresses ?? []),
            Environment.ProcessorCount,
            string.Create(CultureInfo.InvariantCulture, $"{limits.Concurrent} at once, {limits.Queued} waiting, {limits.CallerPerSecond}/s a caller, {limits.Seconds} s each"),
            access.Words));
    }

    [LoggerMessage(LogLevel.Information, "FormApi {Version} listens on {Addresses} with {Cores} cores; limits: {Limits}; access: {Access}")]
    private static partial void Started(ILogger logger, string version, string addresses, int cores, string limits, string access);
}
