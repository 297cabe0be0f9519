using System.Reflection;
using Microsoft.AspNetCore.Http.Metadata;

namespace FormApi.Http.Problems;

/// <summary>The problem that there is no such thing.</summary>
/// <param name="detail">What is not there.</param>
internal sealed class NotFoundResult(string detail) : ProblemResult(ProblemKinds.NotFound, detail), IEndpointMetadataProvider
{
    /// <inheritdoc/>
    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        ProblemMetadata.Add(builder, StatusCodes.Status404NotFound);
}
