using System.Reflection;
using Microsoft.AspNetCore.Http.Metadata;

namespace FormApi.Http.Results;

/// <summary>What the caller has is what it would be sent.</summary>
/// <param name="tag">The entity tag by which it knows it.</param>
internal sealed class UnchangedResult(string tag) : IResult, IEndpointMetadataProvider
{
    /// <inheritdoc/>
    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(new ProducesResponseTypeMetadata(StatusCodes.Status304NotModified, typeof(void)));

    /// <inheritdoc/>
    public Task ExecuteAsync(HttpContext httpContext)
    {
        EntityTag.SayUnchanged(httpContext, tag);
        return Task.CompletedTask;
    }
}
