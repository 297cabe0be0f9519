using System.Globalization;
using System.Text.Json.Nodes;
using FormApi.Features.Drawings;
using FormApi.Http.Links;
using FormApi.Http.Problems;
using FormApi.Http.Results;
using Forming.Drawing;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FormApi.Contract;

/// <summary>Puts examples, problems, headers and the words of queries into the operations.</summary>
internal sealed class ContractOperationFilter : IOperationFilter
{
    // A stream and a state of health are not named.
    private static readonly string[] Unnamed = ["computeBatch", "getLiveness", "getReadiness", "getStartup", "showLimits"];

    /// <inheritdoc/>
    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        var name = operation.OperationId!;
        // Empty says that no key is ever asked for; left out, that the contract's own rule holds.
        operation.Security = context.ApiDescription.RelativePath?.StartsWith("health/", StringComparison.Ordinal) == true ? [] : null;
        AddExamples(operation.RequestBody?.Content, Examples.FirstRequest(name));
        var readsBody = operation.RequestBody is not null;
        foreach (var (status, response) in (operation.Responses ?? []).ToArray())
        {
            if (status == "200")
            {
                response.Description = "The answer.";
                AddExamples(response.Content, Examples.ShortAnswer(name));
                var extra = context.ApiDescription.ActionDescriptor.EndpointMetadata.OfType<FilesToo>().SelectMany(files => files.Media);
                foreach (var media in response.Content!.Where(IsBytes).Select(media => media.Key).Concat(extra).ToArray())
                    response.Content![media] = File();
            }
            else if (status == "304")
            {
                response.Description = "The caller has it already.";
            }
            else if (response.Content?.ContainsKey(ProblemResult.MediaType) == true)
            {
                operation.Responses![status] = ProblemResponses.Refer(
                    context.Document, name, int.Parse(status, CultureInfo.InvariantCulture), readsBody);
            }
            else if (response is OpenApiResponse own)
            {
                own.Description = "The answer of a service that cannot work now.";
            }

            if (operation.Responses![status] is OpenApiResponse answer)
                answer.Headers = ResponseHeaders.Refer(
                    context.Document, HeadersOf(answer, isNamed: status is "200" or "304" && !Unnamed.Contains(name)));
        }

