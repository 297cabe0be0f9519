using System.Diagnostics.Metrics;

namespace Forming.Prediction;

/// <summary>How much the engine has worked since the process began, for whoever runs it; no result reads it.</summary>
public static class EngineWork
{
    /// <summary>Name of the meter.</summary>
    public const string Meter = "Forming";

    private static readonly Meter Source = new(Meter);

    /// <summary>Pulls of a panel over a form, by strips: what a solved plan spends its time on.</summary>
    internal static Counter<long> Wraps { get; } =
        Source.CreateCounter<long>("forming.wraps", "{wrap}", "Simulated pulls of a panel, or a strip of one, over a form.");

    /// <summary>Folds that plans came out with.</summary>
    internal static Counter<long> Folds { get; } = Source.CreateCounter<long>("forming.folds", "{fold}", "Folds of planned forms.");
}
