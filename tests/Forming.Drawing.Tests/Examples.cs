using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Layout;
using Forming.Materials;
using Forming.Plans;

namespace Forming.Drawing.Tests;

/// <summary>The jobs that every writer is tried on.</summary>
public static class Examples
{
    private static readonly Tape Millimetres = new(LengthUnit.Mm, 0.5);

    public static IReadOnlyDictionary<string, Func<DrawingJob>> All { get; } = new Dictionary<string, Func<DrawingJob>>
    {
        ["six-folds"] = Once(SixFolds),
        ["twenty-folds"] = Once(TwentyFolds),
        ["forty-folds"] = Once(FortyFolds),
        ["sixty-folds"] = Once(SixtyFolds),
        ["clothoid-inches"] = Once(Clothoid),
        ["mirrored"] = Once(Mirrored),
        ["hooked"] = Once(Hooked),
        ["cone"] = Once(Cone),
        ["mirrored-taper"] = Once(MirroredTaper),
        ["cannot-be-made"] = Once(CannotBeMade),
    };

    /// <summary>One of them, or the one that stands on ribs.</summary>
    public static DrawingJob Named(string name) => name == "ribbed" ? OnRibs() : All[name]();

    private static Func<DrawingJob> OnRibs { get; } = Once(() => Ribbed());

    public static TheoryData<string> Names => [.. All.Keys];

    public static TheoryData<string> ThatCanBeMade => [.. All.Where(pair => !pair.Value().CannotBeMade).Select(pair => pair.Key)];

    public static DrawingJob SixFolds() => Job(
        "Counter front, corner",
        Panel(new ArcCurve(90, Angle.FromDegrees(60))),
        Form(6));

    public static DrawingJob TwentyFolds() => Job(
        "Reception desk, quarter round",
        Panel(new ArcCurve(150, Angle.FromDegrees(90))),
        Form(20));

    public static DrawingJob FortyFolds() => Job(
        "Column casing, half shell",
        Panel(new ArcCurve(220, Angle.FromDegrees(150))) with { Sheet = new(Material("steel-cr-cs"), 2.5), LeadOutMm = 60 },
        Form(40) with { LeadInMm = 90 },
        new(Datum.Centre, Millimetres));

    public static DrawingJob SixtyFolds() => Job(
        "Wide sweep <60 & more>",
        Panel(new ArcCurve(320, Angle.FromDegrees(120))) with { Sheet = new(Material("steel-cr-cs"), 3), LeadInMm = 120, TrimMm = 10 },
        Form(60),
        new(Datum.FarEdge, Millimetres));

    public static DrawingJob Clothoid() => Job(
        "Fairing, opening bend",
        Panel(new ProgressiveCurve(80, null, Angle.FromDegrees(70), ProgressiveLaw.Clothoid)),
        Form(null),
        new(Datum.Edge, new(LengthUnit.In, 1 / 64.0)),
        LengthUnit.In) with
    {
        Given = new("Fairing, opening bend", "Nose fairing, left", "D-1047-3", "Müller & Søn A/S", "PO 88-2201", "C", "2026-11-27"),
    };

    public static DrawingJob Mirrored() => Job(
        "Bench seat, both ends",
        Panel(new ArcCurve(75, Angle.FromDegrees(80))) with { Mirrored = true, LeadOutMm = 420, TrimMm = 5 },
        Form(12));

    public static DrawingJob Hooked() => Job(
        "Hook, past half a turn",
        Panel(new ArcCurve(110, Angle.FromDegrees(200))) with { LeadOutMm = 40 },
        Form(24) with { LeadOutMm = 30, Stepping = new() { Folds = 24, Ends = SteppingEnds.Full } });

    public static DrawingJob Cone() => Job(
        "Hopper corner, cone",
        Panel(Taper(60, 120)) with { LeadOutMm = 100 },
        Form(9));

    /// <summary>A cone whose panel ends where its curve ends.</summary>
    public static DrawingJob BareCone(double leadInMm, double leadOutMm) => Job(
        "Hopper corner without leads",
        Panel(Taper(60, 120)) with { LeadInMm = leadInMm, LeadOutMm = leadOutMm },
        Form(9));

