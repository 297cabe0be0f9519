using System.Globalization;
using BenchmarkDotNet.Attributes;
using FormApi.Features.Forms;
using FormApi.Http.Json;

namespace Forming.Benchmarks.Requests;

/// <summary>Writing the numbers of an answer's stations and points, by which both their writers gain.</summary>
[MemoryDiagnoser]
[MinColumn]
public class NumbersBenchmarks
{
    private readonly byte[] _text = new byte[NumberText.Longest];
    private readonly double[] _numbers =
    [
        .. LoadRequest.Answer.Form.Stations.SelectMany(NumbersOf),
        .. LoadRequest.Answer.Form.Section.Vertices.SelectMany(NumbersOf),
        .. LoadRequest.Answer.Form.Section.ContactCurve.SelectMany(NumbersOf),
        .. LoadRequest.Answer.Form.Section.InsideProfile.SelectMany(NumbersOf),
    ];

    /// <summary>Both ways write the same.</summary>
    [GlobalSetup]
    public void Agree()
    {
        foreach (var number in _numbers)
        {
            var written = NumberText.Write(number, _text);
            var other = new byte[NumberText.Longest];
            number.TryFormat(other, out var plain, default, CultureInfo.InvariantCulture);
            if (!_text.AsSpan(0, written).SequenceEqual(other.AsSpan(0, plain)))
                throw new InvalidOperationException("The two ways do not write the same bytes.");
        }
    }

    /// <summary>Shortest round trip, as the framework's serializer writes them.</summary>
    [Benchmark(Baseline = true)]
    public int Plain()
    {
        var length = 0;
        foreach (var number in _numbers)
        {
            number.TryFormat(_text, out var written, default, CultureInfo.InvariantCulture);
            length += written;
        }

        return length;
    }

    /// <summary>Nine decimals, by the writer of the service.</summary>
    [Benchmark]
    public int Service()
    {
        var length = 0;
        foreach (var number in _numbers)
            length += NumberText.Write(number, _text);
        return length;
    }

    private static IEnumerable<double> NumbersOf(Pair pair) => [pair.First, pair.Second];

    private static IEnumerable<double> NumbersOf(StationResult station) =>
    [
        station.At, station.Mark, station.TangentLines.First, station.TangentLines.Second, station.SightLine, station.Angle, station.RunningAngle,
        station.StopAngle ?? 0, station.StopSetting ?? 0, station.Radius ?? 0, station.FacetAfter, station.StraightAfter,
    ];
}
