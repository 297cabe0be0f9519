using CsCheck;
using Forming.Blanks;
using Forming.Curves;
using Forming.Folds;
using Forming.Jobs;
using Forming.Materials;
using Forming.Plans;
using Forming.Wrapping;

namespace Forming.Tests.Panels;

/// <summary>What the panel is cut from and where it is marked.</summary>
public class PanelBlankTests
{
    private static readonly PanelSpec Arc = Workshop.Panel(Workshop.Arc(90, 90)) with { LeadInMm = 80, LeadOutMm = 150, TrimMm = 5 };

    // Mid surface of an inside radius of 90 in 1.5 mm: 90.75 × pi/2 = 142.550; 5 + 80 + 142.550 + 150 + 5.
    [Fact]
    public void A_blank_is_trim_lead_in_curve_lead_out_and_trim()
    {
        var plan = Workshop.Plan(Arc);
        Workshop.Within(1e-9, 240 + (90.75 * Math.PI / 2), plan.Panel.Blank.LengthMm);
        Assert.Equal(300, plan.Panel.Blank.WidthMm);
        Workshop.Near(plan.Panel.Blank.LengthMm * 300, plan.Panel.Blank.AreaMm2, 1e-12);
    }

    [Fact]
    public void A_mirrored_blank_has_the_curve_twice_and_the_lead_out_once()
    {
        var plan = Workshop.Plan(Arc with { Mirrored = true });
        Workshop.Within(1e-9, (2 * (85 + (90.75 * Math.PI / 2))) + 150, plan.Panel.Blank.LengthMm);
    }

    [Fact]
    public void A_mirrored_blank_is_twice_the_half_that_ends_on_the_centre_line() =>
        Gen.Select(Gen.Double[40, 200], Gen.Double[0.5, 3], Gen.Double[20, 170], Gen.Enum<ProgressiveLaw>(), Gen.Double[0, 200], Gen.Double[0, 300]).ForAll(
            (radius, opening, sweep, law, leadIn, leadOut) =>
            {
                var half = Arc with
                {
                    Curve = Workshop.Progressive(radius, radius * opening, sweep, law),
                    LeadInMm = leadIn,
                    LeadOutMm = leadOut / 2,
                    TrimMm = 0,
                };
                var whole = half with { LeadOutMm = leadOut, Mirrored = true };
                Workshop.Within(1e-9, 2 * Workshop.Plan(half).Panel.Blank.LengthMm, Workshop.Plan(whole).Panel.Blank.LengthMm);
            },
            iter: 60);

