using BenchmarkDotNet.Attributes;
using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Layout;
using Forming.Plans;
using Forming.Springback;

namespace Forming.Benchmarks;

/// <summary>Whole plans solved on the simulated pull, checks included and remedies left out; beside them the quick one.</summary>
[MemoryDiagnoser]
public class SolvedBenchmarks
{
    private readonly ArcCurve _arc = new(150, Angle.FromDegrees(90));

    /// <summary>The folds counted: ten are found.</summary>
    [Benchmark]
    public FormPlan TenCounted() => Plan(new SolvedOnWrap(), new());

    /// <summary>Ten folds, given.</summary>
    [Benchmark]
    public FormPlan TenGiven() => Plan(new SolvedOnWrap(), new() { Folds = 10 });

    /// <summary>Fifty folds, given.</summary>
    [Benchmark]
    public FormPlan FiftyGiven() => Plan(new SolvedOnWrap(), new() { Folds = 50 });

    /// <summary>The same arc by pure bending.</summary>
    [Benchmark]
    public FormPlan Quick() => Plan(new PureBending(), new() { Folds = 10 });

    private FormPlan Plan(SpringbackChoice springback, Stepping stepping) => FormPlan.Compute(
        new FormJob(
            PlanBenchmarks.Panel(_arc) with { Springback = springback },
            PlanBenchmarks.Form(stepping) with { Backing = FormBacking.Ribs },
            PlanBenchmarks.Brake,
            new MarkSpec(Datum.Edge, new Tape(LengthUnit.Mm, 0.5))),
        _ => false);
}
