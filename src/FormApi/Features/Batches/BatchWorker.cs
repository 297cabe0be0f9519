using System.Buffers;
using System.Runtime.InteropServices;
using System.Text.Json;
using FormApi.Features.Corrections;
using FormApi.Features.Estimates;
using FormApi.Features.Forms;
using FormApi.Features.Predictions;
using FormApi.Features.Programs;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Results;

namespace FormApi.Features.Batches;

/// <summary>Answers single lines of a batch; nothing that a line holds, and no bug it meets, reaches the others.</summary>
/// <param name="limits">The limits.</param>
/// <param name="instance">Path of the batch.</param>
/// <param name="traceId">Trace id of the batch.</param>
/// <param name="isMinimal">Whether answers are to be short.</param>
/// <param name="logger">Where bugs are logged.</param>
internal sealed class BatchWorker(Limits limits, string instance, string traceId, bool isMinimal, ILogger logger)
{
    private const string Within = "/request";

    /// <summary>Answers a line.</summary>
    /// <param name="number">Its number.</param>
    /// <param name="utf8">Its text.</param>
    /// <param name="output">Where to; ends with a line break.</param>
    /// <param name="cancellation">The caller has gone.</param>
    public void Answer(int number, ReadOnlyMemory<byte> utf8, ArrayBufferWriter<byte> output, CancellationToken cancellation)
    {
        // A file may begin with a byte order mark.
        if (number == 1 && utf8.Span.StartsWith("\uFEFF"u8))
            utf8 = utf8[3..];
        var (line, problem) = Read(utf8);
        using var deadline = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        deadline.CancelAfter(TimeSpan.FromSeconds(limits.Seconds));
        try
        {
            if (line is null)
            {
                Write(number, IdIn(utf8), problem!, "", output);
                return;
            }

            switch (Compute(line.Operation, JsonMarshal.GetRawUtf8Value(line.Request).ToArray(), deadline.Token).Innermost())
            {
                case AnswerResult answer:
                    Write(number, line.Id, answer, output);
                    break;
                case ProblemResult refused:
                    Write(number, line.Id, refused, Within, output);
                    break;
                case var other:
                    throw new NotSupportedException($"A line cannot hold a {other.GetType().Name}.");
            }
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            Write(number, line?.Id, ProblemResult.TooSlow(limits), "", output);
        }
        // A bug in one line must not take the others with it; it is reported as a bug.
        catch (Exception bug) when (bug is not OperationCanceledException)
        {
            BatchLog.LineFailed(logger, bug, number);
            // Half an answer may be there already.
            output.ResetWrittenCount();
            Write(number, line?.Id, new(ProblemKinds.Bug), "", output);
        }
    }

    /// <summary>Refuses a line unread.</summary>
    /// <param name="number">Its number.</param>
    /// <param name="problem">Why.</param>
    /// <param name="output">Where to; ends with a line break.</param>
    /// <param name="resumeFrom">The line to go on from later, or null.</param>
    public void Refuse(int number, ProblemResult problem, IBufferWriter<byte> output, int? resumeFrom = null) =>
        Write(number, null, problem, "", output, resumeFrom);

    private IResult Compute(
        BatchOperation operation, ReadOnlyMemory<byte> request, CancellationToken cancellation) => operation switch
        {
            BatchOperation.Form => FormsEndpoint.Compute(JsonBody<FormRequest>.Of(request), isMinimal, cancellation),
            BatchOperation.Prediction => PredictionsEndpoint.Predict(JsonBody<PredictionRequest>.Of(request), cancellation),
            BatchOperation.Program => ProgramsEndpoint.Compute(JsonBody<ProgramRequest>.Of(request), cancellation),
            BatchOperation.Estimate => EstimatesEndpoint.Compute(JsonBody<EstimateRequest>.Of(request), cancellation),
            BatchOperation.Correction => CorrectionsEndpoint.Correct(JsonBody<PanelCorrectionRequest>.Of(request), cancellation),
            _ => throw new ArgumentOutOfRangeException(nameof(operation)),
        };

    private static (BatchLine? Line, ProblemResult? Problem) Read(ReadOnlyMemory<byte> utf8)
    {
        try
        {
            var read = JsonSerializer.Deserialize(utf8.Span, BatchRequestJson.Strict.BatchLine);
            if (read is { Request.ValueKind: JsonValueKind.Object } line)
                return (line, null);
        }
        catch (JsonException)
        {
            // Named below, on the slow path.
        }

        return (null, BodyFaults.ProblemOf(utf8, BatchRequestJson.Strict.BatchLine));
    }

    // A line that cannot be read may still say whose it is.
    private static TextOrNumber? IdIn(ReadOnlyMemory<byte> utf8)
    {
        try
        {
            using var document = JsonDocument.Parse(utf8);
            return document.RootElement is { ValueKind: JsonValueKind.Object } root
                && root.TryGetProperty("id", out var id) && TextOrNumber.IsOne(id)
                ? new(id.GetRawText())
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private void Write(int number, TextOrNumber? id, AnswerResult answer, IBufferWriter<byte> output)
    {
        using var writer = Begin(number, id, StatusCodes.Status200OK, "answer", output);
        answer.Write(writer, isMinimal);
        End(writer, output);
    }

    private void Write(
        int number, TextOrNumber? id, ProblemResult problem, string within, IBufferWriter<byte> output, int? resumeFrom = null)
    {
        using var writer = Begin(number, id, problem.Kind.Status, "problem", output);
        JsonSerializer.Serialize(writer, problem.ToProblem(instance, traceId, within), ProblemJson.Default.Problem);
        if (resumeFrom is { } line)
            writer.WriteNumber("resumeFrom"u8, line);
        End(writer, output);
    }

    private static Utf8JsonWriter Begin(int number, TextOrNumber? id, int status, string what, IBufferWriter<byte> output)
    {
        var writer = new Utf8JsonWriter(output, WireJson.Writing);
        writer.WriteStartObject();
        writer.WriteNumber("line"u8, number);
        writer.WritePropertyName("id"u8);
        if (id is { } name)
            writer.WriteRawValue(name.Json);
        else
            writer.WriteNullValue();
        writer.WriteNumber("status"u8, status);
        writer.WritePropertyName(what);
        return writer;
    }

    private static void End(Utf8JsonWriter writer, IBufferWriter<byte> output)
    {
        writer.WriteEndObject();
        writer.Flush();
        output.Write("\n"u8);
    }
}
