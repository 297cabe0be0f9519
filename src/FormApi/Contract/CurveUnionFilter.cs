using System.Text.Json.Nodes;
using FormApi.Features.Forms;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FormApi.Contract;

/// <summary>Writes the union of curves as a base with a discriminator and derived schemas that admit nothing else.</summary>
/// <remarks>
/// A base that forbids additional properties would validate nothing, and a bare <c>oneOf</c> makes client generators forget all kinds
/// but the first: so the derived schemas take the base in by <c>allOf</c> and close themselves with <c>unevaluatedProperties</c>.
/// </remarks>
internal sealed class CurveUnionFilter : IDocumentFilter
{
    /// <inheritdoc/>
    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        var union = FormRequestJson.Strict.CurveInput.PolymorphismOptions!;
        var schemas = swaggerDoc.Components!.Schemas!;
        var mapping = new Dictionary<string, OpenApiSchemaReference>();
        foreach (var kind in union.DerivedTypes)
        {
            var word = (string)kind.TypeDiscriminator!;
            context.SchemaGenerator.GenerateSchema(kind.DerivedType, context.SchemaRepository);
            var name = kind.DerivedType.Name;
            schemas[name] = Derive((OpenApiSchema)context.SchemaRepository.Schemas[name], word, union.TypeDiscriminatorPropertyName, swaggerDoc);
            mapping[word] = new OpenApiSchemaReference(name, swaggerDoc);
        }

        schemas[nameof(CurveInput)] = Base(union.TypeDiscriminatorPropertyName, mapping);
    }

    private static OpenApiSchema Base(string discriminator, Dictionary<string, OpenApiSchemaReference> mapping) => new()
    {
        Type = JsonSchemaType.Object,
        Description = XmlDocs.Summary(typeof(CurveInput)),
        Required = new HashSet<string> { discriminator },
        Properties = new Dictionary<string, IOpenApiSchema>
        {
            [discriminator] = new OpenApiSchema
            {
                Type = JsonSchemaType.String,
                Description = "Kind of curve.",
                Enum = [.. mapping.Keys.Select(word => JsonValue.Create(word))],
            },
        },
        Discriminator = new() { PropertyName = discriminator, Mapping = mapping },
    };

    private static OpenApiSchema Derive(OpenApiSchema plain, string word, string discriminator, OpenApiDocument document)
    {
        var properties = new Dictionary<string, IOpenApiSchema>
        {
            [discriminator] = new OpenApiSchema { Type = JsonSchemaType.String, Const = word },
        };
        foreach (var (name, schema) in plain.Properties ?? new Dictionary<string, IOpenApiSchema>())
            properties[name] = schema;
        return new()
        {
            Description = plain.Description,
            AllOf =
            [
                new OpenApiSchemaReference(nameof(CurveInput), document),
                new OpenApiSchema { Type = JsonSchemaType.Object, Required = plain.Required, Properties = properties },
            ],
            UnevaluatedProperties = false,
        };
    }
}
