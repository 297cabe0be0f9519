using BenchmarkDotNet.Attributes;
using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Layout;
using Forming.Materials;
using Forming.Plans;
using Forming.Springback;

namespace Forming.Benchmarks;

/// <summary>Whole plans in process, checks and notes included.</summary>
[MemoryDiagnoser]
public class PlanBenchmarks
{
    private static readonly Stepping Twenty = new() { Folds = 20 };

    private readonly ProgressiveCurve _clothoid = new(60, 240, Angle.FromDegrees(90), ProgressiveLaw.Clothoid);
    private readonly ArcCurve _arc = new(90, Angle.FromDegrees(90));
    private readonly PointsCurve _points = new([.. Enumerable.Range(0, 20).Select(OnALogarithmicSpiral)], 0.1);
    private readonly TaperCurve _taper = new(
        new ArcCurve(60, Angle.FromDegrees(90)), new ArcCurve(120, Angle.FromDegrees(90)), 400, TaperPlacement.Concentric, default);

    /// <summary>An arc of 20 folds.</summary>
    [Benchmark(Baseline = true)]
    public FormPlan Arc() => Plan(_arc, Twenty);

    /// <summary>An arc whose folds the plan counts itself.</summary>
    [Benchmark]
    public FormPlan ArcCounted() => Plan(_arc, new());

    /// <summary>A clothoid of 20 folds.</summary>
    [Benchmark]
    public FormPlan Clothoid() => Plan(_clothoid, Twenty);

    /// <summary>20 measured points, 20 folds.</summary>
    [Benchmark]
    public FormPlan MeasuredPoints() => Plan(_points, Twenty);

    /// <summary>A cone of 20 folds.</summary>
    [Benchmark]
    public FormPlan Cone() => Plan(_taper, Twenty);

    internal static BrakeSpec Brake { get; } = new() { LengthMm = 1250 };

    internal static PanelSpec Panel(PanelCurve curve) => new()
    {
        Sheet = new(Grade("ss-304"), 1.2),
        Curve = curve,
        WidthMm = 600,
        LeadInMm = 80,
        LeadOutMm = 150,
        Finish = Finish.Satin,
        Springback = new PureBending(),
    };

    internal static FormSpec Form(Stepping stepping) => new()
    {
        Sheet = new(Grade("steel-cr-cs"), 2),
        FoldRadiusMm = 2,
        LeadInMm = 60,
        LeadOutMm = 60,
        WidthMm = 600,
        Stepping = stepping,
    };

    internal static FormPlan Plan(PanelCurve curve, Stepping stepping) =>
        FormPlan.Compute(new FormJob(Panel(curve), Form(stepping), Brake, new MarkSpec(Datum.Edge, new Tape(LengthUnit.Mm, 0.5))));

    private static Point OnALogarithmicSpiral(int index)
    {
        var angle = index * 0.08;
        return 60 * Math.Exp(0.5 * angle) * Point.Along(angle);
    }

    private static Material Grade(string id) => MaterialCatalog.Default.TryFind(id, out var grade) ? grade! : throw new ArgumentException(id);
}
