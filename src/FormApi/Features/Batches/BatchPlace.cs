namespace FormApi.Features.Batches;

/// <summary>The place of one batch: held while any of its lines is under way, given back while it waits for its caller.</summary>
/// <param name="places">The places there are.</param>
internal sealed class BatchPlace(BatchPlaces places) : IDisposable
{
    private readonly Lock _lock = new();
    private IDisposable? _held;
    private int _underWay;
    private bool _hadOne;

    /// <summary>Holds the place for one more line; called for one line after the other.</summary>
    /// <param name="cancellation">Nobody wants the line any more.</param>
    /// <returns>Whether there is one: the first line of a batch does not wait for it.</returns>
    public async ValueTask<bool> TryHoldAsync(CancellationToken cancellation)
    {
        lock (_lock)
        {
            if (_held is not null)
            {
                _underWay++;
                return true;
            }
        }

        // Nothing is under way, so nobody gives a place back meanwhile.
        var taken = _hadOne ? await places.TakeAsync(cancellation) : places.TryTake();
        if (taken is null)
            return false;
        lock (_lock)
            (_held, _underWay, _hadOne) = (taken, 1, true);
        return true;
    }

    /// <summary>Some lines are answered, and their answers taken.</summary>
    /// <param name="lines">How many.</param>
    public void Release(int lines)
    {
        lock (_lock)
        {
            _underWay -= lines;
            if (_underWay == 0)
                GiveBack();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (_lock)
            GiveBack();
    }

    private void GiveBack()
    {
        _held?.Dispose();
        _held = null;
    }
}
