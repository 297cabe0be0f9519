using System.Text.Json.Nodes;
using FormApi.Http.Problems;
using Microsoft.OpenApi;

namespace FormApi.Contract;

/// <summary>The problems an operation may answer with, said once for all operations that have the same ones.</summary>
internal static class ProblemResponses
{
    private static readonly ProblemKind[] BodyFaults =
    [
        ProblemKinds.EmptyBody, ProblemKinds.MalformedJson, ProblemKinds.TooDeep, ProblemKinds.UnknownField, ProblemKinds.MissingField,
        ProblemKinds.DuplicatedField, ProblemKinds.WrongType, ProblemKinds.NullNotAllowed, ProblemKinds.UnknownValue,
    ];

    private static readonly ProblemKind[] ValueFaults = [ProblemKinds.InvalidValues, ProblemKinds.NoSolution];

    /// <summary>Puts a response among the shared ones and refers to it.</summary>
    /// <param name="document">The contract.</param>
    /// <param name="operation">Name of the operation.</param>
    /// <param name="status">HTTP status.</param>
    /// <param name="readsBody">Whether the operation reads a body.</param>
    public static OpenApiResponseReference Refer(OpenApiDocument document, string operation, int status, bool readsBody)
    {
        var (name, kinds) = KindsOf(operation, status, readsBody);
        document.Components ??= new();
        document.Components.Responses ??= new Dictionary<string, IOpenApiResponse>();
        document.Components.Responses.TryAdd(name, Response(document, status, kinds));
        return new(name, document);
    }

    /// <summary>A problem as it may be answered: a constant.</summary>
    /// <param name="kind">Its kind.</param>
    public static JsonObject ExampleOf(ProblemKind kind)
    {
        var (detail, fault) = ProblemExamples.Of(kind);
        var problem = new JsonObject
        {
            ["type"] = "/problems/" + kind.Code,
            ["title"] = kind.Title,
            ["status"] = kind.Status,
            ["detail"] = detail,
            ["instance"] = ProblemExamples.PathOf(kind),
            ["code"] = kind.Code,
            ["traceId"] = ProblemExamples.TraceId,
        };
        if (fault is not null)
            problem["errors"] = new JsonArray(fault.DeepClone());
        return problem;
    }

    private static (string Name, ProblemKind[] Kinds) KindsOf(string operation, int status, bool readsBody)
    {
        var isLink = operation.EndsWith("Link", StringComparison.Ordinal);
        return (status, operation) switch
        {
            (400, _) when isLink => ("BadLink", [ProblemKinds.BrokenLink, .. BodyFaults, ProblemKinds.BadRequest]),
            (400, _) when readsBody => ("BadBody", [.. BodyFaults, ProblemKinds.BadRequest]),
            (400, _) => ("BadQuery", [ProblemKinds.BadRequest]),
            (503, "computeBatch") => ("Stopping", [ProblemKinds.Stopping]),
            (422, "drawForm" or "openDrawingLink") => ("NotDrawn", [.. ValueFaults, ProblemKinds.CannotBeMade]),
            (422, "programBrake" or "openProgramLink") =>
                ("NotProgrammed", [.. ValueFaults, ProblemKinds.CannotBeMade, ProblemKinds.ProgramImpossible, ProblemKinds.ProgramNotFound]),
            (422, _) => ("BadValues", ValueFaults),
            _ => (NameOf(status), [ProblemKinds.OfStatus(status)]),
        };
    }

    private static string NameOf(int status) => string.Concat(
        ProblemKinds.OfStatus(status).Code.Split('-').Select(word => char.ToUpperInvariant(word[0]) + word[1..]));

    private static OpenApiResponse Response(OpenApiDocument document, int status, ProblemKind[] kinds) => new()
    {
        Description = string.Join("; ", kinds.Select(kind => kind.Title)) + ".",
        Headers = ResponseHeaders.Refer(
            document, status is 429 or 503 ? [ResponseHeaders.ContentType, ResponseHeaders.RetryAfter] : [ResponseHeaders.ContentType]),
        Content = new Dictionary<string, IOpenApiMediaType>
        {
            [ProblemResult.MediaType] = new OpenApiMediaType
            {
                Schema = new OpenApiSchemaReference(nameof(Problem), document),
                Examples = kinds.ToDictionary(kind => kind.Code, kind => (IOpenApiExample)ReferToExample(document, kind)),
            },
        },
    };

    // Many a problem is among several responses.
    private static OpenApiExampleReference ReferToExample(OpenApiDocument document, ProblemKind kind)
    {
        document.Components!.Examples ??= new Dictionary<string, IOpenApiExample>();
        document.Components.Examples.TryAdd(kind.Code, new OpenApiExample { Summary = kind.Title, Value = ExampleOf(kind) });
        return new OpenApiExampleReference(kind.Code, document);
    }
}
