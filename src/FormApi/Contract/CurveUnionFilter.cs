using System.Text.Json.Nodes;
using FormApi.Features.Forms;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FormApi.Contract;

/// <summary>Writes the union of curves so that validators and every kind of generator read the same kinds from it.</summary>
/// <remarks>
/// Generators of classes need a base with a discriminator and kinds that take it in by <c>allOf</c>. Validators and generators of
/// structural types need the base itself to say what each kind holds; naming the kinds there would go round in a circle, so the base
/// takes in a schema that spells their shapes out and bars in them what does not belong. There the shapes are in an <c>anyOf</c> beside
/// null: generators of classes would take a union of objects at the top for the type itself. No null comes through, for that schema admits
/// objects only. The kinds do not repeat the discriminator as a property, which would be written twice; they bar other words.
/// </remarks>
internal sealed class CurveUnionFilter : IDocumentFilter
{
    private const string Shapes = "CurveShape";

    /// <inheritdoc/>
    public void Apply(OpenApiDocument swaggerDoc, DocumentFilterContext context)
    {
        var union = FormRequestJson.Strict.CurveInput.PolymorphismOptions!;
        var discriminator = union.TypeDiscriminatorPropertyName;
        var schemas = swaggerDoc.Components!.Schemas!;
        var mapping = new Dictionary<string, OpenApiSchemaReference>();
        var shapes = new List<IOpenApiSchema>();
        foreach (var kind in union.DerivedTypes)
        {
            var word = (string)kind.TypeDiscriminator!;
            context.SchemaGenerator.GenerateSchema(kind.DerivedType, context.SchemaRepository);
            var name = kind.DerivedType.Name;
            var plain = (OpenApiSchema)context.SchemaRepository.Schemas[name];
            shapes.AddRange(ShapesOf(kind.DerivedType, plain, word, discriminator));
            schemas[name] = Derive(plain, word, discriminator, swaggerDoc);
            mapping[word] = new OpenApiSchemaReference(name, swaggerDoc);
        }

        var properties = new Dictionary<string, IOpenApiSchema>
        {
            [discriminator] = new OpenApiSchema
            {
                Type = JsonSchemaType.String,
                Description = "Kind of curve.",
                Enum = [.. mapping.Keys.Select(word => JsonValue.Create(word))],
            },
        };
        schemas[Shapes] = new OpenApiSchema
        {
            Type = JsonSchemaType.Object,
            Description = "What each kind of curve contains.",
            Required = new HashSet<string> { discriminator },
            Properties = properties,
            OneOf = [new OpenApiSchema { Type = JsonSchemaType.Object, AnyOf = shapes }, new OpenApiSchema { Type = JsonSchemaType.Null }],
        };
        schemas[nameof(CurveInput)] = new OpenApiSchema
        {
            Type = JsonSchemaType.Object,
            Description = XmlDocs.Summary(typeof(CurveInput)),
            Required = new HashSet<string> { discriminator },
            Properties = properties,
            AllOf = [new OpenApiSchemaReference(Shapes, swaggerDoc)],
            Discriminator = new() { PropertyName = discriminator, Mapping = mapping },
        };
    }

    // A kind that can be given in several ways has a shape for each, with what that way needs and the fields that go with any.
    private static IEnumerable<OpenApiSchema> ShapesOf(Type kind, OpenApiSchema plain, string word, string discriminator)
    {
        var ways = kind == typeof(ArcInput) ? MeasuredCurves.WaysOfArc
            : kind == typeof(ProgressiveInput) ? MeasuredCurves.WaysOfProgressive
            : [[]];
        var chosen = ways.SelectMany(way => way).ToHashSet();
        return ways.Select(way => Shape(
            new()
            {
                Required = new HashSet<string>([.. plain.Required ?? new HashSet<string>(), .. way]),
                Properties = plain.Properties?.Where(field => !chosen.Contains(field.Key) || way.Contains(field.Key)).ToDictionary(),
            },
            word,
            discriminator));
    }

    private static OpenApiSchema Shape(OpenApiSchema plain, string word, string discriminator)
    {
        var properties = new Dictionary<string, IOpenApiSchema>
        {
            [discriminator] = new OpenApiSchema { Type = JsonSchemaType.String, Const = word },
        };
        foreach (var (name, schema) in plain.Properties ?? new Dictionary<string, IOpenApiSchema>())
            properties[name] = WithoutWords(schema);
        return new()
        {
            Type = JsonSchemaType.Object,
            Required = new HashSet<string>([discriminator, .. plain.Required ?? new HashSet<string>()]),
            Properties = properties,
            AdditionalPropertiesAllowed = false,
        };
    }

    // The kind's own schema describes the field, and holds its range.
    private static IOpenApiSchema WithoutWords(IOpenApiSchema schema)
    {
        var copy = schema.CreateShallowCopy();
        copy.Description = null;
        if (copy is OpenApiSchema own)
            (own.Minimum, own.Maximum, own.ExclusiveMinimum, own.Format) = (null, null, null, null);
        return copy;
    }

    private static OpenApiSchema Derive(OpenApiSchema plain, string word, string discriminator, OpenApiDocument document) => new()
    {
        Description = plain.Description,
        AllOf =
        [
            new OpenApiSchemaReference(nameof(CurveInput), document),
            new OpenApiSchema { Type = JsonSchemaType.Object, Required = plain.Required, Properties = plain.Properties },
        ],
        Not = new OpenApiSchema
        {
            Properties = new Dictionary<string, IOpenApiSchema>
            {
                [discriminator] = new OpenApiSchema { Not = new OpenApiSchema { Const = word } },
            },
        },
        UnevaluatedProperties = false,
    };
}
