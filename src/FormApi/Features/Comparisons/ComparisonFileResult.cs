using System.Reflection;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.Metadata;

namespace FormApi.Features.Comparisons;

/// <summary>A comparison as a table, on its way out; beside its answer as JSON.</summary>
/// <param name="bytes">Its bytes.</param>
/// <param name="fingerprint">Fingerprint of what was calculated.</param>
internal sealed class ComparisonFileResult(byte[] bytes, string fingerprint) : FileResult(bytes, MediaTypes.Csv, fingerprint, "comparison"),
IEndpointMetadataProvider
{
    private static readonly FilesToo Files = new(MediaTypes.Csv);

    /// <summary>The media types there are, JSON among them.</summary>
    public static MediaTypes Offered { get; } = new([MediaTypes.Json, .. Files.Media]);

    /// <inheritdoc/>
    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder)
    {
        builder.Metadata.Add(Offered);
        builder.Metadata.Add(Files);
    }
}
