using CsCheck;
using Forming.Materials;
using Forming.Prediction;
using Forming.Springback;

namespace Forming.Tests.Prediction;

/// <summary>A panel pulled over a faceted form and let go.</summary>
public class PanelWrapTests
{
    private static readonly int[] Coarser = [16, 8, 4, 2];
    private static readonly int[] Fine = [24, 48];
    private static readonly double[] Levers = [60, 90, 130, 180];
    private static readonly Sheet HalfHard = new(Workshop.Swift(69e3, 0.33, 145, 0.03, 0.002), 1.5875);
    private static readonly Sheet Stainless = new(Workshop.Hardening(193e3, 0.29, 260, 0.45, 1275), 1.2);

    [Fact]
    public void With_many_small_facets_the_panel_springs_back_as_in_pure_bending()
    {
        var law = BendingLaw.Of(Stainless);
        foreach (var folds in Fine)
        {
            var (form, loadedRadius) = Even(folds, 90, 60, 2, Stainless.ThicknessMm);
            var panel = PanelWrap.Compute(form, law, new(60));

            var pure = law.Release(1 / loadedRadius);
            Assert.InRange(panel.MeanCurvature - pure, -0.02 / loadedRadius, 0.02 / loadedRadius);
        }
    }

    // Flat facets and sharp folds: the height of a flat chord under an arc is c²k/8, and the bend sits in the quarters next to the folds.
    [Fact]
    public void The_coarser_the_facets_the_flatter_they_come_off()
    {
        var flatness = Coarser.Select(facets =>
        {
            var (form, _) = Even(facets, 120, 60, 2, HalfHard.ThicknessMm);
            var facet = PanelWrap.Compute(form, BendingLaw.Of(HalfHard), new(120)).Facets[1];
            var length = 120 * Workshop.Degree / facets * 60;
            return facet.RippleMm / (length * length * facet.MeanCurvature / 8);
        }).ToArray();

        Assert.Equal(flatness.Order(), flatness);
        Assert.InRange(flatness[0], 0, 0.2);
        Assert.InRange(flatness[^1], 0.5, 1);
    }

    [Fact]
    public void More_lever_leaves_less_ripple_until_the_free_side_curls_up()
    {
        var (form, _) = Even(6, 90, 50, 2, HalfHard.ThicknessMm);
        var law = BendingLaw.Of(HalfHard);
        var ripples = Levers.Select(lever => PanelWrap.Compute(form, law, new(lever)).Facets.Max(facet => facet.RippleMm)).ToArray();

        Assert.Equal(ripples.OrderDescending(), ripples);
        Assert.NotEqual(WrapEnd.Complete, PanelWrap.Compute(form, law, new(1500)).End);
    }

    [Fact]
    public void The_hand_force_times_lever_is_the_moment_at_the_last_fold()
    {
        var (form, loadedRadius) = Even(8, 80, 80, 2, Stainless.ThicknessMm);
        var law = BendingLaw.Of(Stainless);
        var panel = PanelWrap.Compute(form, law, new(150));

        Assert.InRange(panel.Pull[^1].ForcePerWidth * 150 / law.At(1 / loadedRadius).MomentPerWidth, 0.95, 1.04);
        Assert.Equal(Enumerable.Range(2, 9), panel.Pull.Select(step => step.Fold));
        Assert.Equal(panel.Pull.Select(step => step.EndAngle.Radians).Order(), panel.Pull.Select(step => step.EndAngle.Radians));
    }

    [Fact]
    public void A_panel_twice_as_large_in_everything_comes_off_twice_as_large()
    {
        var (form, _) = Even(6, 75, 60, 2, 1.2);
        var large = new StandingForm([.. form.FacetsMm.Select(facet => 2 * facet)], form.FoldAngles, 4);

        var one = PanelWrap.Compute(form, BendingLaw.Of(Stainless), new(120, 5));
        var two = PanelWrap.Compute(large, BendingLaw.Of(Stainless with { ThicknessMm = 2.4 }), new(240, 10));

        Workshop.Near(one.MeanCurvature / 2, two.MeanCurvature, 1e-6);
        Workshop.Near(one.Sweep.Radians, two.Sweep.Radians, 1e-6);
        Workshop.Near(2 * one.Pull[^1].ForcePerWidth, two.Pull[^1].ForcePerWidth, 1e-6);
        Workshop.Near(2 * one.Facets[1].RippleMm, two.Facets[1].RippleMm, 1e-4);
    }

    [Fact]
    public void A_sheet_that_only_flexes_comes_off_flat()
    {
        var (form, _) = Even(5, 10, 800, 2, 0.5);
        var panel = PanelWrap.Compute(form, BendingLaw.Of(new Sheet(Workshop.Perfect(70e3, 0.33, 400), 0.5)), new(100));

        Assert.Equal(WrapEnd.Complete, panel.End);
        Assert.Equal(0, panel.Sweep.Radians);
        Assert.Equal(0, panel.Facets.Max(facet => facet.RippleMm));
        Assert.Equal(0, panel.MeanCurvature, 1e-12);
    }

