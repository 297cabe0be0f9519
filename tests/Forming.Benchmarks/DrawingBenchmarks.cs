using BenchmarkDotNet.Attributes;
using Forming.Curves;
using Forming.Drawing;
using Forming.Drawing.Csv;
using Forming.Drawing.Dxf;
using Forming.Drawing.Gltf;
using Forming.Drawing.Pdf;
using Forming.Drawing.Svg;
using Forming.Facets;
using Forming.Jobs;
using Forming.Layout;
using Forming.Plans;

namespace Forming.Benchmarks;

/// <summary>Pictures and files of a form of 20 folds; the plan is made beforehand. Wanted: SVG within 3 ms, PDF within 60 ms.</summary>
[MemoryDiagnoser]
public class DrawingBenchmarks
{
    private readonly DrawingJob _job = Job();

    /// <summary>The sheet.</summary>
    [Benchmark]
    public long Svg() => Written(stream => SvgSheet.Write(_job, stream));

    /// <summary>The sheet and the layout at 1:1.</summary>
    [Benchmark]
    public long Pdf() => Written(stream => PdfSheet.Write(_job, PaperSize.A4, null, stream));

    /// <summary>The blanks.</summary>
    [Benchmark]
    public long Dxf() => Written(stream => DxfLayout.Write(_job, stream));

    /// <summary>The stations.</summary>
    [Benchmark]
    public long Csv() => Written(stream => CsvStations.Write(_job, stream));

    /// <summary>The solids.</summary>
    [Benchmark]
    public long Glb() => Written(stream => GltfSolids.Write(_job, stream));

    private static long Written(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return stream.Length;
    }

    private static DrawingJob Job()
    {
        var (panel, form) = (PlanBenchmarks.Panel(new ArcCurve(150, Angle.FromDegrees(90))), PlanBenchmarks.Form(new Stepping { Folds = 20 }));
        var (brake, marks) = (PlanBenchmarks.Brake, new MarkSpec(Datum.Edge, new Tape(LengthUnit.Mm, 0.5)));
        var job = new FormJob(panel, form, brake, marks);
        return new(
            FormPlan.Compute(job),
            job,
            LengthUnit.Mm,
            "Twenty folds",
            "sha256:0000000000000000000000000000000000000000000000000000000000000000",
            FormattableString.Invariant);
    }
}
