using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using FormApi.Http.Json;
using FormApi.Http.Problems;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FormApi.Contract;

/// <summary>Puts descriptions, ranges and strictness into the schemas.</summary>
internal sealed class ContractSchemaFilter : ISchemaFilter
{
    /// <inheritdoc/>
    public void Apply(IOpenApiSchema schema, SchemaFilterContext context)
    {
        if (schema is not OpenApiSchema own)
            return;
        var bare = Nullable.GetUnderlyingType(context.Type) ?? context.Type;
        if (bare == typeof(Pair))
            (own.MinItems, own.MaxItems) = (2, 2);
        if (bare == typeof(TextOrNumber))
            own.Type = JsonSchemaType.String | JsonSchemaType.Number;
        // Every number is a double, every integer an int; to say so each time says nothing.
        if (own.Format is "double" or "int32")
            own.Format = null;
        if (context.MemberInfo is not null || context.ParameterInfo is not null)
            return;
        if (bare.IsEnum)
            own.Description = XmlDocs.Summary(bare);
        if (WireContractResolver.InfoOf(bare) is not { } info)
            return;
        own.Description = XmlDocs.Summary(info.Type);
        // An answer may gain fields within a version; a request may not hold what is not known.
        own.AdditionalPropertiesAllowed = !WireContractResolver.IsRequest(info);
        own.Required = WireContractResolver.FieldsOf(info)
            .Where(field => WireContractResolver.IsAlwaysThere(info, field))
            .Select(field => field.Name)
            .ToHashSet();
        if (own.Properties is not { } properties)
            return;
        foreach (var field in WireContractResolver.FieldsOf(info))
            properties[field.Name] = Describe(properties[field.Name], info, field);
        if (info.Type == typeof(Problem) || info.Type == typeof(ProblemKind))
            ((OpenApiSchema)properties["code"]).Enum = [.. ProblemKinds.All.Select(kind => (JsonNode)kind.Code)];
        if (bare != typeof(Problem))
            return;
        foreach (var (name, (_, text)) in WireContractResolver.ProblemExtensions)
            properties[name].Description = text;
    }

    private static IOpenApiSchema Describe(IOpenApiSchema schema, JsonTypeInfo info, JsonPropertyInfo field)
    {
        var ranges = FieldRanges.Of(info.Type, field.Name);
        var text = XmlDocs.Field(info.Type, field.Name);
        if (!AreInSchema(ranges))
            text = $"{text} Range: {string.Join("; ", ranges.OrderBy(range => range.Where is not null).Select(TextOf).Distinct())}.";
        var nullable = WireContractResolver.MayBeNull(info, field);
        if (schema is OpenApiSchemaReference reference)
        {
            if (!nullable)
            {
                reference.Description = text;
                return reference;
            }

            // What the record is stands at the record; here stands what it is for.
            reference.Description = null;
            return new OpenApiSchema { Description = text, OneOf = [reference, new OpenApiSchema { Type = JsonSchemaType.Null }] };
        }

        var own = (OpenApiSchema)schema;
        own.Description = text;
        if (own.Items is OpenApiSchemaReference item)
            item.Description = null;
        own.Type = nullable ? own.Type | JsonSchemaType.Null : own.Type & ~JsonSchemaType.Null;
        if (ranges.Count > 0)
            SetRange(own, ranges);
        return own;
    }

    // One range in both unit systems is said by minimum and maximum, or by the counts of items.
    private static bool AreInSchema(IReadOnlyList<AllowedRange> ranges) =>
        ranges.Count == 0 || (ranges is [{ Where: null } only] && only.Text(UnitSystem.Mm) == only.Text(UnitSystem.Inch));

    private static string TextOf(AllowedRange range)
    {
        var (mm, inch) = (range.Text(UnitSystem.Mm), range.TextWithin(UnitSystem.Inch));
        return (mm == inch ? mm : $"{mm}, or {inch}") + (range.Where is null ? "" : " " + range.Where);
    }

    // A schema knows no units: it admits what either system admits, and the rules are stricter.
    private static void SetRange(OpenApiSchema schema, IReadOnlyList<AllowedRange> ranges)
    {
        var min = ranges.Min(range => Math.Min(range.MinIn(UnitSystem.Mm), range.MinIn(UnitSystem.Inch)));
        var max = ranges.Max(range => Math.Max(range.MaxIn(UnitSystem.Mm), range.MaxIn(UnitSystem.Inch)));
        if (schema.Type?.HasFlag(JsonSchemaType.Array) == true)
        {
            (schema.MinItems, schema.MaxItems) = ((int)min, (int)max);
            return;
        }

        if (ranges.All(range => range.AboveMin))
            schema.ExclusiveMinimum = Text(min);
        else
            schema.Minimum = Text(min);
        schema.Maximum = Text(max);
    }

    private static string Text(double value) => value.ToString("0.#########", CultureInfo.InvariantCulture);
}
