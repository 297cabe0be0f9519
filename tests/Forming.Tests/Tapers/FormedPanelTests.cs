using Forming.Curves;
using Forming.Tapers;

namespace Forming.Tests.Tapers;

public class FormedPanelTests
{
    public static TheoryData<TaperCurve> Tapers => new(
        new TaperCurve(Arc(60, 90), Arc(120, 90), 400, TaperPlacement.Concentric, default),
        new TaperCurve(Arc(60, 90), Arc(120, 90), 400, TaperPlacement.Flush, default),
        new TaperCurve(
            new ProgressiveCurve(80, 200, Angle.FromDegrees(70), ProgressiveLaw.Involute), Arc(110, 70), 500, TaperPlacement.Offset, new(12, -8)),
        new TaperCurve(
            Arc(150, 120), new EllipseCurve(200, 120, Angle.FromDegrees(-30), Angle.FromDegrees(90)), 600, TaperPlacement.Concentric, default),
        new TaperCurve(
            new ProgressiveCurve(80, 200, Angle.FromDegrees(70), ProgressiveLaw.Clothoid),
            new ProgressiveCurve(90, 150, Angle.FromDegrees(70), ProgressiveLaw.Logarithmic),
            500,
            TaperPlacement.Flush,
            default));

    [Theory]
    [MemberData(nameof(Tapers))]
    public void Without_springback_the_frame_returns_both_end_curves(TaperCurve taper)
    {
        var panel = RuledPanel.Of(taper, Surface.Inside, 1.2);
        var formed = FormedPanel.Solve(panel, _ => 1);
        for (var i = 0; i <= 40; i++)
        {
            var turn = panel.Sweep * i / 40;
            var triad = formed.TriadAt(turn);
            var near = formed.NearAt(turn) - (panel.OffsetMm * triad.N);
            var far = near + (panel.At(turn).Length * triad.E);
            var (planNear, planFar) = (panel.PlanNear(turn), panel.PlanFar(turn));
            Assert.True((near - new Point3(planNear.X, planNear.Y, 0)).Length < 1e-9);
            Assert.True((far - new Point3(planFar.X, planFar.Y, panel.HeightMm)).Length < 1e-9);
        }
    }

    private static ArcCurve Arc(double radius, double degrees) => new(radius, Angle.FromDegrees(degrees));
}