        if (operation.RequestBody is OpenApiRequestBody body)
            body.Required = true;
        SayOnce(operation.RequestBody?.Content);
        foreach (var response in operation.Responses!.Values.OfType<OpenApiResponse>())
            SayOnce(response.Content);
        foreach (var parameter in operation.Parameters ?? [])
            Describe((OpenApiParameter)parameter, name);
        AddPreference(operation);
    }

    private static void AddPreference(OpenApiOperation operation)
    {
        var isBatch = operation.OperationId == "computeBatch";
        var answer = (operation.Responses?["200"] as OpenApiResponse)?.Content?.Values
            .Select(media => media.Schema).OfType<OpenApiSchemaReference>()
            .Select(schema => MinimalSchemas.Answers().FirstOrDefault(type => type.Name == schema.Reference.Id))
            .FirstOrDefault(type => type is not null);
        if (answer is null && !isBatch)
            return;
        operation.Parameters ??= [];
        operation.Parameters.Add(new OpenApiParameter
        {
            Name = "Prefer",
            In = ParameterLocation.Header,
            Description = isBatch
                ? "`return=minimal` (RFC 7240): every answer is the short one of its operation."
                : $"`return=minimal` (RFC 7240): the answer is a `{MinimalSchemas.NameOf(answer!)}`.",
            Schema = new OpenApiSchema { Type = JsonSchemaType.String },
            Example = "return=minimal",
        });
    }

    // What a record is stands at the record.
    private static void SayOnce(IDictionary<string, IOpenApiMediaType>? content)
    {
        foreach (var media in content?.Values ?? [])
        {
            if (media.Schema is OpenApiSchemaReference reference)
                reference.Description = null;
        }
    }

    private static IEnumerable<string> HeadersOf(OpenApiResponse answer, bool isNamed)
    {
        if (isNamed)
            yield return ResponseHeaders.ETag;
        if (answer.Content?.Count > 0)
            yield return ResponseHeaders.ContentType;
        if (answer.Content?.Values.Any(IsFile) == true)
            yield return ResponseHeaders.ContentDisposition;
    }

    private static bool IsBytes(KeyValuePair<string, IOpenApiMediaType> media) => media.Value.Schema?.Format == "byte";

    private static bool IsFile(IOpenApiMediaType media) => media.Schema?.Format == "binary";

    // Bytes as they are, text or not: the format "byte" would make clients look for base64, and clients that have one type for all media
    // of an answer would read files as JSON text.
    private static OpenApiMediaType File() => new() { Schema = new OpenApiSchema { Type = JsonSchemaType.String, Format = "binary" } };

    private static void Describe(OpenApiParameter parameter, string operation)
    {
        switch (parameter.Name)
        {
            case "units":
                parameter.Description = "Units of the values: `mm` (MPa, kg/m³) or `in` (psi, lb/in³). Default: `mm`.";
                parameter.Schema = new OpenApiSchema
                {
                    Type = JsonSchemaType.String,
                    Enum = [JsonValue.Create("mm"), JsonValue.Create("in")],
                    Default = "mm",
                };
                parameter.Example = "mm";
                break;
            case "id":
                parameter.Description = "Id of the material.";
                parameter.Example = "ss-304";
                break;
            case "paper":
                parameter.Description = "Paper of a PDF. Default: A4 for requests in mm, Letter for requests in inches.";
                parameter.Schema = new OpenApiSchema { Type = JsonSchemaType.String, Enum = [JsonValue.Create("a4"), JsonValue.Create("letter")] };
                parameter.Example = "a4";
                break;
            case "part":
                parameter.Description = "The only part wanted, at 1:1; SVG, PDF and DXF. A taper has no check-template, rib, gauge-pulled or panel-card; cards, to fill in, no DXF. Default: the sheet, both blanks.";
                parameter.Schema = WordsOf<DrawingPart>();
                parameter.Example = "rib";
                break;
            case "layout":
                parameter.Description = "How much of a blank a PDF lays out at 1:1: a strip to mark by, or all. Default: `stick`; of a taper `full`.";
                parameter.Schema = WordsOf<BlankLayout>();
                parameter.Example = "full";
                break;
            case "step":
                parameter.Description = "Number of the only step wanted, from 1. Default: all.";
                parameter.Example = 1;
                break;
            case "request":
                parameter.Description = "The request: its JSON, deflated, in base64url; `links` in an answer has it ready.";
                parameter.Schema = new OpenApiSchema { Type = JsonSchemaType.String, MaxLength = LinkText.Longest, Pattern = "^[A-Za-z0-9_-]+$" };
                parameter.Example = operation == "openProgramLink" ? Examples.LinkTextIn("programBrake", "program") : Examples.LinkTextIn("computeForm", "form");
                break;
            case "table":
                parameter.Description = "Id of the only table whose values are listed; verdict, counts and tables stay those of all. Default: all.";
                parameter.Example = "bend-allowance-checks";
                break;
            case "code":
                parameter.Description = "The last part of the problem's type.";
                parameter.Example = ProblemKinds.InvalidValues.Code;
                break;
        }
    }

    private static OpenApiSchema WordsOf<T>()
        where T : struct, Enum => new()
        {
            Type = JsonSchemaType.String,
            Enum = [.. DrawingQuery.Words<T>().Select(word => JsonValue.Create(word))],
        };

    private static void AddExamples(IDictionary<string, IOpenApiMediaType>? content, IEnumerable<Example> examples)
    {
        foreach (var media in content?.Values.OfType<OpenApiMediaType>() ?? [])
        {
            var own = examples.ToDictionary(
                example => example.Name,
                example => (IOpenApiExample)new OpenApiExample
                {
                    Summary = example.Name.Replace('-', ' '),
                    Value = example.Body.DeepClone(),
                });
            if (own.Count > 0)
                media.Examples = own;
        }
    }
}
