using CsCheck;
using Forming.Curves;
using Forming.Results;
using Forming.Springback;
using MathNet.Numerics.Integration;

namespace Forming.Tests.Curves;

/// <summary>Finished curves on the mid surface: lengths, faces and refusals.</summary>
public class FinishedCurveTests
{
    private static readonly Gen<PanelCurve> Bends = Gen.Select(Gen.Double[60, 300], Gen.Double[0.5, 2], Gen.Double[30, 270], Gen.Int[0, 4])
        .Select((radius, opening, sweep, kind) => kind switch
        {
            0 => Workshop.Arc(radius, sweep),
            1 => new EllipseCurve(radius, radius * opening, Angle.FromDegrees(20), Angle.FromDegrees(20 + sweep)),
            _ => Workshop.Progressive(radius, radius * opening, sweep, (ProgressiveLaw)(kind - 2)),
        });

    [Fact]
    public void The_length_is_the_integral_of_the_radius_over_the_turn() =>
        Bends.ForAll(
            curve =>
            {
                var bend = FinishedCurve.On(curve, Surface.Outside, 2).Bends.Single();
                Workshop.Near(Gauss(bend, rates => rates.Length), bend.LengthMm, 1e-9);
                Workshop.Near(Gauss(bend, rates => rates.Turn), bend.Sweep.Radians, 1e-9);
            },
            iter: 200);

    [Fact]
    public void Inside_mid_and_outside_differ_by_half_a_thickness_times_the_sweep() =>
        Gen.Select(Bends, Gen.Double[0.3, 6]).ForAll(
            (curve, thickness) =>
            {
                double Length(Surface surface) => FinishedCurve.On(curve, surface, thickness).LengthMm;
                var half = thickness / 2 * FinishedCurve.On(curve, Surface.Mid, thickness).Sweep.Radians;
                Workshop.Within(1e-9, Length(Surface.Mid) + half, Length(Surface.Inside));
                Workshop.Within(1e-9, Length(Surface.Mid) - half, Length(Surface.Outside));
            },
            iter: 200);

    [Fact]
    public void A_curve_between_its_tightest_and_gentlest_radius_has_every_radius_in_between() =>
        Bends.ForAll(
            curve =>
            {
                var bend = FinishedCurve.On(curve, Surface.Inside, 1.5).Bends.Single();
                for (var i = 0; i <= 50; i++)
                    Assert.InRange(1 / bend.RatesAt(i / 50.0).Curvature, bend.TightestRadiusMm * (1 - 1e-12), bend.GentlestRadiusMm * (1 + 1e-12));
            },
            iter: 100);

    [Theory]
    [InlineData(ProgressiveLaw.Involute, 90 * 1.5707963267948966)]
    [InlineData(ProgressiveLaw.Clothoid, 80 * 1.5707963267948966)]
    [InlineData(ProgressiveLaw.Logarithmic, 86.561702453337804 * 1.5707963267948966)]
    public void Each_law_has_its_own_mean_radius_from_60_to_120(ProgressiveLaw law, double length) =>
        // Arithmetic mean 90, harmonic mean 80, logarithmic mean 60/ln 2 = 86.56, times a quarter turn.
        Workshop.Near(length, FinishedCurve.On(Workshop.Progressive(60, 120, 90, law), Surface.Mid, 1).LengthMm, 1e-12);

    [Theory]
    [InlineData(ProgressiveLaw.Involute)]
    [InlineData(ProgressiveLaw.Clothoid)]
    [InlineData(ProgressiveLaw.Logarithmic)]
    public void Equal_radii_are_an_arc(ProgressiveLaw law) =>
        Assert.IsType<ArcSpan>(Assert.Single(FinishedCurve.On(Workshop.Progressive(80, 80, 90, law), Surface.Inside, 1.5).Spans));