    public static DrawingJob MirroredTaper() => Job(
        "Tapered hood",
        Panel(Taper(110, 70)) with { Mirrored = true, LeadOutMm = 400, TrimMm = 5 },
        Form(14),
        new(Datum.Edge, new(LengthUnit.In, 1 / 32.0)),
        LengthUnit.In);

    public static DrawingJob CannotBeMade() => Job(
        "Too wide for the brake",
        Panel(new ArcCurve(90, Angle.FromDegrees(90))) with { WidthMm = 1500 },
        Form(9) with { WidthMm = 1500 });

    /// <summary>A wide form that stands on ribs.</summary>
    public static DrawingJob Ribbed(double radiusMm = 200, double sweepDegrees = 80, int folds = 14) => Job(
        "Bar front on ribs",
        Panel(new ArcCurve(radiusMm, Angle.FromDegrees(sweepDegrees))),
        Form(folds) with { Backing = FormBacking.Ribs });

    /// <summary>Folds so close that their labels do not find room beside them.</summary>
    public static DrawingJob CloseFolds() => Job(
        "Tight and smooth",
        Panel(new ArcCurve(60, Angle.FromDegrees(150))) with { Sheet = new(Material("steel-cr-cs"), 0.8) },
        Form(60) with { Sheet = new(Material("steel-cr-cs"), 1), FoldRadiusMm = 1 });

    /// <summary>A panel of one radius.</summary>
    public static DrawingJob ArcJob(double radiusMm, double sweepDegrees) =>
        Job("One radius", Panel(new ArcCurve(radiusMm, Angle.FromDegrees(sweepDegrees))), Form(null));

    /// <summary>More folds than anyone folds, with names as long as a caller may make them.</summary>
    public static DrawingJob TwoHundredFolds()
    {
        var steel = Material("steel-cr-cs") with { Name = string.Join(' ', Enumerable.Repeat("Unpronounceablesteel", 12)) };
        return Job(
            string.Concat(Enumerable.Repeat("An endless title without end ", 12)),
            Panel(new ArcCurve(1200, Angle.FromDegrees(100))) with { Sheet = new(steel, 4) },
            Form(200) with { Sheet = new(steel, 1.5) });
    }

    public static DrawingJob Job(
        string title, PanelSpec panel, FormSpec form, MarkSpec? marks = null, LengthUnit units = LengthUnit.Mm)
    {
        BrakeSpec brake = new() { LengthMm = 1250 };
        marks ??= new(Datum.Edge, Millimetres);
        var job = new FormJob(panel, form, brake, marks);
        return new(
            FormPlan.Compute(job),
            job,
            units,
            title,
            "sha256:0f1e2d3c4b5a69788796a5b4c3d2e1f00f1e2d3c4b5a69788796a5b4c3d2e1f0",
            BenchWording.Of);
    }

    // Planning takes much longer than drawing.
    private static Func<DrawingJob> Once(Func<DrawingJob> make)
    {
        var job = new Lazy<DrawingJob>(make);
        return () => job.Value;
    }

    private static PanelSpec Panel(PanelCurve curve) => new()
    {
        Sheet = new(Material("ss-304"), 1.2),
        Curve = curve,
        WidthMm = 600,
        LeadInMm = 80,
        LeadOutMm = 150,
        Finish = Finish.Satin,
    };

    private static TaperCurve Taper(double nearMm, double farMm) => new(
        new ArcCurve(nearMm, Angle.FromDegrees(90)), new ArcCurve(farMm, Angle.FromDegrees(90)), 400, TaperPlacement.Concentric, Point.Origin);

    private static FormSpec Form(int? folds) => new()
    {
        Sheet = new(Material("steel-cr-cs"), 2),
        FoldRadiusMm = 2,
        LeadInMm = 60,
        LeadOutMm = 60,
        WidthMm = 600,
        Stepping = new() { Folds = folds },
    };

    private static Material Material(string id) =>
        MaterialCatalog.Default.TryFind(id, out var material) ? material : throw new ArgumentException(id);
}