    [Fact]
    public void A_mirrored_panel_is_marked_alike_from_both_edges()
    {
        var panel = Workshop.Plan(Arc with { Mirrored = true }).Panel;
        var marks = panel.Marks;
        Assert.True(marks.Count % 2 == 0);
        for (var i = 0; i < marks.Count / 2; i++)
        {
            Workshop.Within(1e-9, panel.Blank.LengthMm - marks[i].AtMm, marks[^(i + 1)].AtMm);
            Assert.EndsWith(marks[i].Name, marks[^(i + 1)].Name, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Both_tangent_lines_the_trim_and_the_pull_are_marked()
    {
        var plan = Workshop.Plan(Arc with { LeverMm = 100 });
        Workshop.Within(1e-9, 5, Mark(plan, "trim line"));
        Workshop.Within(1e-9, 85, Mark(plan, "first tangent line"));
        Workshop.Within(1e-9, 85 + (90.75 * Math.PI / 2), Mark(plan, "last tangent line"));
        Workshop.Within(1e-9, 185 + (90.75 * Math.PI / 2), Mark(plan, "pull here"));
        Workshop.Within(1e-9, plan.Panel.Blank.LengthMm - 5, Mark(plan, "far trim line"));
    }

    // With half ends the first mold line lies p tan(a/2) past the tangent point; with full ends about half a facet.
    [Fact]
    public void The_forms_first_fold_is_marked_past_the_tangent_line_by_its_place_on_the_form()
    {
        var half = Workshop.Plan(Arc);
        var setback = 4 * Math.Tan(half.Form.Stations[0].FoldAngle.Radians / 2);
        Workshop.Within(1e-9, 85 + setback, Mark(half, "form's first fold"));

        var full = Workshop.Plan(Arc, Workshop.Form(new() { Ends = Forming.Facets.SteppingEnds.Full }));
        Workshop.Near(full.Form.Stations[0].FacetAfterMm / 2, Mark(full, "form's first fold") - 85, 0.02);
    }

    [Fact]
    public void A_flat_at_the_start_of_the_curve_is_lead_in_as_far_as_the_marks_go()
    {
        var chain = Arc with { Curve = new SegmentsCurve([new FlatCurve(30), Workshop.Arc(90, 90)]) };
        var same = Arc with { LeadInMm = 110 };
        var (expected, plan) = (Workshop.Plan(same), Workshop.Plan(chain, Workshop.Form() with { LeadInMm = 90 }));
        Workshop.Within(1e-9, expected.Panel.Blank.LengthMm, plan.Panel.Blank.LengthMm);
        Workshop.Within(1e-9, Mark(expected, "first tangent line"), Mark(plan, "first tangent line"));
        Workshop.Within(1e-9, Mark(expected, "form's first fold"), Mark(plan, "form's first fold"));
    }

    [Fact]
    public void A_flat_at_the_end_of_the_curve_is_lead_out_as_far_as_the_tangent_line_goes()
    {
        var chain = Arc with { Curve = new SegmentsCurve([Workshop.Arc(90, 90), new FlatCurve(30)]) };
        var (expected, plan) = (Workshop.Plan(Arc with { LeadOutMm = 180 }), Workshop.Plan(chain));
        Workshop.Within(1e-9, expected.Panel.Blank.LengthMm, plan.Panel.Blank.LengthMm);
        Workshop.Within(1e-9, Mark(expected, "last tangent line"), Mark(plan, "last tangent line"));
    }

    // 3003-H14, 1.5 mm, 240 × 100 mm: 240 × 100 × 1.5 × 2730e-9 = 0.09828 kg.
    [Fact]
    public void A_blank_weighs_its_area_times_thickness_times_density()
    {
        var blank = BlankShape.Rectangle(new Sheet(Workshop.Of("al-3003-h14"), 1.5), 240, 100, []);
        Workshop.Near(0.09828, blank.MassKg, 1e-12);
        Assert.Equal(new Point(240, 100), blank.Outline[2]);
        Assert.Equal(blank.Outline[0], blank.Outline[^1]);
    }

    // Inside radius of twice the thickness, 1.5 mm, a quarter turn: 3 + K 1.5 in place of 3.75; K = (0.65 + 0.5 log10 2)/2 = 0.400257.
    [Fact]
    public void Below_five_thicknesses_the_neutral_line_moves_in()
    {
        var finished = FinishedCurve.On(Workshop.Arc(3, 90), Surface.Inside, 1.5);
        var blank = PanelBlank.Of(finished, Flat(1.5, 20, 30), 0, 10);
        Workshop.Within(1e-9, 50 + ((3 + (1.5 * (0.65 + (0.5 * Math.Log10(2))) / 2)) * Math.PI / 2), blank.LengthMm);
        Workshop.Within(1e-9, 20 + blank.LengthMm - 50, blank.Marks.Single(mark => mark.Name == "last tangent line").AtMm);
    }

    [Theory]
    [InlineData(5.03)]
    [InlineData(20)]
    public void From_five_thicknesses_on_the_blank_is_the_mid_surface(double ratio)
    {
        var finished = FinishedCurve.On(Workshop.Arc(1.5 * ratio, 90), Surface.Inside, 1.5);
        Workshop.Within(1e-12, finished.LengthMm, PanelBlank.Of(finished, Flat(1.5, 0, 0), 0, 0).LengthMm);
    }

    // Radius opening from 2 to 8 thicknesses: each place by its own factor, integrated here over a thousand strips.
    [Fact]
    public void A_changing_radius_is_corrected_place_by_place()
    {
        const double thickness = 1.5, sweep = Math.PI / 2;
        var finished = FinishedCurve.On(new ProgressiveCurve(3, 12, new(sweep), ProgressiveLaw.Involute), Surface.Inside, thickness);
        double length = 0;
        for (var i = 0; i < 1000; i++)
        {
            var inside = 3 + (9 * (i + 0.5) / 1000);
            length += (inside + (NeutralLine.Factor(inside, thickness) * thickness)) * sweep / 1000;
        }

        // The published factor has a kink at five thicknesses, which costs a quadrature its last digits.
        Workshop.Within(5e-4, length, PanelBlank.Of(finished, Flat(thickness, 0, 0), 0, 0).LengthMm);
    }

    private static PanelSpec Flat(double thickness, double leadIn, double leadOut) => Workshop.Panel(Workshop.Arc(100, 90)) with
    {
        Sheet = new(Workshop.Of("al-3003-h14"), thickness),
        LeadInMm = leadIn,
        LeadOutMm = leadOut,
        TrimMm = 0,
    };

    private static double Mark(FormPlan plan, string name) => plan.Panel.Marks.Single(mark => mark.Name == name).AtMm;
}
