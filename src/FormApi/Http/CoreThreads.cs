namespace FormApi.Http;

/// <summary>Threads for what keeps a core busy, as many as there are cores; the rest of the pool stays free for what waits.</summary>
internal static class CoreThreads
{
    /// <summary>A set of its own.</summary>
    public static TaskFactory New() => new(
        CancellationToken.None,
        TaskCreationOptions.DenyChildAttach,
        TaskContinuationOptions.None,
        new ConcurrentExclusiveSchedulerPair(TaskScheduler.Default, Environment.ProcessorCount).ConcurrentScheduler);
}
