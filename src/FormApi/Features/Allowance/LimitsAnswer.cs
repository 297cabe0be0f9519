using System.Text.Json.Serialization;

namespace FormApi.Features.Allowance;

/// <summary>How much a caller may ask for; the settings are named alike, under <c>Limits</c>.</summary>
/// <param name="Caller">Name of the key or token; null where limits are counted by address.</param>
/// <param name="CallerPerSecond">Calculations it may begin in a second, on the average.</param>
/// <param name="CallerBurst">Calculations it may begin at once after a pause.</param>
/// <param name="Left">What is left of that now.</param>
/// <param name="CallerConcurrent">Its calculations that run at the same time.</param>
/// <param name="CallerQueued">Its calculations that wait for their turn.</param>
/// <param name="Seconds">Longest that a calculation may wait and take [s].</param>
/// <param name="BodyBytes">Largest body [bytes].</param>
/// <param name="BatchLines">Most lines of a batch.</param>
/// <param name="BatchLineBytes">Longest line of a batch [bytes].</param>
/// <param name="Batches">Batches of all callers under way at the same time.</param>
/// <param name="Cores">Cores that calculate here.</param>
internal sealed record LimitsAnswer(
    string? Caller,
    double CallerPerSecond,
    int CallerBurst,
    int Left,
    int CallerConcurrent,
    int CallerQueued,
    double Seconds,
    int BodyBytes,
    int BatchLines,
    int BatchLineBytes,
    int Batches,
    int Cores);

/// <summary>The feature's answers.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase)]
[JsonSerializable(typeof(LimitsAnswer))]
internal sealed partial class LimitsAnswerJson : JsonSerializerContext;
