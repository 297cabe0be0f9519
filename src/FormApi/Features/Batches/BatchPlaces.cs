using System.Threading.RateLimiting;
using FormApi.Http;
using FormApi.Http.Problems;
using Microsoft.Extensions.Options;

namespace FormApi.Features.Batches;

/// <summary>Places for batches with lines under way; one that waits for its caller holds none.</summary>
/// <param name="options">The limits.</param>
/// <param name="time">The clock by which places are kept.</param>
internal sealed class BatchPlaces(IOptions<Limits> options, TimeProvider time) : IDisposable
{
    // How fast the mean follows: a tenth of each new one.
    private const double Share = 0.1;

    private readonly ConcurrencyLimiter _places = new(new()
    {
        PermitLimit = options.Value.Batches,
        // Only batches that have begun wait here, a line each.
        QueueLimit = int.MaxValue,
        QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
    });

    private double? _meanSeconds;

    /// <summary>A place if one is free and nobody waits for it, or null.</summary>
    public IDisposable? TryTake()
    {
        var lease = _places.AttemptAcquire();
        if (lease.IsAcquired)
            return new Place(this, lease);
        lease.Dispose();
        return null;
    }

    /// <summary>A place, in turn.</summary>
    /// <param name="cancellation">Nobody wants it any more.</param>
    public async ValueTask<IDisposable> TakeAsync(CancellationToken cancellation) =>
        new Place(this, await _places.AcquireAsync(1, cancellation));

    /// <summary>What a caller gets for whom there is no place, with when one should be free: by how long places are kept.</summary>
    public ProblemResult TooMany()
    {
        var batches = options.Value.Batches;
        return ProblemResult.TooMany(nameof(Limits.Batches), batches, TimeSpan.FromSeconds((_meanSeconds ?? 0) / batches));
    }

    /// <inheritdoc/>
    public void Dispose() => _places.Dispose();

    private long Now => time.GetTimestamp();

    // Two at once may lose one of them: it is a mean.
    private void Kept(long since)
    {
        var seconds = time.GetElapsedTime(since).TotalSeconds;
        _meanSeconds = _meanSeconds is { } mean ? mean + (Share * (seconds - mean)) : seconds;
    }

    private sealed class Place(BatchPlaces places, RateLimitLease lease) : IDisposable
    {
        private readonly long _since = places.Now;

        public void Dispose()
        {
            places.Kept(_since);
            lease.Dispose();
        }
    }
}
