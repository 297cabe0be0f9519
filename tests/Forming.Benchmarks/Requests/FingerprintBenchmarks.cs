using System.Security.Cryptography;
using System.Text;
using BenchmarkDotNet.Attributes;
using FormApi.Http;
using FormApi.Http.Requests;

namespace Forming.Benchmarks.Requests;

/// <summary>The fingerprint of a canonical request.</summary>
[MemoryDiagnoser]
public class FingerprintBenchmarks
{
    private static readonly byte[] Suffix = Encoding.UTF8.GetBytes("\n" + EngineVersion.Current);

    private readonly byte[] _canonical = LoadRequest.Planned.Shown.Canonical.ToArray();

    /// <summary>Both ways name it the same.</summary>
    [GlobalSetup]
    public void Agree()
    {
        if (Plain() != Written())
            throw new InvalidOperationException("The two ways do not give the same fingerprint.");
    }

    /// <summary>A hash that grows piece by piece.</summary>
    [Benchmark(Baseline = true)]
    public string Plain()
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(_canonical);
        hash.AppendData(Suffix);
        return "sha256:" + Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    /// <summary>In one piece, as the service does it.</summary>
    [Benchmark]
    public string Written() => Fingerprint.OfCanonical(_canonical);
}
