using System.Text.Json.Serialization.Metadata;
using FormApi.Http.Json;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FormApi.Contract;

/// <summary>
/// A schema of its own for every short answer: the full one without the fields that are left out, and nothing required, because what holds
/// nothing is left out too. The full schema describes the fields.
/// </summary>
internal sealed class MinimalSchemas : IDocumentFilter
{
    private const string Prefix = "Minimal";

    /// <summary>Name of the schema of a short answer.</summary>
    /// <param name="answer">Type of the answer.</param>
    public static string NameOf(Type answer) => Prefix + answer.Name;

    /// <inheritdoc/>
    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        var schemas = swaggerDoc.Components!.Schemas!;
        foreach (var answer in Answers())
            MinimalOf(answer, swaggerDoc, schemas);
    }

    /// <summary>The answers that can be had short.</summary>
    public static IReadOnlyList<Type> Answers() => [.. typeof(MinimalSchemas).Assembly.GetTypes()
        .Where(type => type.Name.EndsWith("Answer", StringComparison.Ordinal)
            && WireContractResolver.InfoOf(type) is { } info && info.Properties.Any(field => ShortAnswers.IsInFull(field))
            && info.Properties.Any(field => field.Name == "fingerprint"))
        .OrderBy(type => type.Name, StringComparer.Ordinal)];

    // Name of the short schema, or null where a type is the same short.
    private static string? MinimalOf(Type type, OpenApiDocument document, IDictionary<string, IOpenApiSchema> schemas)
    {
        if (WireContractResolver.InfoOf(type) is not { } info || schemas[type.Name] is not OpenApiSchema full || !Differs(type, []))
            return null;
        var name = NameOf(type);
        if (schemas.ContainsKey(name))
            return name;
        var kept = info.Properties.Where(field => !ShortAnswers.IsInFull(field)).ToArray();
        var properties = new Dictionary<string, IOpenApiSchema>();
        schemas[name] = new OpenApiSchema
        {
            Type = JsonSchemaType.Object,
            Description = $"`{type.Name}` for `Prefer: return=minimal`.",
            Properties = properties,
        };
        foreach (var field in kept)
            properties[field.Name] = ShortField(full.Properties![field.Name], field, document, schemas);
        return name;
    }

    private static IOpenApiSchema ShortField(
        IOpenApiSchema full, JsonPropertyInfo field, OpenApiDocument document, IDictionary<string, IOpenApiSchema> schemas)
    {
        if (MinimalOf(ItemOf(field.PropertyType), document, schemas) is not { } name)
            return WithoutWords(full);
        var item = new OpenApiSchemaReference(name, document);
        return field.PropertyType.IsArray ? new OpenApiSchema { Type = JsonSchemaType.Array, Items = item } : item;
    }

    private static IOpenApiSchema WithoutWords(IOpenApiSchema full)
    {
        var copy = full.CreateShallowCopy();
        copy.Description = null;
        if (copy is OpenApiSchema { OneOf: [OpenApiSchemaReference reference, _] })
            return new OpenApiSchemaReference(reference.Reference.Id!, reference.Reference.HostDocument);
        if (copy is OpenApiSchema own)
            own.Type &= ~JsonSchemaType.Null;
        return copy;
    }

    private static bool Differs(Type type, HashSet<Type> seen) =>
        seen.Add(type) && WireContractResolver.InfoOf(type) is { } info && info.Properties.Any(field =>
            ShortAnswers.IsInFull(field) || Differs(ItemOf(field.PropertyType), seen));

    private static Type ItemOf(Type type) => type.GetElementType() ?? Nullable.GetUnderlyingType(type) ?? type;
}