    [Fact]
    public void A_sheet_that_does_not_harden_is_given_a_little_and_says_so()
    {
        var (form, _) = Even(8, 60, 90, 2, 1.5);
        var law = BendingLaw.Of(new Sheet(Workshop.Perfect(70e3, 0.33, 120), 1.5));

        Assert.Equal(0.005 * law.PlaneModulusMpa, PanelWrap.Compute(form, law, new(120)).AssumedHardeningMpa);
        Assert.Null(PanelWrap.Compute(form, BendingLaw.Of(HalfHard), new(120)).AssumedHardeningMpa);
    }

    [Fact]
    public void Elements_finer_than_the_fold_spacing_settle_the_sweep()
    {
        // Every second fold left out of a fine form, at the same radius: the sweeps differ by no more than the facets' own set.
        var (fine, radius) = Even(16, 80, 80, 2, Stainless.ThicknessMm);
        var (coarse, _) = Even(8, 80, 80, 2, Stainless.ThicknessMm);
        var law = BendingLaw.Of(Stainless);
        var difference = PanelWrap.Compute(coarse, law, new(150)).MeanCurvature - PanelWrap.Compute(fine, law, new(150)).MeanCurvature;

        Assert.InRange(difference * radius, -0.02, 0.04);
    }

    [Fact]
    public void A_clamp_set_back_lets_the_panel_bend_behind_the_first_fold()
    {
        var (form, _) = Even(6, 75, 60, 2, Stainless.ThicknessMm);
        var law = BendingLaw.Of(Stainless);
        var tight = PanelWrap.Compute(form, law, new(120));
        var back = PanelWrap.Compute(form, law, new(120, 15));

        Assert.Equal(WrapEnd.Complete, back.End);
        Workshop.Near(tight.Pull[^1].ForcePerWidth, back.Pull[^1].ForcePerWidth, 0.01);
        Assert.True(back.Curve[^1].AlongMm > tight.Curve[^1].AlongMm + 14);
    }

    [Fact]
    [Trait("Category", "Long")]
    public void Any_form_is_answered_with_finite_figures_or_with_how_far_the_pull_got() =>
        Gen.Select(Gen.Double[0.5, 3], Gen.Double[0.01, 0.4], Gen.Double[4, 40].Array[1, 12], Gen.Double[1, 40], Gen.Double[10, 300], Gen.Double[0, 30])
            .ForAll(
                (thickness, n, chords, fold, lever, gap) =>
                {
                    var law = BendingLaw.Of(new Sheet(Workshop.Swift(70e3, 0.33, 150, n, 0.002), thickness));
                    var angle = fold * Workshop.Degree;
                    var setback = 2 * Math.Tan(angle / 2);
                    var form = new StandingForm(
                        [.. chords.Select(chord => chord + (2 * setback))], [.. Enumerable.Repeat(angle, chords.Length + 1)], 2);

                    var panel = PanelWrap.Compute(form, law, new(lever, gap));

                    Assert.All(panel.Pull, step => Assert.True(double.IsFinite(step.ForcePerWidth) && double.IsFinite(step.EndAngle.Radians)));
                    Assert.True(double.IsFinite(panel.MeanCurvature) && double.IsFinite(panel.Sweep.Radians));
                    Assert.All(panel.Facets, facet => Assert.True(facet.RippleMm >= 0 && double.IsFinite(facet.Slope.Radians)));
                    Assert.Equal(panel.End == WrapEnd.Complete, panel.Curve.Count > 0);
                },
                iter: 400);

    [Fact]
    public void A_pull_can_be_called_off()
    {
        var (form, _) = Even(6, 75, 60, 2, Stainless.ThicknessMm);
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => PanelWrap.Compute(form, BendingLaw.Of(Stainless), new(120), source.Token));
    }

    /// <summary>A form of equal facets with a half fold first, and the mid-surface radius of a panel lying on its folds.</summary>
    private static (StandingForm Form, double LoadedRadiusMm) Even(int facets, double sweepDegrees, double contactRadius, double outerFoldRadius, double thickness)
    {
        var angle = sweepDegrees * Workshop.Degree / facets;
        var chord = 2 * (contactRadius - outerFoldRadius) * Math.Sin(angle / 2);
        double first = outerFoldRadius * Math.Tan(angle / 4), other = outerFoldRadius * Math.Tan(angle / 2);
        return (
            new(
                [.. Enumerable.Range(0, facets).Select(j => chord + (j == 0 ? first : other) + other)],
                [angle / 2, .. Enumerable.Repeat(angle, facets)],
                outerFoldRadius),
            contactRadius + (thickness / 2));
    }
}
