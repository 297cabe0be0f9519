using Forming.Curves;
using Forming.Folds;
using Forming.Tapers;
using MathNet.Numerics.RootFinding;

namespace Forming.Tests.Tapers;

public class TaperFoldsTests
{
    private const double Thickness = 1.2;
    private const double Degree = Math.PI / 180;
    private static readonly FoldShape Fold = new(2, 2, NeutralLine.Factor(2, 2));

    [Fact]
    public void The_independent_reference_is_met_on_a_right_cone_of_nine_folds()
    {
        // 1.2 mm sheet, radii 60 and 120 inside, sweep 90°, length 400, concentric, measured factor 0.8; form 2 mm, fold radius 2.
        var taper = new TaperCurve(Arc(60), Arc(120), 400, TaperPlacement.Concentric, default);
        var formed = FormedPanel.Solve(RuledPanel.Of(taper, Surface.Inside, Thickness), _ => 1 / 0.8);
        Assert.Equal(111.25534, formed.TotalTurn / Degree, 5);

        var folds = TaperFolds.Through(formed, EqualTurns(formed, 8), formed.Panel.Sweep, Fold, Thickness);
        Assert.Equal(6.95395, folds.Angles[0] / Degree, 5);
        Assert.Equal(6.95395, folds.Angles[^1] / Degree, 5);
        Assert.All(folds.Angles[1..^1], angle => Assert.Equal(13.90790, angle / Degree, 5));
        Assert.Equal(404.47497, (folds.Far[3] - folds.Near[3]).Length, 5);
        Assert.Equal(10.75413, folds.Straight(0, isFar: false), 5);
        Assert.Equal(22.50579, folds.Straight(0, isFar: true), 5);
        var between = (folds.Far[3] - folds.Near[3]).Unit().Dot((folds.Far[4] - folds.Near[4]).Unit());
        Assert.Equal(1.66474, Math.Acos(between) / Degree, 4);
        Assert.True(folds.TouchMissMm < 1e-9 && folds.LineShiftMm < 1e-9 && folds.FacetFlatnessMm < 1e-9);
    }

    private static double[] EqualTurns(FormedPanel formed, int steps) =>
    [
        .. Enumerable.Range(0, steps + 1).Select(j => j == 0 ? 0 : j == steps
            ? formed.Panel.Sweep
            : Brent.FindRoot(turn => formed.Turn.At(turn) - (formed.TotalTurn * j / steps), 0, formed.Panel.Sweep, 1e-14)),
    ];

    private static ArcCurve Arc(double radius) => new(radius, Angle.FromDegrees(90));
}
