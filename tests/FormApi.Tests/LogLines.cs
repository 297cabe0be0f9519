using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace FormApi.Tests;

/// <summary>What the service and its server log as warnings or worse.</summary>
public sealed class LogLines : ILoggerFactory, ILogger
{
    private readonly ConcurrentQueue<string> _lines = [];

    public void AssertEmpty() => Assert.True(_lines.IsEmpty, string.Join('\n', _lines));

    public ILogger CreateLogger(string categoryName) => this;

    public void AddProvider(ILoggerProvider provider)
    {
    }

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Warning;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
    {
        if (IsEnabled(logLevel))
            _lines.Enqueue($"{logLevel} {formatter(state, exception)} {exception}");
    }

    public void Dispose()
    {
    }
}
