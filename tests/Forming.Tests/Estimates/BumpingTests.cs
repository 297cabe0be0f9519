using CsCheck;
using Forming.Curves;
using Forming.Estimates;
using Forming.Jobs;
using static Forming.Tests.Workshop;

namespace Forming.Tests.Estimates;

/// <summary>Bumping a panel directly, by hand. Radii are of the mid surface; the sheet is 1 mm thick.</summary>
public class BumpingTests
{
    private static readonly Crew One = new(1, 1, false, 2, 100);

    // 90° at 300 mm, 471.2 mm long: 45 hits of 2°, 10.47 mm apart, in a die of 20.9 mm; 1/8 in would be 149 hits.
    // 90° at 30 mm, 47.12 mm long: 1/8 in has room for 14.8, so 15 hits of 6° in a die of 6.3 mm.
    [Theory]
    [InlineData(300, 45, 2, 10.471975512)]
    [InlineData(30, 15, 6, 3.141592654)]
    public void A_hit_is_two_degrees_or_an_eighth_of_an_inch(double radiusMm, int count, double degrees, double pitchMm)
    {
        var hits = new Bumping().HitsOf(Sheet(Arc(radiusMm, 90)), One);
        Assert.Equal(count, hits.Count);
        Within(1e-9, degrees, hits.Angle.Degrees);
        Within(1e-8, pitchMm, hits.PitchMm);
        Within(1e-8, 2 * pitchMm, hits.DieOpeningMm);
    }

    // 3 mm sheet bends in a die of 15 mm at least: 7.5 mm from hit to hit. 1 mm sheet needs 5 mm, less than twice 1/8 in.
    [Fact]
    public void Thicker_sheet_needs_a_wider_die_and_a_wider_pitch()
    {
        Assert.Equal(7.5, Bumping.PitchFor(3));
        Assert.Equal(3.175, Bumping.PitchFor(1));
    }

    [Fact]
    public void The_callers_pitch_or_angle_wins()
    {
        var panel = Sheet(Arc(300, 90));
        Assert.Equal(149, new Bumping { HitAngle = null }.HitsOf(panel, One).Count);
        Assert.Equal(90, new Bumping { HitAngle = Angle.FromDegrees(1), PitchMm = null }.HitsOf(panel, One).Count);
    }

    // Two bends of 90° at 300 mm with a flat between: 45 hits each, and each is corrected. Mirrored, twice that.
    [Fact]
    public void Every_bend_is_hit_and_flats_are_not()
    {
        var chain = Sheet(new SegmentsCurve([Arc(300, 90), new FlatCurve(200), Arc(300, 90)]));
        Assert.Equal((90, 2), (Count(chain), Bends(chain)));
        Assert.Equal((180, 4), (Count(chain with { Mirrored = true }), Bends(chain with { Mirrored = true })));

        static int Count(PanelSpec panel) => new Bumping().HitsOf(panel, One).Count;
        static int Bends(PanelSpec panel) => new Bumping().HitsOf(panel, One).Bends;
    }

    // 45 hits of a quarter minute by two people, and 5 minutes to correct: 22.5 + 5.
    [Fact]
    public void Hits_take_everybody_who_supports_the_panel() =>
        Assert.Equal(27.5, new Bumping().PanelMinutes(new Bumping().HitsOf(Sheet(Arc(300, 90)), One with { Holders = 2 })));

    [Fact]
    public void A_longer_bend_never_takes_fewer_hits() =>
        Gen.Select(Gen.Double[20, 2000], Gen.Double[10, 170], Gen.Double[1, 10]).ForAll((radius, sweep, more) => Assert.True(
            new Bumping().HitsOf(Sheet(Arc(radius, sweep)), One).Count <= new Bumping().HitsOf(Sheet(Arc(radius + more, sweep + more)), One).Count), iter: 200);

    private static PanelSpec Sheet(PanelCurve curve)
    {
        var panel = Panel(curve);
        return panel with { Sheet = panel.Sheet with { ThicknessMm = 1 }, Surface = Surface.Mid };
    }
}
