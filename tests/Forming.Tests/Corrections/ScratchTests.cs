using System.Diagnostics;
using Xunit.Abstractions;
using Forming.Corrections;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Forming.Tests.Corrections;

public class ScratchTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData("al-3003-h14", 1.6, 75, 90, 8)]
    [InlineData("steel-cr-cs", 0.9, 150, 90, 11)]
    [InlineData("al-5052-h32", 2.0, 120, 90, 11)]
    [InlineData("ss-304", 1.2, 90, 90, 9)]
    [InlineData("steel-cr-cs", 1.0, 400, 40, 8)]
    [InlineData("steel-cr-cs", 1.0, 600, 30, 9)]
    public void Look(string material, double thickness, double radius, double sweep, int folds)
    {
        var pull = CameOff.Form(material, thickness, radius, sweep, folds);
        var noise = new Normal(0, 1, new MersenneTwister(3));
        foreach (var by in new[] { 0.88, 1.0, 1.12, 1.2, 1.45 })
        {
            PredictionShapes(pull, by, noise);
        }
    }

    private void PredictionShapes(Forming.Prediction.PredictionJob pull, double by, Normal noise)
    {
        Forming.Prediction.PredictedShape truth;
        try { truth = CameOff.Truth(pull, by); } catch (Xunit.Sdk.XunitException) { output.WriteLine($"{by}: no"); return; }
        var ks = truth.Sweep.Radians / pull.Form.FoldAngles.Sum();
        foreach (var (step, most) in new[] { (0.5, 4), (0.1, 20) })
        {
            var job = CameOff.Job(pull, CameOff.Read(truth, noise), step: step, mostSteps: most);
            var clock = Stopwatch.StartNew();
            var report = CorrectionReport.Of(job);
            var y = report.Yield;
            output.WriteLine(FormattableString.Invariant($"x{by} Ks {ks:F2} off {truth.SweepMiss.Degrees:F2}° R {truth.RadiusMm:F1}: learnt {y.Factor / by:F3} [{y.EffectiveMpa.Low / y.UsedMpa:F3} {y.EffectiveMpa.High / y.UsedMpa:F3}] metal [{y.MetalMpa.Low / y.UsedMpa:F3} {y.MetalMpa.High / y.UsedMpa:F3}] alone {y.ByReadingsMpa.Value / y.UsedMpa:F3}; step {step} meets {report.Form.Meets} folds {string.Join(' ', report.Form.Steps)} lb {report.Form.LowerBound} fewest {report.Form.IsFewest} after {report.After.Shape!.SweepMiss.Degrees:F2}° {report.After.Shape.RadiusMiss:P1} miss {report.After.Shape.MissMm:F2} (as is {report.AsIs.Shape!.MissMm:F2}); second {report.Second.Verdict} {report.Second.Panel?.SweepMiss.Degrees:F2}; pulls {report.Pulls} {clock.ElapsedMilliseconds} ms; doubts {string.Join(',', y.Doubts.Select(d => d.Id))}"));
        }
    }
}
