using System.Net.Sockets;
using FormApi.Hosting.Settings;

namespace FormApi.Hosting;

/// <summary>
/// <c>dotnet FormApi.dll --probe [path]</c>: asks the service that runs beside it how it is, by the same settings, and ends with 0 where
/// it is well. A container needs no other tool for its health check.
/// </summary>
internal static class Probe
{
    private const string Option = "--probe";
    private const string DefaultPath = "/health/ready";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    /// <summary>Asks, if that is what the process was started for.</summary>
    /// <param name="args">Arguments of the process.</param>
    /// <returns>The exit code, or null where the service is to start.</returns>
    public static async Task<int?> ExitCodeAsync(string[] args)
    {
        if (args is not [Option, .. var rest])
            return null;
        var address = new Uri(AddressOf(Settings()), rest.FirstOrDefault(DefaultPath));
        var (isWell, text) = await AskAsync(address);
        Console.WriteLine($"{address}: {text}");
        return isWell ? 0 : 1;
    }

    /// <summary>Where the service beside listens, as this host reaches it.</summary>
    /// <param name="settings">The settings that the service reads.</param>
    public static Uri AddressOf(IConfiguration settings)
    {
        var own = settings.GetSection("Kestrel:Endpoints").GetChildren().Select(endpoint => endpoint["Url"]).FirstOrDefault(url => url is not null);
        var ports = settings[WebHostDefaults.HttpPortsKey];
        var url = own ?? settings[WebHostDefaults.ServerUrlsKey] ?? (ports is null ? Address.Default : $"http://*:{ports}");
        var first = BindingAddress.Parse(url.Split(';')[0]);
        var host = first.Host is "*" or "+" or "0.0.0.0" or "[::]" ? "localhost" : first.Host;
        return new UriBuilder(first.Scheme, host, first.Port).Uri;
    }

    private static IConfigurationRoot Settings() => new ConfigurationBuilder()
        .SetBasePath(AppContext.BaseDirectory)
        .AddJsonFile("appsettings.json", optional: true)
        .AddEnvironmentVariables("DOTNET_")
        .AddEnvironmentVariables("ASPNETCORE_")
        .AddEnvironmentVariables()
        .Build();

    private static async Task<(bool IsWell, string Text)> AskAsync(Uri address)
    {
        // Its certificate names the host that others call, not this one.
        using var handler = new SocketsHttpHandler();
        handler.SslOptions.RemoteCertificateValidationCallback = (_, _, _, _) => address.IsLoopback;
        using var client = new HttpClient(handler) { Timeout = Patience };
        try
        {
            using var answer = await client.GetAsync(address);
            return (answer.IsSuccessStatusCode, ((int)answer.StatusCode).ToString(System.Globalization.CultureInfo.InvariantCulture));
        }
        catch (Exception none) when (none is HttpRequestException or OperationCanceledException or SocketException)
        {
            return (false, none is OperationCanceledException ? $"no answer within {Patience.TotalSeconds} s" : none.Message);
        }
    }
}
