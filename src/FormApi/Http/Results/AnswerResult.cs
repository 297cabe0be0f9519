using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using FormApi.Http.Json;
using Microsoft.AspNetCore.Http.Metadata;

namespace FormApi.Http.Results;

/// <summary>A calculated answer on its way out, as UTF-8 to where it is wanted.</summary>
/// <param name="fingerprint">Its fingerprint.</param>
internal abstract class AnswerResult(string fingerprint) : NamedResult(fingerprint, "application/json")
{
    /// <summary>The verdict of its checks, or null where it has none.</summary>
    public abstract string? Verdict { get; }

    /// <summary>Writes the answer.</summary>
    /// <param name="writer">Destination.</param>
    /// <param name="isMinimal">Whether it is to be short.</param>
    public abstract void Write(Utf8JsonWriter writer, bool isMinimal);

    /// <inheritdoc/>
    protected override Task WriteAsync(HttpContext context)
    {
        var isMinimal = Preference.IsApplied(context);
        return WholeAnswer.SendAsync(context, writer => Write(writer, isMinimal));
    }
}

/// <summary>An answer of one type.</summary>
/// <typeparam name="T">Type of the answer.</typeparam>
/// <param name="answer">The answer.</param>
/// <param name="type">How it is written.</param>
/// <param name="fingerprint">Its fingerprint.</param>
internal sealed class AnswerResult<T>(T answer, JsonTypeInfo<T> type, string fingerprint) : AnswerResult(fingerprint),
IEndpointMetadataProvider
{
    /// <inheritdoc/>
    public override string? Verdict => (answer as IJudged)?.VerdictWord;

    /// <inheritdoc/>
    static void IEndpointMetadataProvider.PopulateMetadata(MethodInfo method, EndpointBuilder builder) =>
        AnswerMetadata.Add(builder, typeof(T), MediaTypes.Json);

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, bool isMinimal) =>
        JsonSerializer.Serialize(writer, answer, isMinimal ? ShortAnswers.Of(type) : type);
}
