using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using FormApi.Http.Json;

namespace FormApi.Contract;

/// <summary>What every feature reads and writes, found by its contexts: one that is added cannot be forgotten.</summary>
internal static class WireTypes
{
    /// <summary>How requests are read.</summary>
    public static JsonSerializerOptions Requests { get; } = With(WireJson.Strict(), areRequests: true);

    /// <summary>How answers are written.</summary>
    public static JsonSerializerOptions Answers { get; } = With(
        new() { PropertyNamingPolicy = JsonNamingPolicy.CamelCase }, areRequests: false);

    private static JsonSerializerOptions With(JsonSerializerOptions options, bool areRequests)
    {
        options.TypeInfoResolver = JsonTypeInfoResolver.Combine([.. typeof(WireTypes).Assembly.GetTypes()
            .Where(type => type.IsSubclassOf(typeof(JsonSerializerContext)) && typeof(IReadsRequests).IsAssignableFrom(type) == areRequests)
            .OrderBy(type => type.FullName, StringComparer.Ordinal)
            .Select(type => (IJsonTypeInfoResolver)Activator.CreateInstance(type)!)]);
        return options;
    }
}
