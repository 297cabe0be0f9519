using BenchmarkDotNet.Attributes;
using Forming.Curves.Fitting;
using Forming.Results;

namespace Forming.Benchmarks;

/// <summary>Fits of scanned patterns: normal scatter of 0.1 mm along and across.</summary>
[MemoryDiagnoser]
public class PointsBenchmarks
{
    private Point[] _spiral = [];
    private Point[] _circle = [];

    /// <summary>How many points.</summary>
    [Params(20, 500, 5000)]
    public int Count { get; set; }

    /// <summary>Draws the points.</summary>
    [GlobalSetup]
    public void Scan()
    {
        _spiral = Scanned(turn => 60 * Math.Exp(0.5 * turn) * Point.Along(turn));
        _circle = Scanned(turn => 100 * Point.Along(turn));
    }

    /// <summary>A logarithmic spiral within 0.6 mm.</summary>
    [Benchmark]
    public PointsFit Spiral() => PointsFit.Solve(_spiral, 0.6);

    /// <summary>A circle, with a tolerance that the scatter does not allow: the longest search.</summary>
    [Benchmark]
    public string RefusedCircle()
    {
        try
        {
            return PointsFit.Solve(_circle, 0.05).ToString();
        }
        catch (NoSolutionException refusal)
        {
            return refusal.Code;
        }
    }

    private Point[] Scanned(Func<double, Point> curve)
    {
        var random = new Random(1);
        return [.. Enumerable.Range(0, Count).Select(i => curve(1.5 * i / (Count - 1)) + (0.1 * Normal(random)))];
    }

    private static Point Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Point.Along(2 * Math.PI * random.NextDouble());
}
