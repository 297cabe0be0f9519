using System.Reflection;
using System.Text.Json;
using System.Text.Unicode;
using FluentValidation.Results;
using FormApi.Http.Json;
using FormApi.Http.Problems;
using FormApi.Http.Results;
using FormApi.Http.Units;
using Forming.Results;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Http.Metadata;

namespace FormApi.Http.Requests;

/// <summary>A body that was read and checked, or the problem with it.</summary>
/// <typeparam name="T">What the body should be.</typeparam>
/// <param name="value">The body, or null with a problem.</param>
/// <param name="problem">The problem, or null with a body.</param>
/// <param name="utf8">The body as received.</param>
internal sealed class JsonBody<T>(T? value, ProblemResult? problem, ReadOnlyMemory<byte> utf8) : BoundBody(problem),
IEndpointParameterMetadataProvider
    where T : class, IRequestBody<T>
{
    private const int MostFaults = 100;

    private static readonly string Kind =
        JsonNamingPolicy.KebabCaseLower.ConvertName(typeof(T).Name.Replace("Request", "", StringComparison.Ordinal));

    /// <summary>The body; only where there is no problem.</summary>
    public T Value => value!;

    /// <summary>The value at a pointer of the body as received, or null where there is none.</summary>
    /// <param name="pointer">Where (RFC 6901).</param>
    public JsonElement? GivenAt(string pointer) => GivenAt(utf8, pointer);

    /// <summary>The answer to the body, or the problem in its way: with the body, or with what it asks for.</summary>
    /// <typeparam name="TAnswer">Type of the answer.</typeparam>
    /// <param name="answer">Answers a body that passed its rules; throws where there is no answer.</param>
    public Results<TAnswer, ProblemResult> Answer<TAnswer>(Func<T, TAnswer> answer)
        where TAnswer : IResult => AnswerOrRefuse<TAnswer>(body => answer(body));

    /// <summary>The answer to the body, or the problem in its way: with the body, with what it asks for, or with what came out.</summary>
    /// <typeparam name="TAnswer">Type of the answer.</typeparam>
    /// <param name="answer">Answers or refuses a body that passed its rules; throws where there is no answer.</param>
    public Results<TAnswer, ProblemResult> AnswerOrRefuse<TAnswer>(Func<T, Results<TAnswer, ProblemResult>> answer)
        where TAnswer : IResult
    {
        var ended = EndOf(answer);
        Calculations.Count(Kind, CalculationOutcome.Of(ended));
        return ended;
    }

    private Results<TAnswer, ProblemResult> EndOf<TAnswer>(Func<T, Results<TAnswer, ProblemResult>> answer)
        where TAnswer : IResult
    {
        if (Problem is not null)
            return Problem;
        try
        {
            return answer(value!);
        }
        catch (NoSolutionException none)
        {
            return NoSolutionProblem.Of(none, this, UnitSystem.Of(value!.Units));
        }
    }

    /// <inheritdoc/>
    static void IEndpointParameterMetadataProvider.PopulateMetadata(ParameterInfo parameter, EndpointBuilder builder)
    {
        builder.Metadata.Add(new AcceptsMetadata([MediaTypes.Json], typeof(T)));
        ProblemMetadata.Add(builder, 400, 408, 413, 415, 422);
    }

    /// <summary>Reads and checks the body of a request.</summary>
    /// <param name="context">The request.</param>
    public static async ValueTask<JsonBody<T>> BindAsync(HttpContext context)
    {
        if (!RequestMedia.Is(context.Request, MediaTypes.Json))
        {
            return IsEmpty(context.Request) ? Misshapen(default) : new(null, RequestMedia.Refusal(context, MediaTypes.Json), default);
        }

        var (body, problem) = await WholeBody.ReadAsync(context);
        return problem is null ? Of(body) : new(null, problem, default);
    }

    private static bool IsEmpty(HttpRequest request) =>
        string.IsNullOrEmpty(request.ContentType) && (request.ContentLength ?? 0) == 0 && request.Headers.TransferEncoding.Count == 0;

    /// <summary>Reads and checks a body.</summary>
    /// <param name="utf8">The body.</param>
    public static JsonBody<T> Of(ReadOnlyMemory<byte> utf8)
    {
        if (utf8.Span.StartsWith("\uFEFF"u8))
            utf8 = utf8[3..];
        // The reader looks at texts only where it is asked for them: what is kept as it was sent would break later.
        if (!Utf8.IsValid(utf8.Span))
            return Misshapen(utf8);
        var read = Read(utf8);
        if (read is null && WrittenByPeople.Reworded(utf8, T.TypeInfo) is { } reworded)
        {
            if (Read(reworded) is not { } meant)
                return Misshapen(reworded);
            read = meant;
        }

        if (read is null || read.HasNullItems)
            return Misshapen(utf8);
        return read.MissingField is { } pointer ? Missing(pointer, utf8) : Check(read, utf8);
    }

    private static T? Read(ReadOnlyMemory<byte> utf8)
    {
        try
        {
            return JsonSerializer.Deserialize(utf8.Span, T.TypeInfo);
        }
        catch (Exception unreadable) when (
            unreadable is JsonException or NotSupportedException or InvalidOperationException or ArgumentException)
        {
            return null;
        }
    }

    private static JsonBody<T> Missing(string pointer, ReadOnlyMemory<byte> utf8)
    {
        var fault = new Fault(pointer, ProblemKinds.MissingField.Code, "The field is missing.", null, BodyFaults.WordsAt(T.TypeInfo, pointer));
        return new(null, new(ProblemKinds.MissingField, $"{pointer}: {fault.Text}", [fault]), utf8);
    }

    private static JsonBody<T> Misshapen(ReadOnlyMemory<byte> utf8) => new(null, BodyFaults.ProblemOf(utf8, T.TypeInfo), utf8);

    private static JsonBody<T> Check(T read, ReadOnlyMemory<byte> utf8)
    {
        var result = read.Check();
        if (result.IsValid)
            return new(read, null, utf8);
        using var document = JsonDocument.Parse(utf8);
        var faults = result.Errors.Take(MostFaults).Select(failure => FaultOf(failure, document.RootElement)).ToArray();
        var detail = faults.Length == 1
            ? $"{faults[0].Pointer}: {faults[0].Text}"
            : $"{result.Errors.Count} values cannot be used.";
        return new(null, new(ProblemKinds.InvalidValues, detail, faults), utf8);
    }

    private static Fault FaultOf(ValidationFailure failure, JsonElement body)
    {
        var pointer = Wire.Pointer(failure.PropertyName);
        return new(pointer, failure.ErrorCode, failure.ErrorMessage, Excerpt.At(body, pointer), (string?)failure.CustomState);
    }

    private static JsonElement? GivenAt(ReadOnlyMemory<byte> utf8, string pointer)
    {
        using var document = JsonDocument.Parse(utf8);
        return Excerpt.At(document.RootElement, pointer);
    }
}
