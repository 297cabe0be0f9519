using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using Forming.Prediction;

namespace Forming.Benchmarks;

/// <summary>The first prediction after start, compilation included.</summary>
[SimpleJob(RunStrategy.ColdStart, launchCount: 5, warmupCount: 0, iterationCount: 1)]
public class FirstPredictionBenchmarks
{
    private readonly double _facetMm = 17.431;

    /// <summary>8 facets.</summary>
    [Benchmark]
    public WrappedPanel Eight() => PanelWrap.Compute(PredictionForms.Even(8, 10, _facetMm), PredictionForms.Law, new(150));
}
