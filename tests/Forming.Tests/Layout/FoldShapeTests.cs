using Forming.Folds;

namespace Forming.Tests.Layout;

/// <summary>Where published rules of the fold end.</summary>
public class FoldShapeTests
{
    private const double Degree = Workshop.Degree;

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