    [Theory]
    [InlineData(ProgressiveLaw.Involute)]
    [InlineData(ProgressiveLaw.Clothoid)]
    [InlineData(ProgressiveLaw.Logarithmic)]
    public void Nearly_equal_radii_are_nearly_an_arc(ProgressiveLaw law)
    {
        var length = FinishedCurve.On(Workshop.Progressive(80, 80 * (1 + 1e-9), 90, law), Surface.Mid, 1.5).LengthMm;
        Workshop.Near(80 * Math.PI / 2, length, 1e-8);
    }

    [Fact]
    public void A_clothoid_flat_at_both_ends_is_no_curve() =>
        Assert.Equal("curve.flat", Refusal(new ProgressiveCurve(null, null, new(1), ProgressiveLaw.Clothoid)).Code);

    [Theory]
    [InlineData(ProgressiveLaw.Involute)]
    [InlineData(ProgressiveLaw.Logarithmic)]
    public void Only_a_clothoid_may_end_flat(ProgressiveLaw law) =>
        Assert.Equal("curve.flat-end", Refusal(new ProgressiveCurve(60, null, new(1), law)).Code);

    // The sagitta of a shallow arc is R a²/8.
    [Theory]
    [InlineData(0.99, true)]
    [InlineData(1.01, false)]
    public void A_curve_less_than_a_tenth_of_a_millimetre_high_counts_as_flat(double share, bool isFlat)
    {
        var sweep = Math.Sqrt(8 * 0.1 * share / 1000);
        var curve = new ArcCurve(1000, new(sweep));
        if (isFlat)
            Assert.Equal("curve.flat", Refusal(curve).Code);
        else
            Assert.Single(FinishedCurve.On(curve, Surface.Mid, 1.5).Bends);
    }

    [Fact]
    public void A_shallow_stretch_between_flats_stays_in_the_chain_as_a_flat_of_its_length_and_its_turn_is_said()
    {
        var chain = new SegmentsCurve([Workshop.Arc(60, 40), new FlatCurve(30), new ArcCurve(2000, new(0.01)), new FlatCurve(30), Workshop.Arc(60, 40)]);
        var finished = FinishedCurve.On(chain, Surface.Mid, 1.5);
        Workshop.Near(20, Assert.IsType<FlatSpan>(finished.Spans[2]).LengthMm, 1e-12);
        Workshop.Within(1e-12, 0.01, finished.TakenAsFlat.Radians);

        var note = Assert.Single(Workshop.Plan(Workshop.Panel(chain)).ShopNotes, note => note.Id == "taken-as-flat");
        Workshop.Within(1e-12, 0.01, ((Figure)note.Text.GetArgument(0)!).Value);
    }

    [Fact]
    public void A_short_piece_inside_a_longer_bend_is_never_flat()
    {
        Workshop.Within(1e-9, 68, Sweep(Workshop.Arc(100, 4), Workshop.Arc(80, 60), Workshop.Arc(100, 4)));
        Workshop.Within(1e-9, 70, Sweep([Workshop.Arc(60, 30), .. Enumerable.Range(0, 10).Select(i => Workshop.Arc(60 + (5 * i), 4))]));

        static double Sweep(params PanelCurve[] pieces) => FinishedCurve.On(new SegmentsCurve(pieces), Surface.Inside, 1.5).Sweep.Degrees;
    }

