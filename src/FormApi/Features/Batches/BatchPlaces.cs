using System.Threading.RateLimiting;
using FormApi.Http;
using Microsoft.Extensions.Options;

namespace FormApi.Features.Batches;

/// <summary>Places for batches with lines under way; one that waits for its caller holds none.</summary>
/// <param name="options">The limits.</param>
internal sealed class BatchPlaces(IOptions<Limits> options) : IDisposable
{
    private readonly ConcurrencyLimiter _places = new(new()
    {
        PermitLimit = options.Value.Batches,
        // Only batches that have begun wait here, a line each.
        QueueLimit = int.MaxValue,
        QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
    });

    /// <summary>A place if one is free and nobody waits for it, or null.</summary>
    public IDisposable? TryTake()
    {
        var lease = _places.AttemptAcquire();
        if (lease.IsAcquired)
            return lease;
        lease.Dispose();
        return null;
    }

    /// <summary>A place, in turn.</summary>
    /// <param name="cancellation">Nobody wants it any more.</param>
    public async ValueTask<IDisposable> TakeAsync(CancellationToken cancellation) => await _places.AcquireAsync(1, cancellation);

    /// <inheritdoc/>
    public void Dispose() => _places.Dispose();
}
