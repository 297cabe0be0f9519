using BenchmarkDotNet.Attributes;
using Forming.Layout;
using Forming.Programs;

namespace Forming.Benchmarks;

/// <summary>Programs for a brake: a form of 40 folds.</summary>
[MemoryDiagnoser]
public class ProgramBenchmarks
{
    private static readonly LeafBrake Leaf = new() { LengthMm = 1250 };
    private static readonly PressBrake Press = new() { LengthMm = 1250 };

    private readonly ProgramPart part = Even(300, Math.PI / 2, 40);

    /// <summary>A leaf brake, named orders and no time to search.</summary>
    [Benchmark(Baseline = true)]
    public BrakeProgram LeafNamed() => BrakeProgram.Compute(part, Leaf, TimeSpan.Zero);

    /// <summary>A press brake, named orders and no time to search.</summary>
    [Benchmark]
    public BrakeProgram PressNamed() => BrakeProgram.Compute(part, Press, TimeSpan.Zero);

    /// <summary>A leaf brake, the whole search.</summary>
    [Benchmark]
    public BrakeProgram LeafSearched() => BrakeProgram.Compute(part, Leaf);

    /// <summary>A press brake, the whole search.</summary>
    [Benchmark]
    public BrakeProgram PressSearched() => BrakeProgram.Compute(part, Press);

    private static ProgramPart Even(double radius, double sweep, int folds)
    {
        var shape = new FoldShape(2, 2, 0.4);
        var step = sweep / (folds - 1);
        var chord = 2 * (radius - shape.OuterRadiusMm) * Math.Sin(step / 2);
        double[] angles = [step / 2, .. Enumerable.Repeat(step, folds - 2), step / 2];
        return new([60, .. Enumerable.Repeat(chord, folds - 1), 60], angles, [.. angles.Select(angle => angle + 0.035)], shape, 600, 330, Angle.FromDegrees(0.5));
    }
}
