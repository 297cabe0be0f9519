using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using FormApi.Http.Json;
using Microsoft.AspNetCore.Http.Metadata;

namespace FormApi.Http.Results;

/// <summary>A table on its way out: it changes only with the engine, so callers may keep it.</summary>
/// <typeparam name="T">Type of the answer.</typeparam>
/// <param name="name">What names the table among others.</param>
/// <param name="answer">Makes the answer, if the caller has not got it.</param>
/// <param name="type">How it is written.</param>
internal sealed class TableResult<T>(string name, Func<T> answer, JsonTypeInfo<T> type) : IResult, IEndpointMetadataProvider
{
    /// <inheritdoc/>
    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        AnswerMetadata.Add(builder, typeof(T), MediaTypes.Json);

    /// <inheritdoc/>
    public Task ExecuteAsync(HttpContext httpContext)
    {
        var response = httpContext.Response;
        var tag = $"{EngineVersion.Current}-{name}";
        response.Headers.CacheControl = "public, max-age=86400";
        if (EntityTag.KnownAs(httpContext, tag) is { } known)
        {
            EntityTag.SayUnchanged(httpContext, known);
            return Task.CompletedTask;
        }

        EntityTag.Add(httpContext, tag);
        response.ContentType = "application/json";
        return WholeAnswer.SendAsync(httpContext, writer => JsonSerializer.Serialize(writer, answer(), type));
    }
}
