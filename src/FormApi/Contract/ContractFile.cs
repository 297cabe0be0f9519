using System.Text;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.Swagger;

namespace FormApi.Contract;

/// <summary>The contract as a file: generated once from the code, then served as it stands.</summary>
/// <param name="scopes">Makes the generator.</param>
internal sealed class ContractFile(IServiceScopeFactory scopes)
{
    /// <summary>Name of the document.</summary>
    public const string Version = "v1";

    private readonly Lazy<Task<(byte[] Json, byte[] Yaml)>> _bytes = new(() => Write(scopes));

    /// <summary>As JSON.</summary>
    public async Task<byte[]> Json() => (await _bytes.Value).Json;

    /// <summary>The same as YAML.</summary>
    public async Task<byte[]> Yaml() => (await _bytes.Value).Yaml;

    private static async Task<(byte[] Json, byte[] Yaml)> Write(IServiceScopeFactory scopes)
    {
        using var scope = scopes.CreateScope();
        var document = await scope.ServiceProvider.GetRequiredService<IAsyncSwaggerProvider>().GetSwaggerAsync(Version);
        return (
            Bytes(await document.SerializeAsJsonAsync(OpenApiSpecVersion.OpenApi3_1)),
            Bytes(await document.SerializeAsYamlAsync(OpenApiSpecVersion.OpenApi3_1)));
    }

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text.ReplaceLineEndings("\n").TrimEnd('\n') + "\n");
}
