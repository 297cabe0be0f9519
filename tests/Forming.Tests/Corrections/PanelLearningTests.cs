using Forming.Corrections;
using Forming.Outlook;
using Forming.Prediction;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Forming.Tests.Corrections;

/// <summary>What a panel teaches of its sheet, against panels of sheets that are known.</summary>
public class PanelLearningTests
{
    public static TheoryData<string, double, double, double, int> Jobs => new()
    {
        { "al-3003-h14", 1.6, 75, 90, 8 }, // springs back to 0.78 of its form
        { "ss-304", 1.2, 90, 90, 9 }, // 0.74
        { "al-5052-h32", 2.0, 120, 60, 7 }, // 0.66
        { "steel-cr-cs", 0.9, 150, 90, 9 }, // 0.66
        { "steel-cr-cs", 1.0, 350, 40, 7 }, // 0.5
        { "steel-cr-cs", 1.0, 450, 36, 7 }, // 0.4
    };

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Sweep_and_radius_tell_the_yield_to_three_percent(string material, double thickness, double radius, double sweep, int folds)
    {
        var pull = CameOff.Form(material, thickness, radius, sweep, folds);
        var noise = new Normal(0, 1, new MersenneTwister(11));
        foreach (var stronger in new[] { 0.85, 0.93, 1.06, 1.12, 1.2 })
        {
            var learnt = Learnt(CameOff.Job(pull, CameOff.Read(CameOff.Truth(pull, stronger), noise)));
            Workshop.Near(stronger, learnt.Factor, 0.03);
            Assert.Empty(learnt.Doubts);
        }
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Sweep_alone_radius_alone_and_a_template_alone_agree(string material, double thickness, double radius, double sweep, int folds)
    {
        var pull = CameOff.Form(material, thickness, radius, sweep, folds);
        var truth = CameOff.Truth(pull, 1.1);
        var both = CameOff.Read(truth, null);
        var face = thickness / 2;
        var points = truth.Curve.Where((_, i) => i % 4 == 0)
            .Select(point => point.Position + (face * Point.Along(point.Heading.Radians).Left())).ToArray();
        // In the template's own frame.
        var turned = Point.Along(2.1);
        MeasuredPanel[] readings =
        [
            both with { RadiusMm = null },
            both with { Sweep = null },
            new() { Points = [.. points.Select(point => point.TurnedTo(turned) + new Point(31, -7))], PointErrorMm = 0.2 },
        ];
        foreach (var read in readings)
            Workshop.Near(1.1, Learnt(CameOff.Job(pull, read)).Factor, 0.01);
    }

    [Fact]
    [Trait("Category", "Long")]
    public void Intervals_cover_nineteen_sheets_of_twenty()
    {
        const int Draws = 100;
        var normal = new Normal(0, 1, new MersenneTwister(7));
        var (drawn, effective, metal, narrower) = (0, 0, 0, 0);
        foreach (var job in Jobs.Skip(1))
        {
            var pull = CameOff.Form((string)job[0], (double)job[1], (double)job[2], (double)job[3], (int)job[4]);
            var scatter = ScatterDefaults.Of(pull.Panel);
            var foldError = Angle.FromDegrees(0.1).Radians;
            for (var i = 0; i < Draws; i++)
            {
                var yield = Math.Exp(scatter.Yield * normal.Sample());
                var thickness = 1 + (scatter.ThicknessMm / pull.Panel.Sheet.ThicknessMm * normal.Sample());
                var modulus = 1 + (scatter.Modulus * normal.Sample());
                var folded = pull with { Form = pull.Form with { FoldAngles = [.. pull.Form.FoldAngles.Select(angle => angle + (foldError * normal.Sample()))] } };
                var learnt = Learnt(CameOff.Job(pull, CameOff.Read(CameOff.Truth(folded, yield, thickness, modulus), normal), foldError: 0.1));
                drawn++;
                effective += learnt.EffectiveMpa.Holds(learnt.UsedMpa * yield / (thickness * modulus)) ? 1 : 0;
                metal += learnt.MetalMpa.Holds(learnt.UsedMpa * yield) ? 1 : 0;
                narrower += learnt.MetalMpa.High - learnt.MetalMpa.Low > learnt.EffectiveMpa.High - learnt.EffectiveMpa.Low ? 1 : 0;
            }
        }

        // Of 500, 475 are expected; three standard deviations are 15.
        Assert.Equal(500, drawn);
        Assert.InRange(effective, 460, 492);
        Assert.InRange(metal, 460, 492);
        Assert.Equal(drawn, narrower);
    }

    [Fact]
    public void A_thinner_sheet_looks_like_a_stronger_one_and_the_answer_says_so()
    {
        var pull = CameOff.Form("steel-cr-cs", 0.9, 150, 90, 9);
        var report = CorrectionReport.Of(CameOff.Job(pull, CameOff.Read(CameOff.Truth(pull, 1, 0.95), null)));
        Workshop.Near(1 / 0.95, report.Yield.Factor, 0.01);
        Workshop.Near(0.95 * 0.9, report.Yield.ThicknessInsteadMm, 0.01);
        Assert.Contains(report.Notes, note => note.Id == "yield-or-thickness");
        Assert.True(report.Yield.MetalMpa.Holds(report.Yield.GradeMpa));
    }

    [Fact]
    public void A_yield_far_from_the_grade_is_not_believed()
    {
        var pull = CameOff.Form("steel-cr-cs", 0.9, 150, 90, 9);
        var learnt = Learnt(CameOff.Job(pull, CameOff.Read(CameOff.Truth(pull, 1.45), null)));
        var doubt = Assert.Single(learnt.Doubts);
        Assert.Equal("yield-implausible", doubt.Id);
        Assert.Contains("micrometer", doubt.Text.Format, StringComparison.Ordinal);
    }

    [Fact]
    public void A_radius_that_contradicts_the_sweep_is_named()
    {
        var pull = CameOff.Form("steel-cr-cs", 0.9, 150, 90, 9);
        var read = CameOff.Read(CameOff.Truth(pull, 1.1), null);
        Assert.Contains(Learnt(CameOff.Job(pull, read with { RadiusMm = read.RadiusMm - 12 })).Doubts, doubt => doubt.Id == "readings-apart");
    }

    [Fact]
    public void A_coarse_reading_leaves_the_grade_as_it_was()
    {
        var pull = CameOff.Form("al-3003-h14", 1.6, 75, 90, 8);
        var read = CameOff.Read(CameOff.Truth(pull, 1.15), null, sweepError: 8) with { RadiusMm = null };
        var learnt = Learnt(CameOff.Job(pull, read));
        Assert.InRange(learnt.Factor, 1.01, 1.1);
        Assert.True(learnt.PriorWeight > 0.5);
        Assert.True(learnt.EffectiveMpa.Holds(1.15 * learnt.UsedMpa));
    }

    private static LearntYield Learnt(CorrectionJob job)
    {
        var work = new PullWork(PullWork.Most);
        var nominal = PanelPrediction.Of(job.Pull, work, default);
        var pull = job.Pull with { Panel = job.Pull.Panel with { LeverMm = job.Pull.LeverMm } };
        return PanelLearning.Of(job, pull, nominal, work, default);
    }
}
