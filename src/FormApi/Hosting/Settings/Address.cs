namespace FormApi.Hosting.Settings;

/// <summary>Where the service listens.</summary>
internal static class Address
{
    /// <summary>The address where nothing is configured.</summary>
    public const string Default = "http://localhost:8080";

    /// <summary>Takes the default unless an address or a port is configured; a setting in a file would win over the environment.</summary>
    /// <param name="builder">The service being built.</param>
    public static void AddDefaultAddress(this WebApplicationBuilder builder)
    {
        if (builder.Configuration[WebHostDefaults.ServerUrlsKey] is null && builder.Configuration[WebHostDefaults.HttpPortsKey] is null)
            builder.WebHost.UseUrls(Default);
    }
}
