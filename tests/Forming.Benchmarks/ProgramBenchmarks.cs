using BenchmarkDotNet.Attributes;
using Forming.Folds;
using Forming.Programs;
using Forming.Programs.Brakes;

namespace Forming.Benchmarks;

/// <summary>Brake programs of a form of 40 folds, half a turn.</summary>
[MemoryDiagnoser]
public class ProgramBenchmarks
{
    private const int Folds = 40;
    private readonly LeafBrake _leaf = new() { LengthMm = 1250 };
    private readonly PressBrake _press = new() { LengthMm = 1250 };
    private readonly ProgramPart _part = Even(200, 180);
    private readonly ProgramPart _hoop = Even(200, 345);

    /// <summary>The nine named orders, leaf brake.</summary>
    [Benchmark(Baseline = true)]
    public BrakeProgram LeafNamed() => BrakeProgram.Compute(_part, _leaf, mostWork: 0);

    /// <summary>The nine named orders, press brake.</summary>
    [Benchmark]
    public BrakeProgram PressNamed() => BrakeProgram.Compute(_part, _press, mostWork: 0);

    /// <summary>With the search, leaf brake.</summary>
    [Benchmark]
    public BrakeProgram LeafSearched() => BrakeProgram.Compute(_part, _leaf);

    /// <summary>With the search, press brake.</summary>
    [Benchmark]
    public BrakeProgram PressSearched() => BrakeProgram.Compute(_part, _press);

    /// <summary>A hoop: proved impossible.</summary>
    [Benchmark]
    public BrakeProgram HoopRefused() => BrakeProgram.Compute(_hoop, _press);

    private static ProgramPart Even(double radiusMm, double degrees)
    {
        var shape = new FoldShape(2, 2, 0.4);
        var step = degrees * Math.PI / 180 / (Folds - 1);
        var chord = 2 * (radiusMm - shape.OuterRadiusMm) * Math.Sin(step / 2);
        double[] angles = [step / 2, .. Enumerable.Repeat(step, Folds - 2), step / 2];
        return new(
            [60, .. Enumerable.Repeat(chord, Folds - 1), 60],
            angles,
            [.. angles.Select(angle => angle + 0.035)],
            shape,
            600,
            330,
            Angle.FromDegrees(0.5));
    }
}
