using System.Globalization;
using System.Text.Json.Nodes;
using FormApi.Http.Links;
using FormApi.Http.Problems;
using FormApi.Http.Results;
using Microsoft.OpenApi;
using Swashbuckle.AspNetCore.SwaggerGen;

namespace FormApi.Contract;

/// <summary>Puts examples, titles of problems and the words of queries into the operations.</summary>
internal sealed class ContractOperationFilter : IOperationFilter
{
    /// <inheritdoc/>
    public void Apply(OpenApiOperation operation, OperationFilterContext context)
    {
        var name = operation.OperationId!;
        // Empty says that no key is asked for; left out would say that nobody thought of it.
        operation.Security = [];
        AddExamples(operation.RequestBody?.Content, name, "request");
        foreach (var (status, response) in operation.Responses ?? [])
        {
            if (status == "200")
            {
                response.Description = "The answer.";
                AddExamples(response.Content, name, "answer");
                var extra = context.ApiDescription.ActionDescriptor.EndpointMetadata.OfType<FilesToo>().SelectMany(files => files.Media);
                foreach (var media in response.Content!.Where(IsBytes).Select(media => media.Key).Concat(extra).ToArray())
                    response.Content![media] = File(media);
            }
            else if (status == "304")
            {
                response.Description = "The caller has it already.";
            }
            else if (response is OpenApiResponse own && own.Content?.ContainsKey(ProblemResult.MediaType) == true)
            {
                own.Description = own.Content?.ContainsKey(ProblemResult.MediaType) == true
                    ? string.Join("; ", TitlesOf(int.Parse(status, CultureInfo.InvariantCulture), operation.Responses!.ContainsKey("413"))) + "."
                    : "The answer of a service that cannot work now.";
            }
        }

        if (operation.RequestBody is OpenApiRequestBody body)
            body.Required = true;
        foreach (var parameter in operation.Parameters ?? [])
            Describe((OpenApiParameter)parameter, name);
    }

    private static bool IsBytes(KeyValuePair<string, IOpenApiMediaType> media) => media.Value.Schema?.Format == "byte";

    // Bytes as they are: the format "byte" would make clients look for base64.
    private static OpenApiMediaType File(string media) => new()
    {
        Schema = new OpenApiSchema { Type = JsonSchemaType.String, Format = IsText(media) ? null : "binary" },
    };

    private static bool IsText(string media) =>
        media.StartsWith("text/", StringComparison.Ordinal) || media.EndsWith("+xml", StringComparison.Ordinal);

    // What cannot be too large reads no request: only its query can be wrong.
    private static IEnumerable<string> TitlesOf(int status, bool readsRequest) => status == 400 && !readsRequest
        ? [ProblemKinds.BadRequest.Title]
        : ProblemKinds.All.Where(kind => kind.Status == status).Select(kind => kind.Title);

    private static void Describe(OpenApiParameter parameter, string operation)
    {
        switch (parameter.Name)
        {
            case "units":
                parameter.Description = "Units of the figures: `mm` (MPa, kg/m³) or `in` (psi, lb/in³). Default: `mm`.";
                parameter.Schema = new OpenApiSchema { Type = JsonSchemaType.String, Enum = [JsonValue.Create("mm"), JsonValue.Create("in")], Default = "mm" };
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

    private static void AddExamples(IDictionary<string, IOpenApiMediaType>? content, string operation, string part)
    {
        var examples = Examples.Of(operation, part).ToArray();
        if (examples.Length == 0 || content is null)
            return;
        foreach (var media in content.Values.OfType<OpenApiMediaType>())
        {
            media.Examples = examples.ToDictionary(
                example => example.Name,
                example => (IOpenApiExample)new OpenApiExample { Summary = example.Name.Replace('-', ' '), Value = example.Body.DeepClone() });
        }
    }
}
