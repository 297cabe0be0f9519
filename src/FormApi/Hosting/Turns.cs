using System.Diagnostics;
using System.Threading.RateLimiting;
using FormApi.Http;
using FormApi.Http.Callers;
using FormApi.Http.Problems;
using FormApi.Http.Requests;
using Microsoft.Extensions.Options;

namespace FormApi.Hosting;

/// <summary>
/// A calculation's turn. It is asked for once the request is read whole and given back once the answer is calculated, so that neither
/// a slow sender nor a slow reader keeps it from others. The deadline counts from the asking, so that a crowd is sent away in time.
/// </summary>
/// <param name="options">The limits.</param>
/// <param name="callers">The limits of each caller.</param>
internal sealed class Turns(IOptions<Limits> options, CallerLimits callers) : IDisposable
{
    // How fast the mean follows: a tenth of each new one.
    private const double Share = 0.1;

    // As many calculate as there are cores. Were they to take all threads there are, deadlines, health and whatever waits for the network
    // would wait behind slow calculations. Where a core is free the call goes on at once, on the thread that read it.
    private readonly SemaphoreSlim _cores = new(Environment.ProcessorCount);

    private readonly ConcurrencyLimiter _places = new(new()
    {
        PermitLimit = options.Value.Concurrent,
        QueueLimit = options.Value.Queued,
        QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
    });

    private double _meanSeconds;

    /// <summary>Calls an endpoint in its turn, with the deadline for its cancellation.</summary>
    /// <param name="call">The call, with its request read.</param>
    /// <param name="next">The endpoint.</param>
    public async ValueTask<object?> CallAsync(EndpointFilterInvocationContext call, EndpointFilterDelegate next)
    {
        // There is nothing to calculate, so nothing to wait for.
        if (call.Arguments.OfType<BoundBody>().FirstOrDefault()?.Problem is { } problem)
            return problem;
        var gone = call.HttpContext.RequestAborted;
        using var deadline = CancellationTokenSource.CreateLinkedTokenSource(gone);
        deadline.CancelAfter(TimeSpan.FromSeconds(options.Value.Seconds));
        for (var i = 0; i < call.Arguments.Count; i++)
        {
            if (call.Arguments[i] is CancellationToken)
                call.Arguments[i] = deadline.Token;
        }

        try
        {
            if (callers.Count(call.HttpContext) is { } tooMany)
                return tooMany;
            using var own = await callers.PlaceAsync(call.HttpContext, deadline.Token);
            if (!own.IsAcquired)
                return TooManyOf(nameof(Limits.CallerQueued), options.Value.CallerQueued);
            using var place = await _places.AcquireAsync(1, deadline.Token);
            return place.IsAcquired
                ? await OnACoreAsync(call, next, deadline.Token)
                : TooManyOf(nameof(Limits.Queued), options.Value.Queued);
        }
        catch (OperationCanceledException) when (deadline.IsCancellationRequested && !gone.IsCancellationRequested)
        {
            return ProblemResult.TooSlow(options.Value);
        }
    }

    /// <summary>
    /// Sends a call away before its request is read where nobody could wait for a turn any more: what a crowd costs is time that those
    /// who found a place wait for.
    /// </summary>
    /// <param name="context">The request.</param>
    /// <param name="next">The rest of the pipeline.</param>
    public Task ShedAsync(HttpContext context, RequestDelegate next)
    {
        if (context.GetEndpoint()?.Metadata.GetMetadata<InTurn>() is null)
            return next(context);
        if (callers.IsFull(context))
            return TooManyOf(nameof(Limits.CallerQueued), options.Value.CallerQueued).ExecuteAsync(context);
        return CallerLimits.IsFull(_places.GetStatistics(), options.Value.Queued)
            ? TooManyOf(nameof(Limits.Queued), options.Value.Queued).ExecuteAsync(context)
            : next(context);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _places.Dispose();
        _cores.Dispose();
    }

    private async ValueTask<object?> OnACoreAsync(
        EndpointFilterInvocationContext call, EndpointFilterDelegate next, CancellationToken deadline)
    {
        await _cores.WaitAsync(deadline);
        var started = Stopwatch.GetTimestamp();
        try
        {
            return await next(call);
        }
        finally
        {
            _cores.Release();
            // Two at once may lose one of them: it is a mean.
            _meanSeconds += Share * (Stopwatch.GetElapsedTime(started).TotalSeconds - _meanSeconds);
        }
    }

    // To be tried again once so many have been calculated.
    private ProblemResult TooManyOf(string limit, int queued) => ProblemResult.TooMany(
        limit, queued, TimeSpan.FromSeconds((queued + 1) * _meanSeconds / Environment.ProcessorCount));
}

/// <summary>Marks the endpoints that calculate in their turn.</summary>
internal sealed record InTurn;
