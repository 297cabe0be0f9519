using Forming.Checks;
using Forming.Jobs;
using Forming.Numerics;
using Forming.Plans;
using Forming.Pulling;

namespace Forming.Tests.Panels;

/// <summary>Ribs that keep a form from bending: how many, where, and what to cut.</summary>
public class RibsTests
{
    private static readonly PanelSpec Arc = Workshop.Panel(Workshop.Arc(90, 90)) with { LeverMm = 100, WidthMm = 600 };

    [Theory]
    [InlineData(150, 2)]
    [InlineData(600, 4)]
    [InlineData(1250, 8)]
    public void One_stands_at_each_edge_and_none_is_further_than_200_mm_from_the_next(double width, int count)
    {
        var ribs = Ribbed(Arc with { WidthMm = width }, width).Form.Ribs!;
        Assert.Equal(count, ribs.AtMm.Count);
        Assert.Equal((0, width), (ribs.AtMm[0], ribs.AtMm[^1]));
        Assert.All(ribs.AtMm.Zip(ribs.AtMm.Skip(1)), pair => Assert.Equal(ribs.SpacingMm, pair.Second - pair.First, 9));
        Assert.InRange(ribs.SpacingMm, 0, 200);
    }

    // Navier's double series for a plate on four simply supported edges, six times as long as wide, under a line load across its middle.
    [Fact]
    public void Between_ribs_the_sheet_bends_as_a_plate_does_under_a_line_load()
    {
        var sheet = Workshop.Form().Sheet;
        const double push = 12, spacing = 150, length = 6 * spacing;
        double moment = 0;
        for (var m = 1; m < 400; m += 2)
        {
            for (var n = 1; n < 4000; n += 2)
            {
                double a = m / spacing, b = n / length, v = sheet.Material.PoissonRatio;
                var load = 8 * push / (Math.PI * length * m) * Math.Sin(n * Math.PI / 2);
                var square = (a * a) + (b * b);
                moment += load * ((a * a) + (v * b * b)) / (Math.PI * Math.PI * square * square) * Math.Sin(m * Math.PI / 2) * Math.Sin(n * Math.PI / 2);
            }
        }

        var share = 6 * moment / (sheet.ThicknessMm * sheet.ThicknessMm) / sheet.Material.YieldMpa;
        Workshop.Near(share, Ribs.Of(sheet, spacing, push).ShareOfYield * spacing / Ribs.Of(sheet, spacing, push).SpacingMm, 0.005);
    }

    [Fact]
    public void A_thin_form_that_is_pulled_hard_needs_ribs_closer_together()
    {
        var stiff = Arc with { Sheet = new(Workshop.Of("ss-304"), 3), LeverMm = 150 };
        var (thick, thin) = (Ribbed(stiff, 600, 3).Form.Ribs!, Ribbed(stiff, 600, 1.5).Form.Ribs!);
        Assert.True(thin.SpacingMm < thick.SpacingMm, $"{thin.SpacingMm} and {thick.SpacingMm}");
        Assert.True(thick is { SpacingMm: < 200, HoldSheet: true }, $"{thick.SpacingMm} {thick.ShareOfYield}");
    }

    [Fact]
    public void Where_no_rib_is_close_enough_a_thicker_form_is_asked_for()
    {
        var plan = FormPlan.Compute(Job(Arc with { Sheet = new(Workshop.Of("ss-304"), 3), LeverMm = 60 }, 600, 0.8), _ => true);
        var check = Workshop.CheckOf(plan, "form-yield");
        Assert.Equal(Verdict.Warn, check.Verdict);
        Assert.Equal(JobField.FormThickness, Assert.Single(check.Remedy!.Changes).Field);
    }

    [Fact]
    public void A_bare_form_that_would_bend_for_good_is_told_how_many_ribs_and_how_far_apart()
    {
        var plan = FormPlan.Compute(Job(Arc with { LeverMm = 60 }, 600, 0.8, FormBacking.None), _ => true);
        var check = Workshop.CheckOf(plan, "form-yield");
        Assert.Equal(Verdict.Fail, check.Verdict);
        Assert.Equal(FormBacking.Ribs, Assert.Single(check.Remedy!.Changes).Word);
        Assert.Contains(FormattableString.Invariant($"put {plan.Form.Ribs!.AtMm.Count} ribs"), check.Remedy.Text.ToString(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal);
        Assert.Null(Workshop.Plan(Arc, Workshop.Form() with { Sheet = new(Workshop.Of("steel-cr-cs"), 4), FoldRadiusMm = 5 }).Form.Ribs);
    }

    [Theory]
    [InlineData(30)]
    [InlineData(60)]
    [InlineData(90)]
    [InlineData(120)]
    [InlineData(170)]
    public void A_rib_fills_the_form_from_the_clamp_on(double sweep)
    {
        var plan = Ribbed(Arc with { Curve = Workshop.Arc(90, sweep), Clamp = new(15, 40, 25) }, 600);
        var outline = plan.Form.Ribs!.Outline;
        var inside = plan.Form.Section.InsideProfile;
        Assert.Equal(new Point(inside[1].X - 15, inside[0].Y), outline[0]);
        Assert.All(outline, corner => Assert.True(corner.X >= outline[0].X - 1e-9));
        Assert.Null(SimplePolygon.FirstCrossing(outline));
        // Every corner but those of the base lies on the inside of the form.
        Assert.All(outline.Skip(1).SkipLast(1).Take(inside.Count - 3), corner => Assert.Contains(corner, inside));
        Assert.True(Area(outline) > 0, "left of the panel, where the form is");
    }

    private static double Area(IReadOnlyList<Point> corners) =>
        corners.Select((corner, i) => corner.Cross(corners[(i + 1) % corners.Count]) / 2).Sum();

    private static FormPlan Ribbed(PanelSpec panel, double width, double thickness = 2) => FormPlan.Compute(Job(panel, width, thickness), _ => false);

    private static FormJob Job(PanelSpec panel, double width, double thickness, FormBacking backing = FormBacking.Ribs) => new(
        panel,
        Workshop.Form() with
        {
            Sheet = new(Workshop.Of("steel-cr-cs"), thickness),
            FoldRadiusMm = 4,
            WidthMm = width,
            Backing = backing,
        },
        Workshop.Brake with { LengthMm = 2000 },
        Workshop.Marks);
}
