using System.Buffers;
using System.Diagnostics;
using System.IO.Pipelines;
using FormApi.Http.Problems;
using Microsoft.Extensions.Options;

namespace FormApi.Http.Requests;

/// <summary>A body read to its end: no larger and no slower than the limits allow.</summary>
internal static class WholeBody
{
    /// <summary>Reads the body of a request.</summary>
    /// <param name="context">The request.</param>
    /// <returns>The body, or the problem with it; a caller who broke off is answered too, though it may not be there any more.</returns>
    public static async ValueTask<(ReadOnlyMemory<byte> Utf8, ProblemResult? Problem)> ReadAsync(HttpContext context)
    {
        var limits = context.RequestServices.GetRequiredService<IOptions<Limits>>().Value;
        if (context.Request.ContentLength > limits.BodyBytes)
            return (default, TooLarge(limits));
        try
        {
            return await ReadAsync(context.Request.BodyReader, limits, context.RequestAborted) is { } body
                ? (body, null)
                : (default, TooLarge(limits));
        }
        catch (TimeoutException)
        {
            return (default, TooSlow(limits));
        }
        catch (BadHttpRequestException refused)
        {
            return (
                default,
                refused.StatusCode == StatusCodes.Status413PayloadTooLarge
                    ? TooLarge(limits)
                    : new(ProblemKinds.OfStatus(refused.StatusCode)));
        }
        catch (InvalidDataException)
        {
            return (default, new(ProblemKinds.BadRequest, "The body is not compressed as Content-Encoding says."));
        }
        catch (IOException)
        {
            return (default, new(ProblemKinds.BadRequest, "The body breaks the rules of HTTP, or broke off."));
        }
    }

    // The whole body, or null where it is larger than the limit.
    private static async ValueTask<ReadOnlyMemory<byte>?> ReadAsync(PipeReader reader, Limits limits, CancellationToken gone)
    {
        var started = Stopwatch.GetTimestamp();
        var length = 0L;
        while (true)
        {
            var read = await reader.ReadWithinAsync(limits.BodyTime(length) - Stopwatch.GetElapsedTime(started), gone);
            var buffer = read.Buffer;
            length = buffer.Length;
            if (length > limits.BodyBytes)
            {
                reader.AdvanceTo(buffer.End);
                return null;
            }

            if (read.IsCompleted)
            {
                var body = buffer.ToArray();
                reader.AdvanceTo(buffer.End);
                return body;
            }

            reader.AdvanceTo(buffer.Start, buffer.End);
        }
    }

    private static ProblemResult TooLarge(Limits limits) => new(
        ProblemKinds.TooLarge, $"The body may have {limits.BodyBytes} bytes; the setting is {Limits.Section}:{nameof(Limits.BodyBytes)}.");

    private static ProblemResult TooSlow(Limits limits) => new(
        ProblemKinds.BodyTooSlow,
        $"A body has {limits.BodySeconds} s to arrive and {limits.BodyBytesPerSecond} bytes a second at least; the settings are {Limits.Section}:{nameof(Limits.BodySeconds)} and {Limits.Section}:{nameof(Limits.BodyBytesPerSecond)}.");
}
