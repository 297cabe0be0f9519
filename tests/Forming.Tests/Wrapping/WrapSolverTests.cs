using Forming.Curves;
using Forming.Folds;
using Forming.Jobs;
using Forming.Prediction;
using Forming.Springback;
using Forming.Wrapping;

namespace Forming.Tests.Wrapping;

/// <summary>Forms found on the simulated pull, so that the panel comes off as wanted.</summary>
public class WrapSolverTests
{
    /// <summary>Sheet, thickness, radius, sweep, folds; the largest miss after the best fit and the radius that an independent search came to.</summary>
    /// <remarks>Computed by another implementation of the wrap model, with other unknowns and the curve alone in its fit.</remarks>
    public static TheoryData<string, double, double, double, int, double, double> Jobs => new()
    {
        { "al-3003-h14", 1.6, 75, 90, 8, 0.81, 74.5 },
        { "steel-cr-cs", 0.9, 150, 90, 11, 2.10, 149.2 },
        { "ss-304", 1.27, 100, 90, 8, 1.27, 99.2 },
        { "al-5052-h32", 2.0, 120, 90, 11, 1.80, 119.5 },
        { "steel-cr-cs", 1.0, 600, 30, 9, 1.28, 587 },
        { "ss-304", 0.8, 400, 30, 9, 1.35, 388 },
    };

    [Theory]
    [MemberData(nameof(Jobs))]
    public void The_panel_comes_off_as_it_is_asked_for(
        string material, double thickness, double radius, double sweep, int folds, double missOfPureBending, double radiusElsewhere)
    {
        var (solved, pure) = Solve(material, thickness, radius, sweep, folds, FormBacking.Ribs);
        var (shape, before) = (solved.Prediction.Shape!, pure.Shape!);
        Workshop.Within(0.05, sweep, shape.Sweep.Degrees);
        Assert.True(Math.Abs(shape.RadiusMm!.Value - radius) <= Math.Abs(radiusElsewhere - radius) + (0.001 * radius), $"R {shape.RadiusMm}");
        Workshop.Near(radius, shape.RadiusMm.Value, 0.01);
        Workshop.Near(missOfPureBending, before.MissMm, 0.15);
        Assert.True(shape.MissMm < 0.3 * before.MissMm, $"{shape.MissMm:0.000} of {before.MissMm:0.000} mm");
        Assert.True(shape.HeldMissMm < 1, $"{shape.HeldMissMm:0.00} mm off the flats");
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void A_bare_forms_give_is_allowed_for(
        string material, double thickness, double radius, double sweep, int folds, double missOfPureBending, double radiusElsewhere)
    {
        _ = (missOfPureBending, radiusElsewhere);
        var (bare, _) = Solve(material, thickness, radius, sweep, folds, FormBacking.None);
        var (ribbed, _) = Solve(material, thickness, radius, sweep, folds, FormBacking.Ribs);
        Workshop.Within(0.05, sweep, bare.Prediction.Shape!.Sweep.Degrees);
        Assert.True(bare.Prediction.Give!.Rotation.Degrees > 0.5);
        Assert.Null(ribbed.Prediction.Give);
        Assert.True(bare.Form.Folds.Polygon.EndTurn < ribbed.Form.Folds.Polygon.EndTurn, "a form that closes by itself is folded less");
    }

    [Fact]
    public void One_stop_setting_stays_one()
    {
        var (solved, _) = Solve("steel-cr-cs", 0.9, 150, 90, 11, FormBacking.Ribs);
        var inner = solved.Form.Folds.Polygon.Angles[1..^1];
        Assert.All(inner, angle => Workshop.Near(inner[0], angle, 1e-12));
    }

    private static (SolvedForm Solved, PanelPrediction Pure) Solve(
        string material, double thickness, double radius, double sweep, int folds, FormBacking backing)
    {
        var panel = Workshop.Panel(Workshop.Arc(radius, sweep)) with { Sheet = new(Workshop.Of(material), thickness), Springback = new SolvedOnWrap() };
        var form = Workshop.Form(new() { Folds = folds }) with { Backing = backing };
        var job = new FormJob(panel, form, Workshop.Brake, Workshop.Marks);
        var fold = new FoldShape(form.FoldRadiusMm, form.Sheet.ThicknessMm, NeutralLine.Factor(form.FoldRadiusMm, form.Sheet.ThicknessMm));
        var finished = FinishedCurve.On(panel.Curve, panel.Surface, thickness);
        var pure = WrappedForm.Solve(finished, job, fold, default);
        var solved = new WrapSolver(pure, finished, job, fold, new(PullWork.Most), default).Solve();
        return (solved!, PlannedPull.Predict(pure, job, fold, new(PullWork.Most), default));
    }
}
