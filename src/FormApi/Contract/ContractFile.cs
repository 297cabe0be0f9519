using System.Text;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.Swagger;

namespace FormApi.Contract;

/// <summary>
/// The contract as a file: made from the code by a test, committed, embedded, and served unchanged. Making it takes seconds.
/// </summary>
internal static class ContractFile
{
    /// <summary>Name of the document.</summary>
    public const string Version = "v1";

    private static readonly Lazy<byte[]> AsJson = new(() => Embedded("json"));

    private static readonly Lazy<byte[]> AsYaml = new(() => Embedded("yaml"));

    /// <summary>As JSON.</summary>
    public static byte[] Json => AsJson.Value;

    /// <summary>The same as YAML.</summary>
    public static byte[] Yaml => AsYaml.Value;

    /// <summary>Makes it from the code.</summary>
    /// <param name="services">The service that it describes.</param>
    public static async Task<(byte[] Json, byte[] Yaml)> Make(IServiceProvider services)
    {
        using var scope = services.CreateScope();
        var document = await scope.ServiceProvider.GetRequiredService<IAsyncSwaggerProvider>().GetSwaggerAsync(Version);
        return (
            Bytes(await document.SerializeAsJsonAsync(OpenApiSpecVersion.OpenApi3_1)),
            Bytes(await document.SerializeAsYamlAsync(OpenApiSpecVersion.OpenApi3_1)));
    }

    private static byte[] Embedded(string format)
    {
        using var stream = typeof(ContractFile).Assembly.GetManifestResourceStream("contract/form-api.v1." + format)!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text.ReplaceLineEndings("\n").TrimEnd('\n') + "\n");
}
