using System.Reflection;
using System.Text.Json.Serialization.Metadata;
using FormApi.Http.Results;
using Microsoft.AspNetCore.Http.Metadata;

namespace FormApi.Features.Verification;

/// <summary>A state of health on its way out; no caller keeps it.</summary>
/// <typeparam name="T">Type of the answer.</typeparam>
/// <param name="answer">The answer.</param>
/// <param name="type">How it is written.</param>
internal sealed class HealthResult<T>(T answer, JsonTypeInfo<T> type) : IResult, IEndpointMetadataProvider
{
    /// <inheritdoc/>
    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        AnswerMetadata.Add(builder, typeof(T), MediaTypes.Json);

    /// <inheritdoc/>
    public Task ExecuteAsync(HttpContext httpContext) => TypedResults.Json(answer, type).ExecuteAsync(httpContext);
}

/// <summary>The answer of a service that cannot work now.</summary>
/// <param name="answer">The answer.</param>
internal sealed class NotReadyResult(ReadinessAnswer answer) : IResult, IEndpointMetadataProvider
{
    /// <inheritdoc/>
    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        builder.Metadata.Add(
            new ProducesResponseTypeMetadata(StatusCodes.Status503ServiceUnavailable, typeof(ReadinessAnswer), [MediaTypes.Json]));

    /// <inheritdoc/>
    public Task ExecuteAsync(HttpContext httpContext) =>
        TypedResults.Json(answer, VerificationAnswerJson.Default.ReadinessAnswer, statusCode: StatusCodes.Status503ServiceUnavailable)
            .ExecuteAsync(httpContext);
}
