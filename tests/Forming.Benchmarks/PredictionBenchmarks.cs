using BenchmarkDotNet.Attributes;
using Forming.Prediction;
using Forming.Springback;

namespace Forming.Benchmarks;

/// <summary>A panel pulled over a standing form, fold by fold.</summary>
[MemoryDiagnoser]
public class PredictionBenchmarks
{
    private readonly BendingLaw _law = PredictionForms.Law;
    private readonly StandingForm _eight = PredictionForms.Even(8, 10, 17.431);
    private readonly StandingForm _fifty = PredictionForms.Even(50, 1.6, 4);

    /// <summary>8 facets.</summary>
    [Benchmark(Baseline = true)]
    public WrappedPanel Eight() => PanelWrap.Compute(_eight, _law, new(150));

    /// <summary>50 facets.</summary>
    [Benchmark]
    public WrappedPanel Fifty() => PanelWrap.Compute(_fifty, _law, new(60));
}
