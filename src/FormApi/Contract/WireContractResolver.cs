using System.Reflection;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using FormApi.Features.Programs;
using FormApi.Http.Json;
using FormApi.Http.Problems;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FormApi.Contract;

/// <summary>Tells the contract what JSON really looks like: from the same metadata by which bodies are read and answers written.</summary>
internal sealed class WireContractResolver : ISerializerDataContractResolver
{
    private static readonly JsonSerializerDataContractResolver Plain = new(WireTypes.Requests);

    /// <summary>The metadata of a type of a request or an answer, or null where it is neither.</summary>
    /// <param name="type">The type.</param>
    public static JsonTypeInfo? InfoOf(Type type)
    {
        if (type.Namespace?.StartsWith("FormApi", StringComparison.Ordinal) != true || type.IsEnum)
            return null;
        return (WireTypes.Requests.TryGetTypeInfo(type, out var info) || WireTypes.Answers.TryGetTypeInfo(type, out info))
            && info.Kind == JsonTypeInfoKind.Object
            ? info
            : null;
    }

    /// <summary>Whether an answer or a request always holds a field.</summary>
    /// <param name="info">The type.</param>
    /// <param name="field">The field.</param>
    public static bool IsAlwaysThere(JsonTypeInfo info, JsonPropertyInfo field) =>
        IsRequest(info)
            ? field.IsRequired
            : field.AttributeProvider?.GetCustomAttributes(typeof(JsonIgnoreAttribute), false).Length is null or 0;

    /// <summary>Whether a field may be null.</summary>
    /// <param name="info">The type.</param>
    /// <param name="field">The field.</param>
    public static bool MayBeNull(JsonTypeInfo info, JsonPropertyInfo field) =>
        IsRequest(info) ? field.IsSetNullable : field.IsGetNullable && IsAlwaysThere(info, field);

    /// <inheritdoc/>
    public DataContract GetDataContractForType(Type type)
    {
        var bare = Nullable.GetUnderlyingType(type) ?? type;
        if (bare == typeof(Pair))
            return DataContract.ForArray(bare, typeof(double));
        if (bare == typeof(AnyValue))
            return DataContract.ForDynamic(bare);
        if (bare == typeof(TextOrNumber))
            return DataContract.ForPrimitive(bare, DataType.String, null);
        if (bare.IsEnum)
            return DataContract.ForPrimitive(bare, DataType.String, null, value => "\"" + WordOf(bare, value) + "\"");
        if (InfoOf(type) is not { } info)
            return Plain.GetDataContractForType(type);
        var fields = FieldsOf(info).Select(field => new DataProperty(
            field.Name,
            WrittenTypeOf(field),
            isRequired: IsAlwaysThere(info, field),
            isNullable: MayBeNull(info, field),
            memberInfo: field.AttributeProvider as MemberInfo));
        var extensions = type == typeof(Problem)
            ? ProblemExtensions.Select(extension => new DataProperty(extension.Key, extension.Value.Type))
            : [];
        return DataContract.ForObject(type, [.. fields, .. extensions]);
    }

    /// <summary>The fields that are declared; what a problem has besides is in <see cref="ProblemExtensions"/>.</summary>
    /// <param name="info">The type.</param>
    public static IEnumerable<JsonPropertyInfo> FieldsOf(JsonTypeInfo info) => info.Properties.Where(field => !field.IsExtensionData);

    /// <summary>Members that only some kinds of problem have, with their types and what they say.</summary>
    public static IReadOnlyDictionary<string, (Type Type, string Text)> ProblemExtensions { get; } =
        new Dictionary<string, (Type Type, string Text)>
        {
            ["impossible"] = (typeof(ImpossibleResult), "Why a form cannot be folded on the given tools; only where a program was asked for."),
        };

    private static Type WrittenTypeOf(JsonPropertyInfo field) =>
        field.AttributeProvider?.GetCustomAttributes(typeof(WrittenAsAttribute), false) is [WrittenAsAttribute written]
            ? written.Type
            : field.PropertyType;

    /// <summary>Whether a type is part of a request.</summary>
    /// <param name="info">The type.</param>
    public static bool IsRequest(JsonTypeInfo info) => ReferenceEquals(info.Options, WireTypes.Requests);

    private static string WordOf(Type type, object value) =>
        System.Text.Json.JsonNamingPolicy.KebabCaseLower.ConvertName(Enum.GetName(type, value)!);
}
