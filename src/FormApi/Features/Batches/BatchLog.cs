namespace FormApi.Features.Batches;

/// <summary>What a batch writes to the log; never the content of a line.</summary>
internal static partial class BatchLog
{
    /// <summary>A bug met one line.</summary>
    /// <param name="logger">The log.</param>
    /// <param name="bug">The bug.</param>
    /// <param name="line">Number of the line.</param>
    [LoggerMessage(Level = LogLevel.Error, Message = "Line {Line} of a batch met a bug")]
    public static partial void LineFailed(ILogger logger, Exception bug, int line);

    /// <summary>A caller did not take its answers.</summary>
    /// <param name="logger">The log.</param>
    /// <param name="seconds">How long it was waited for [s].</param>
    [LoggerMessage(Level = LogLevel.Warning, Message = "A batch was dropped: its caller left the buffers full for {Seconds} s")]
    public static partial void CallerDropped(ILogger logger, double seconds);
}
