using System.Diagnostics.Metrics;
using FormApi.Http;

namespace FormApi.Hosting;

/// <summary>How many calculations have their turn and how many wait for it, counted on both sides of whatever gives turns.</summary>
internal sealed class TurnsCount
{
    private int _asked;
    private int _running;

    /// <summary>Offers the counts to whoever measures.</summary>
    /// <param name="meters">Makes meters that end with the service.</param>
    public TurnsCount(IMeterFactory meters) => meters.Create(Calculations.Meter).CreateObservableUpDownCounter(
        "formapi.turns", Counts, "{calculation}", "Calculations that run, and those that are read and wait for their turn.");

    /// <summary>Counts a call that asks for its turn; in front of what gives it.</summary>
    /// <param name="call">The call.</param>
    /// <param name="next">What gives turns.</param>
    public async ValueTask<object?> AskAsync(EndpointFilterInvocationContext call, EndpointFilterDelegate next)
    {
        Interlocked.Increment(ref _asked);
        try
        {
            return await next(call);
        }
        finally
        {
            Interlocked.Decrement(ref _asked);
        }
    }

    /// <summary>Counts a call that has its turn, as a span of its own where somebody looks; behind what gives turns.</summary>
    /// <param name="call">The call.</param>
    /// <param name="next">The endpoint.</param>
    public async ValueTask<object?> RunAsync(EndpointFilterInvocationContext call, EndpointFilterDelegate next)
    {
        Interlocked.Increment(ref _running);
        try
        {
            using var span = Calculations.Spans.StartActivity("calculate");
            return await next(call);
        }
        finally
        {
            Interlocked.Decrement(ref _running);
        }
    }

    private Measurement<int>[] Counts()
    {
        var running = Volatile.Read(ref _running);
        // One may have ended between the two readings.
        var waiting = Math.Max(0, Volatile.Read(ref _asked) - running);
        return [State(running, "running"), State(waiting, "waiting")];

        static Measurement<int> State(int count, string state) => new(count, new KeyValuePair<string, object?>("formapi.turn.state", state));
    }
}
