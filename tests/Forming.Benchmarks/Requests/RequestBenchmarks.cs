using System.Buffers;
using System.Text.Json;
using BenchmarkDotNet.Attributes;
using FormApi.Features.Forms;
using FormApi.Http.Requests;
using Forming.Plans;

namespace Forming.Benchmarks.Requests;

/// <summary>The steps of <c>POST /v1/forms</c> in process, without the server: what 5 % of a request is.</summary>
[MemoryDiagnoser]
[MinColumn]
public class RequestBenchmarks
{
    private readonly ArrayBufferWriter<byte> _buffer = new(65536);
    private readonly byte[] _body = LoadRequest.Body;
    private readonly FormRequest _read = LoadRequest.Read;
    private readonly PlannedJob _planned = LoadRequest.Planned;
    private readonly FormAnswer _answer = LoadRequest.Answer;

    /// <summary>From a body to the bytes of its answer.</summary>
    [Benchmark(Baseline = true)]
    public int Whole()
    {
        var planned = PlannedJob.Of(JsonBody<FormRequest>.Of(_body).Value, null, CancellationToken.None);
        var answer = FormAnswer.From(planned);
        return LoadRequest.Written(_buffer, writer => JsonSerializer.Serialize(writer, answer, FormAnswerJson.Default.FormAnswer));
    }

    /// <summary>Reads the body and checks it.</summary>
    [Benchmark]
    public object ReadAndCheck() => JsonBody<FormRequest>.Of(_body);

    /// <summary>Plans the form with the remedies of what does not pass.</summary>
    [Benchmark]
    public object Plan() => FormPlan.Compute(_planned.Specs.Job);

    /// <summary>Plans the form without remedies.</summary>
    [Benchmark]
    public object PlanWithoutRemedies() => FormPlan.Compute(_planned.Specs.Job, _ => false);

    /// <summary>Writes the request with its defaults, in its canonical spelling too, and names it.</summary>
    [Benchmark]
    public object Normalize() => NormalizedRequest.Of(FormDefaults.Apply(_read));

    /// <summary>Makes the answer, its links and texts.</summary>
    [Benchmark]
    public object Answer() => FormAnswer.From(_planned);

    /// <summary>Writes the answer.</summary>
    [Benchmark]
    public int Write() =>
        LoadRequest.Written(_buffer, writer => JsonSerializer.Serialize(writer, _answer, FormAnswerJson.Default.FormAnswer));
}
