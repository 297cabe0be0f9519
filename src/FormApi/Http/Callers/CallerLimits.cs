using System.Threading.RateLimiting;
using FormApi.Http.Problems;
using Microsoft.Extensions.Options;

namespace FormApi.Http.Callers;

/// <summary>How much each caller may ask for: so many calculations a second, and so many at once.</summary>
/// <param name="options">The limits.</param>
internal sealed class CallerLimits(IOptions<Limits> options) : IDisposable
{
    // Tokens come back so often, or one by one where there are fewer.
    private const double PeriodSeconds = 0.1;

    private readonly PartitionedRateLimiter<HttpContext> _rate = PartitionedRateLimiter.Create<HttpContext, string>(
        context => RateLimitPartition.GetTokenBucketLimiter(Caller.KeyOf(context), _ => Bucket(options.Value)));

    private readonly PartitionedRateLimiter<HttpContext> _places = PartitionedRateLimiter.Create<HttpContext, string>(
        context => RateLimitPartition.GetConcurrencyLimiter(Caller.KeyOf(context), _ => new()
        {
            PermitLimit = options.Value.CallerConcurrent,
            QueueLimit = options.Value.CallerQueued,
            QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
        }));

    /// <summary>Counts one more calculation; the problem where the caller has had as many as it may for now.</summary>
    /// <param name="context">The request.</param>
    public ProblemResult? Count(HttpContext context)
    {
        using var token = _rate.AttemptAcquire(context);
        if (token.IsAcquired)
            return null;
        var wait = token.TryGetMetadata(MetadataName.RetryAfter, out var after) ? after : TimeSpan.FromSeconds(1);
        return ProblemResult.TooMany(nameof(Limits.CallerPerSecond), options.Value.CallerPerSecond, wait);
    }

    /// <summary>A place among the caller's own, in turn; not acquired where the caller's queue is full.</summary>
    /// <param name="context">The request.</param>
    /// <param name="cancellation">Nobody wants it any more.</param>
    public ValueTask<RateLimitLease> PlaceAsync(HttpContext context, CancellationToken cancellation) =>
        _places.AcquireAsync(context, 1, cancellation);

    /// <summary>How many more the caller may ask for at once.</summary>
    /// <param name="context">The request.</param>
    public int LeftFor(HttpContext context) => (int)(_rate.GetStatistics(context)?.CurrentAvailablePermits ?? options.Value.CallerBurst);

    /// <summary>Whether a caller's own queue is full.</summary>
    /// <param name="context">The request.</param>
    public bool IsFull(HttpContext context) => IsFull(_places.GetStatistics(context), options.Value.CallerQueued);

    /// <summary>Whether nobody more could wait.</summary>
    /// <param name="places">The places.</param>
    /// <param name="queued">How many may wait for one.</param>
    public static bool IsFull(RateLimiterStatistics? places, int queued) =>
        places is { CurrentAvailablePermits: <= 0 } && places.CurrentQueuedCount >= queued;

    /// <inheritdoc/>
    public void Dispose()
    {
        _rate.Dispose();
        _places.Dispose();
    }

    private static TokenBucketRateLimiterOptions Bucket(Limits limits)
    {
        var inPeriod = (int)Math.Max(1, Math.Round(limits.CallerPerSecond * PeriodSeconds));
        return new()
        {
            TokenLimit = limits.CallerBurst,
            TokensPerPeriod = inPeriod,
            ReplenishmentPeriod = TimeSpan.FromSeconds(inPeriod / limits.CallerPerSecond),
        };
    }
}
