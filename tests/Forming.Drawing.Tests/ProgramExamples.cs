using Forming.Checks;
using Forming.Curves;
using Forming.Facets;
using Forming.Folds;
using Forming.Jobs;
using Forming.Layout;
using Forming.Materials;
using Forming.Plans;
using Forming.Programs;
using Forming.Programs.Brakes;
using Forming.Springback;

namespace Forming.Drawing.Tests;

/// <summary>The programs that the sheet and the file are tried on.</summary>
public static class ProgramExamples
{
    // A search takes seconds: each is made once.
    private static readonly Dictionary<string, Lazy<ProgramJob>> Made = new()
    {
        ["six-folds"] = new(SixFolds),
        ["press-inches"] = new(Press),
        ["forty-folds"] = new(FortyFolds),
        ["half-turn-press"] = new(HalfTurn),
        ["cone"] = new(Cone),
        ["taper-press-inches"] = new(TaperPress),
    };

    public static IEnumerable<string> Names => Made.Keys;

    public static ProgramJob Of(string name) => Made[name].Value;

    private static ProgramJob SixFolds() => Job(Part(6, 60, 24, 90, 90), new LeafBrake { LengthMm = 1250 });

    private static ProgramJob Press() => Job(Part(8, 90, 20, 100, 160), new PressBrake { LengthMm = 2000, DieOpeningMm = 12 }, LengthUnit.In);

    private static ProgramJob FortyFolds() => Job(Part(40, 150, 17, 90, 700), new LeafBrake { LengthMm = 1250 });

    private static ProgramJob HalfTurn() => Job(Part(12, 180, 24, 60, 60), new PressBrake { LengthMm = 2000 });

    private static ProgramJob Cone() => Job(
        Taper(new(new ArcCurve(60, Angle.FromDegrees(80)), new ArcCurve(110, Angle.FromDegrees(80)), 400, TaperPlacement.Concentric, default), new(Datum.Edge, new(LengthUnit.Mm, 0.5))),
        new LeafBrake { LengthMm = 1250 });

    private static ProgramJob TaperPress() => Job(
        Taper(new(new ArcCurve(130, Angle.FromDegrees(65)), new ArcCurve(90, Angle.FromDegrees(65)), 500, TaperPlacement.Flush, default), new(Datum.FarEdge, new(LengthUnit.In, 1 / 64.0))),
        new PressBrake { LengthMm = 1250 },
        LengthUnit.In);

    private static ProgramPart Taper(TaperCurve curve, MarkSpec marks)
    {
        MaterialCatalog.Default.TryFind("steel-cr-cs", out var steel);
        var panel = new PanelSpec { Sheet = new(steel!, 1.2), Curve = curve, WidthMm = 500, LeadInMm = 60, LeadOutMm = 120, Finish = Finish.Satin, Springback = new PureBending() };
        var form = new FormSpec { Sheet = new(steel!, 2), FoldRadiusMm = 2, LeadInMm = 60, LeadOutMm = 70, WidthMm = 500, Stepping = new() };
        var job = new FormJob(panel, form, new BrakeSpec { LengthMm = 1250 }, marks);
        return ProgramPart.Of(FormPlan.Compute(job, _ => false), job);
    }

    private static ProgramPart Part(int folds, double sweepDegrees, double straightMm, double leadInMm, double leadOutMm)
    {
        double[] angles = [.. Enumerable.Repeat(Angle.FromDegrees(sweepDegrees / folds).Radians, folds)];
        return new(
            [leadInMm, .. Enumerable.Repeat(straightMm, folds - 1), leadOutMm],
            angles,
            [.. angles.Select(angle => (1.06 * angle) + Angle.FromDegrees(0.9).Radians)],
            new FoldShape(2, 2, 0.33),
            600,
            350,
            Angle.FromDegrees(0.5));
    }

    private static ProgramJob Job(ProgramPart part, ProgramBrake brake, LengthUnit units = LengthUnit.Mm)
    {
        MaterialCatalog.Default.TryFind("steel-cr-cs", out var steel);
        var program = BrakeProgram.Compute(part, brake, long.MaxValue);
        Assert.Null(program.Impossible);
        return new(
            program,
            part,
            brake,
            new Sheet(steel!, 2),
            program.Checks,
            program.Checks.Any(check => check.Verdict == Verdict.Warn) ? PlanVerdict.Attention : PlanVerdict.Ready,
            units,
            part.Flat?.Marks.Tape ?? new(units, units == LengthUnit.In ? 1 / 64.0 : 0.5),
            null,
            "Brake program",
            "sha256:0f1e2d3c4b5a69788796a5b4c3d2e1f00f1e2d3c4b5a69788796a5b4c3d2e1f0",
            BenchWording.Of);
    }
}
