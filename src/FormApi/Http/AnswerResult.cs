using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using FormApi.Operations;

namespace FormApi.Http;

/// <summary>A calculated answer on its way out, as UTF-8 straight into the response.</summary>
/// <typeparam name="T">Type of the answer.</typeparam>
/// <param name="answer">The answer.</param>
/// <param name="type">How it is written.</param>
/// <param name="fingerprint">Its fingerprint.</param>
internal sealed class AnswerResult<T>(T answer, JsonTypeInfo<T> type, string fingerprint) : IResult
{
    /// <inheritdoc/>
    public async Task ExecuteAsync(HttpContext httpContext)
    {
        RequestLog.Remember(httpContext, fingerprint);
        var response = httpContext.Response;
        response.ContentType = "application/json";
        EntityTag.Add(httpContext, fingerprint["sha256:".Length..]);
        using var writer = new Utf8JsonWriter(response.BodyWriter, WireJson.Writing);
        JsonSerializer.Serialize(writer, answer, type);
        await writer.FlushAsync(httpContext.RequestAborted);
    }
}