    [Fact]
    public void Every_degree_of_a_chain_is_bent_or_said_to_be_flat() =>
        Gen.Select(Gen.Int[0, 3], Gen.Double[0.3, 2.6], Gen.Double[-1, 1.8]).Array[1, 8].ForAll(
            pieces =>
            {
                PanelCurve[] segments =
                    [.. pieces.Select(piece => piece.Item1 == 0
                        ? new FlatCurve(Math.Pow(10, piece.Item2))
                        : Workshop.Arc(5 + Math.Pow(10, piece.Item2), Math.Pow(10, piece.Item3)))];
                var asked = segments.OfType<ArcCurve>().Sum(arc => arc.Sweep.Radians);
                FinishedCurve finished;
                try
                {
                    finished = FinishedCurve.On(new SegmentsCurve(segments), Surface.Inside, 1);
                }
                catch (NoSolutionException refused)
                {
                    Assert.Equal("curve.flat", refused.Code);
                    return;
                }

                Workshop.Within(1e-12, asked, finished.Sweep.Radians + finished.TakenAsFlat.Radians);

                // Through a measured springback the form turns that much further and no degree less.
                var panel = Workshop.Panel(new SegmentsCurve(segments)) with { Sheet = new(Workshop.Of("al-3003-h14"), 1), Springback = new MeasuredFactor(0.8) };
                var plan = Workshop.Plan(panel, Workshop.Form() with { Sheet = new(Workshop.Of("steel-cr-cs"), 0.8), FoldRadiusMm = 0.8 });
                Workshop.Within(1e-9, finished.Sweep.Radians / 0.8, plan.Form.Sweep.Radians);
                Assert.Equal(finished.TakenAsFlat > Angle.Zero, plan.ShopNotes.Any(note => note.Id == "taken-as-flat"));
            },
            iter: 150);

    [Fact]
    public void A_chain_that_turns_back_is_refused_with_the_place()
    {
        var chain = new SegmentsCurve([Workshop.Arc(60, 90), new FlatCurve(20), Workshop.Arc(50, -30)]);
        var refused = Refusal(chain);
        Assert.Equal("curve.reverses", refused.Code);
        Assert.Equal("panel.curve.segments.2", refused.Subject);
        var place = Assert.IsType<Figure>(refused.Wording.GetArgument(0));
        Assert.Equal(Quantity.Length, place.Quantity);
        // Mid surface of an inside radius of 60 in 1.5 mm, a quarter turn, and the flat.
        Workshop.Near((60.75 * Math.PI / 2) + 20, place.Value, 1e-12);
    }

    [Fact]
    public void A_radius_below_a_fifth_of_the_thickness_is_too_tight() =>
        Assert.Equal("curve.too-tight", Refusal(Workshop.Arc(0.29, 90)).Code);

    [Theory]
    [InlineData(2)]
    [InlineData(1)]
    public void An_outside_radius_within_the_sheet_itself_is_too_tight(double radius) =>
        Assert.Equal("curve.too-tight", Assert.Throws<NoSolutionException>(() => FinishedCurve.On(Workshop.Arc(radius, 90), Surface.Outside, 3)).Code);

    [Theory]
    [InlineData(1.2)]
    [InlineData(0.5)]
    public void A_chain_with_such_a_bend_in_it_is_too_tight_as_well(double radius)
    {
        var chain = new SegmentsCurve([Workshop.Arc(60, 40), Workshop.Arc(radius, 40)]);
        Assert.Equal("curve.too-tight", Assert.Throws<NoSolutionException>(() => FinishedCurve.On(chain, Surface.Outside, 2)).Code);
    }

    // Inside radius 0.6 mm in 0.5 mm sheet, 40°: hardly 0.06 mm high, but no noise: the bend turns as far as any other.
    [Fact]
    public void A_small_sharp_bend_in_a_chain_keeps_its_turn()
    {
        var chain = new SegmentsCurve([Workshop.Arc(60, 40), new FlatCurve(20), Workshop.Arc(0.6, 40)]);
        Workshop.Within(1e-9, 80, FinishedCurve.On(chain, Surface.Inside, 0.5).Sweep.Degrees);
    }

    private static NoSolutionException Refusal(PanelCurve curve) =>
        Assert.Throws<NoSolutionException>(() => FinishedCurve.On(curve, Surface.Inside, 1.5));

    // Gauss-Legendre in sixteen pieces: the code's own rule for ellipses is another one.
    private static double Gauss(BendSpan bend, Func<SpanRates, double> rate)
    {
        var sum = 0.0;
        for (var i = 0; i < 16; i++)
            sum += GaussLegendreRule.Integrate(u => rate(bend.RatesAt(u)), i / 16.0, (i + 1) / 16.0, 32);
        return sum;
    }
}
