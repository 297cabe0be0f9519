using BenchmarkDotNet.Attributes;
using Forming.Prediction;
using Forming.Springback;

namespace Forming.Benchmarks;

/// <summary>A panel pulled over a standing form, fold by fold.</summary>
[MemoryDiagnoser]
public class PredictionBenchmarks
{
    private readonly BendingLaw law = PredictionForms.Law;
    private readonly StandingForm eight = PredictionForms.Even(8, 10, 17.431);
    private readonly StandingForm fifty = PredictionForms.Even(50, 1.6, 4);

    /// <summary>8 facets.</summary>
    [Benchmark(Baseline = true)]
    public WrappedPanel Eight() => PanelWrap.Compute(eight, law, new(150));

    /// <summary>50 facets.</summary>
    [Benchmark]
    public WrappedPanel Fifty() => PanelWrap.Compute(fifty, law, new(60));
}
