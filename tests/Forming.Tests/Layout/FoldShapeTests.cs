using Forming.Layout;

namespace Forming.Tests.Layout;

/// <summary>Bend allowance, setback and deduction against published tables and worked examples.</summary>
public class FoldShapeTests
{
    private const double Degree = Workshop.Degree;

    /// <summary>The neutral factor that the FAA's 0.0078 T a degree stands for.</summary>
    private const double FaaFactor = 0.0078 / Degree;

    [Theory]
    [Published("bend-allowance-checks.csv")]
    public void A_fold_takes_its_allowance_setback_and_deduction(
        double radius, double thickness, double degrees, double factor, double allowance, double setback, double deduction)
    {
        var fold = new FoldShape(radius, thickness, factor);
        Workshop.Within(6e-7, allowance, fold.BendAllowance(degrees * Degree));
        Workshop.Within(6e-7, setback, fold.Setback(degrees * Degree));
        Workshop.Within(6e-7, deduction, fold.Deduction(degrees * Degree));
    }

    [Theory]
    [Published("faa-bend-allowance-chart.csv")]
    public void The_aircraft_bend_allowance_chart_is_the_same_formula(
        double radius, double thickness, double degrees, double allowance, double halfDigit) =>
        Workshop.Within((0.0015 * allowance) + halfDigit, allowance, new FoldShape(radius, thickness, FaaFactor).BendAllowance(degrees * Degree));

    [Theory]
    [Published("faa-setback-factors.csv")]
    public void The_aircraft_setback_table_is_the_tangent_of_half_the_angle(double degrees, double factor, double tolerance) =>
        Workshop.Within(tolerance, factor, new FoldShape(0.75, 0.25, 0.5).Setback(degrees * Degree));

    [Theory]
    [Published("machinery-handbook-straight-lengths.csv")]
    public void The_machinists_straight_lengths_are_the_same_formula(
        double thickness, double radius, double degrees, double factor, double length) =>
        Workshop.Near(length, new FoldShape(radius, thickness, factor).BendAllowance(degrees * Degree), 1e-3);

    // FAA-H-8083-31 ch. 4 (read in three web copies): U-channel of 0.040 in 2024-T3, R = 0.16 in, outside 1.00/2.00/1.00 in.
    // Setback 0.200 each, flats 0.8/1.6/0.8; the chart's 0.27 in is its column R = 5/32 in; developed width 3.74 in.
    [Fact]
    public void The_aircraft_handbooks_channel_develops_to_3_74_inches()
    {
        Workshop.Within(1e-12, 0.200, new FoldShape(0.16, 0.040, FaaFactor).Setback(90 * Degree));
        var allowance = new FoldShape(5.0 / 32, 0.040, FaaFactor).BendAllowance(90 * Degree);
        Workshop.Within(0.005, 0.27, allowance);
        Workshop.Within(0.01, 3.74, 0.8 + allowance + 1.6 + allowance + 0.8);
    }

    // Sheet-metal training workbook (read): T = 0.050, R = 0.032, 90°: BA 0.085, twice the setback 0.164, deduction 0.079 in.
    [Fact]
    public void The_training_workbooks_bend_loses_79_thousandths()
    {
        var fold = new FoldShape(0.032, 0.050, FaaFactor);
        Workshop.Within(5e-4, 0.085, fold.BendAllowance(90 * Degree));
        Workshop.Within(5e-4, 0.164, 2 * fold.Setback(90 * Degree));
        Workshop.Within(5e-4, 0.079, fold.Deduction(90 * Degree));
    }

    // AC 43.13-1B ¶4-56 (read): T = 0.064, R = 0.25 in: 0.130 in at 45°, 0.758 in at 135°.
    [Theory]
    [InlineData(45, 0.130)]
    [InlineData(135, 0.758)]
    public void The_advisory_circulars_setbacks_hold(double degrees, double setback) =>
        Workshop.Within(5e-4, setback, new FoldShape(0.25, 0.064, 0.5).Setback(degrees * Degree));

    [Theory]
    [Published("din-6935-developed-length.csv")]
    public void The_standards_correction_of_the_developed_length_holds(double r, double s, double opening, double k, double v)
    {
        var factor = NeutralLine.Factor(r, s);
        Workshop.Within(1e-6, k, 2 * factor);
        var fold = new FoldShape(r, s, factor);
        var turned = (180 - opening) * Degree;
        var outside = opening <= 90 ? 2 * (r + s) : 2 * fold.Setback(turned);
        Workshop.Within(1.5e-6, v, fold.BendAllowance(turned) - outside);
    }

    // One 15° bend, r 3, s 2, which the standard lets be nothing: -0.338 mm; twelve of them lose 4 mm.
    [Fact]
    public void A_small_fold_keeps_the_correction_that_the_standard_drops() =>
        Workshop.Within(5e-4, 0.338, new FoldShape(3, 2, NeutralLine.Factor(3, 2)).Deduction(15 * Degree));

    [Fact]
    public void Past_five_thicknesses_the_neutral_line_is_the_middle()
    {
        Assert.Equal(0.5, NeutralLine.Factor(10.1, 2));
        Assert.Equal(0.5, NeutralLine.Factor(1000, 2));
        Workshop.Within(3e-4, 0.5, NeutralLine.Factor(10, 2));
    }

    [Fact]
    public void Below_a_fifth_of_the_thickness_no_neutral_factor_is_published()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => NeutralLine.Factor(0.39, 2));
        Workshop.Within(1e-12, (0.65 + (0.5 * Math.Log10(0.2))) / 2, NeutralLine.Factor(0.4, 2));
        var sharp = Workshop.Form() with { FoldRadiusMm = 0.3 };
        var refused = Assert.Throws<Results.NoSolutionException>(() => Workshop.Plan(Workshop.Panel(Workshop.Arc(60, 90)), sharp));
        Assert.Equal("form.neutral-factor-needed", refused.Code);
        Assert.Equal(0.42, Workshop.Plan(Workshop.Panel(Workshop.Arc(60, 90)), sharp with { NeutralFactor = 0.42 }).Form.NeutralFactor);
    }
}
