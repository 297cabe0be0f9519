using System.ComponentModel.DataAnnotations;

namespace FormApi.Http;

/// <summary>How much one caller may ask for; settings under <c>Limits</c>.</summary>
internal sealed class Limits
{
    /// <summary>Name of the section in the settings.</summary>
    public const string Section = "Limits";

    /// <summary>Largest body [bytes].</summary>
    [Range(1024, 100 * 1024 * 1024)]
    public int BodyBytes { get; set; } = 1024 * 1024;

    /// <summary>Longest that a body may take to arrive [s]; beyond it the answer is 408.</summary>
    [Range(0.1, 3600)]
    public double BodySeconds { get; set; } = 30;

    /// <summary>Slowest that a body may arrive, on the average after the first two seconds [bytes/s]; below it the answer is 408.</summary>
    [Range(1, 100 * 1024 * 1024)]
    public int BodyBytesPerSecond { get; set; } = 1000;

    /// <summary>Most that a link may inflate to [bytes].</summary>
    [Range(1024, 1024 * 1024)]
    public int LinkBytes { get; set; } = 64 * 1024;

    /// <summary>Longest line of a batch [bytes].</summary>
    [Range(1024, 100 * 1024 * 1024)]
    public int BatchLineBytes { get; set; } = 1024 * 1024;

    /// <summary>Most lines of a batch.</summary>
    [Range(1, 100_000_000)]
    public int BatchLines { get; set; } = 100_000;

    /// <summary>
    /// Batches with lines under way at the same time; one more that begins is answered 429, one that goes on after a silence waits.
    /// </summary>
    [Range(1, 10_000)]
    public int Batches { get; set; } = 4;

    /// <summary>How long a batch waits for a caller who sends nothing [s]; then it ends.</summary>
    [Range(0.1, 3600)]
    public double UnsentSeconds { get; set; } = 30;

    /// <summary>How long a batch waits for a caller who takes nothing out of full buffers [s]; then it is dropped.</summary>
    [Range(0.1, 3600)]
    public double UnreadSeconds { get; set; } = 30;

    /// <summary>How long a caller who has closed its side of a connection is answered [s].</summary>
    [Range(0, 3600)]
    public double HalfClosedSeconds { get; set; } = 60;

    /// <summary>Calculations that run at the same time.</summary>
    [Range(1, 10_000)]
    public int Concurrent { get; set; } = 64;

    /// <summary>Calculations that wait for their turn; beyond them the answer is 429.</summary>
    [Range(0, 100_000)]
    public int Queued { get; set; } = 1024;

    /// <summary>Calculations that one caller may begin in a second, on the average; beyond them the answer is 429.</summary>
    [Range(0.1, 1_000_000)]
    public double CallerPerSecond { get; set; } = 5000;

    /// <summary>Calculations that one caller may begin at once after a pause.</summary>
    [Range(1, 1_000_000)]
    public int CallerBurst { get; set; } = 10_000;

    /// <summary>Calculations of one caller that run at the same time.</summary>
    [Range(1, 10_000)]
    public int CallerConcurrent { get; set; } = 64;

    /// <summary>Calculations of one caller that wait for their turn; beyond them the answer is 429.</summary>
    [Range(0, 100_000)]
    public int CallerQueued { get; set; } = 512;

    /// <summary>Longest that a request may wait for its turn and be calculated, once it is read [s]; beyond it the answer is 503.</summary>
    [Range(0.001, 600)]
    public double Seconds { get; set; } = 10;

    // Any network stutters.
    private const double FreeSeconds = 2;

    /// <summary>How long a body may have taken by the time so much of it is here.</summary>
    /// <param name="arrived">What is here [bytes].</param>
    public TimeSpan BodyTime(long arrived) =>
        TimeSpan.FromSeconds(Math.Min(BodySeconds, FreeSeconds + ((double)arrived / BodyBytesPerSecond)));
}
