using System.Security.Cryptography;
using System.Text;
using BenchmarkDotNet.Attributes;
using FormApi.Http;
using FormApi.Http.Requests;

namespace Forming.Benchmarks.Requests;

/// <summary>The fingerprint of a canonical request.</summary>
[MemoryDiagnoser]
[MinColumn]
public class FingerprintBenchmarks
{
    private static readonly byte[] Suffix = Encoding.UTF8.GetBytes("\n" + EngineVersion.Current);

    private readonly byte[] _canonical = LoadRequest.Planned.Shown.Canonical.ToArray();

    /// <summary>Both ways name it the same.</summary>
    [GlobalSetup]
    public void Agree()
    {
        if (Service() != InOnePiece())
            throw new InvalidOperationException("The two ways do not give the same fingerprint.");
    }

    /// <summary>A hash that grows piece by piece, as in the service.</summary>
    [Benchmark(Baseline = true)]
    public string Service() => Fingerprint.OfCanonical(_canonical);

    /// <summary>Both pieces copied together, then hashed by one call.</summary>
    [Benchmark]
    public string InOnePiece()
    {
        var whole = new byte[_canonical.Length + Suffix.Length];
        _canonical.CopyTo(whole, 0);
        Suffix.CopyTo(whole, _canonical.Length);
        return "sha256:" + Convert.ToHexStringLower(SHA256.HashData(whole));
    }
}
