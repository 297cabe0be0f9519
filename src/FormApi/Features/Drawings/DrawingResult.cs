using System.Reflection;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.Metadata;

namespace FormApi.Features.Drawings;

/// <summary>A form as a picture, a cutting file or a solid, on its way out.</summary>
/// <param name="bytes">Its bytes.</param>
/// <param name="media">Its media type.</param>
/// <param name="fingerprint">Fingerprint of what was calculated.</param>
/// <param name="kind">What it shows, which begins the file's name.</param>
internal sealed class DrawingResult(byte[] bytes, string media, string fingerprint, string kind)
    : FileResult(bytes, media, fingerprint, kind), IEndpointMetadataProvider
{
    /// <summary>The media types there are.</summary>
    public static MediaTypes Offered { get; } = new(MediaTypes.Svg, MediaTypes.Pdf, MediaTypes.Dxf, MediaTypes.Csv, MediaTypes.Glb);

    /// <inheritdoc/>
    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        AnswerMetadata.Add(builder, typeof(byte[]), Offered.Offered);
}
