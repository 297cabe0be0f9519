using System.Reflection;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.Metadata;

namespace FormApi.Features.Programs;

/// <summary>A program as a table or a sheet, on its way out; beside its answer as JSON.</summary>
/// <param name="bytes">Its bytes.</param>
/// <param name="media">Its media type.</param>
/// <param name="fingerprint">Fingerprint of what was calculated.</param>
internal sealed class ProgramFileResult(byte[] bytes, string media, string fingerprint) : FileResult(bytes, media, fingerprint, "program"),
IEndpointMetadataProvider
{
    private static readonly FilesToo Files = new(MediaTypes.Csv, MediaTypes.Svg, MediaTypes.Pdf);

    /// <summary>The media types there are, JSON among them.</summary>
    public static MediaTypes Offered { get; } = new([MediaTypes.Json, .. Files.Media]);

    /// <inheritdoc/>
    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder)
    {
        builder.Metadata.Add(Offered);
        builder.Metadata.Add(Files);
    }
}
