using FormApi.Hosting.Settings;
using Microsoft.Extensions.Options;

namespace FormApi.Hosting;

/// <summary>
/// Stops in order: readiness turns red, batches end with a line that says where to resume, the service listens on for a while so that
/// whoever balances the load can turn away, then what is under way ends.
/// </summary>
/// <param name="settings">How long it goes on.</param>
internal sealed class DrainService(IOptions<DrainSettings> settings) : IHostedLifecycleService
{
    /// <inheritdoc/>
    public async Task StoppingAsync(CancellationToken cancellationToken) =>
        await Task.Delay(TimeSpan.FromSeconds(settings.Value.Seconds), cancellationToken)
            .ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);

    /// <inheritdoc/>
    public Task StartingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StartedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;
}
