using System.Text.Json.Serialization;
using FormApi.Features.Forms;
using FormApi.Http.Json;

namespace Forming.Benchmarks.Requests;

/// <summary>The same types as the framework's serializer writes them by itself.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(StationResult[]))]
[JsonSerializable(typeof(Pair[]))]
internal sealed partial class PlainJson : JsonSerializerContext;
