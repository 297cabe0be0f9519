using System.Text.Json;
using System.Text.Json.Serialization;
using FormApi.Http.Json;
using FormApi.Http.Problems;

namespace FormApi.Features.Batches;

/// <summary>What a line of a batch asks for.</summary>
internal enum BatchOperation
{
    /// <summary>As POST /v1/forms.</summary>
    Form,

    /// <summary>As POST /v1/forms/prediction.</summary>
    Prediction,

    /// <summary>As POST /v1/programs.</summary>
    Program,

    /// <summary>As POST /v1/estimates.</summary>
    Estimate,

    /// <summary>As POST /v1/panels/corrections.</summary>
    Correction,
}

/// <summary>One line of a batch.</summary>
/// <param name="Operation">What is asked for.</param>
/// <param name="Request">The request, as the operation alone takes it.</param>
/// <param name="Id">The caller's own name for the line, text or a number, given back with its answer. Default: null.</param>
internal sealed record BatchLine(BatchOperation Operation, JsonElement Request, TextOrNumber? Id = null);

/// <summary>The answer to one line of a batch; answers are in the order of the lines.</summary>
/// <param name="Line">Number of the line in the body, from 1; empty lines count and are not answered.</param>
/// <param name="Id">The caller's own name for the line, or null.</param>
/// <param name="Status">The HTTP status that the operation alone answers with.</param>
/// <param name="Answer">The answer of the operation; only with status 200.</param>
/// <param name="Problem">What went wrong with this line; only with other statuses. Pointers start at the line, so that a fault in the
/// request begins with <c>/request</c>.</param>
/// <param name="ResumeFrom">Only where the service is stopped: the line to begin the next batch with.</param>
internal sealed record BatchLineAnswer(
    int Line,
    TextOrNumber? Id,
    int Status,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] JsonElement? Answer,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Problem? Problem,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? ResumeFrom);
