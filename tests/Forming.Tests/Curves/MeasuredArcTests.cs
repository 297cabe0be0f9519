using CsCheck;
using Forming.Curves;

namespace Forming.Tests.Curves;

/// <summary>An arc by any two of its measures, a progressive bend by its length: school geometry, and the engine's own curves.</summary>
public class MeasuredArcTests
{
    [Fact]
    public void Chord_and_rise_give_the_radius_of_the_workshop_formula()
    {
        // R = c²/8h + h/2, the sagitta formula of every workshop handbook: c 400, h 50 give 425.
        var (radius, sweep) = new MeasuredArc(null, null, 400, 50, null).Solve()!.Value;
        Assert.Equal(425, radius, 1e-9);
        Assert.Equal(2 * Math.Asin(200 / 425.0), sweep.Radians, 1e-12);
    }

    [Fact]
    public void Any_two_measures_of_an_arc_give_it_back() =>
        Gen.Select(Gen.Double[1, 2000], Gen.Double[1, 179], Gen.Int[0, 4], Gen.Int[0, 4]).Where(draw => draw.Item3 != draw.Item4).Sample(
            (radius, degrees, one, other) =>
            {
                var whole = MeasuredArc.Of(radius, Angle.FromDegrees(degrees));
                double? Only(int place, double? measure) => place == one || place == other ? measure : null;
                var two = new MeasuredArc(
                    Only(0, whole.Radius),
                    one == 1 || other == 1 ? whole.Sweep : null,
                    Only(2, whole.Chord),
                    Only(3, whole.Rise),
                    Only(4, whole.Length));
                Assert.Equal(2, two.Count);
                var solved = two.Solve()!.Value;
                Assert.Equal(1, solved.Radius / radius, 1e-5);
                Assert.Equal(1, solved.Sweep.Degrees / degrees, 1e-5);
            },
            seed: "0000KhUdvQ42",
            iter: 2000);

    [Fact]
    public void Three_points_of_a_circle_give_it_back_whichever_way_it_turns() =>
        Gen.Select(Gen.Double[5, 500], Gen.Double[5, 350], Gen.Double[0.1, 0.9], Gen.Double[0, 360], Gen.Bool).Sample(
            (radius, degrees, share, from, left) =>
            {
                Point At(double along)
                {
                    var at = (from + ((left ? 1 : -1) * along * degrees)) * Math.PI / 180;
                    return new(30 + (radius * Math.Cos(at)), -70 + (radius * Math.Sin(at)));
                }

                var arc = MeasuredArc.Through(At(0), At(share), At(1))!;
                Assert.Equal(radius, arc.Radius!.Value, 1e-6 * radius);
                Assert.Equal(degrees, arc.Sweep!.Value.Degrees, 1e-5);
            },
            seed: "0000KhUdvQ42",
            iter: 2000);

    [Fact]
    public void What_no_arc_has_has_no_answer()
    {
        Assert.Null(new MeasuredArc(100, null, 201, null, null).Solve());
        Assert.Null(new MeasuredArc(null, null, 101, null, 100).Solve());
        Assert.Null(new MeasuredArc(null, null, null, 40, 100).Solve());
        Assert.Null(new MeasuredArc(100, null, null, 201, null).Solve());
        Assert.Null(MeasuredArc.Through(new(0, 0), new(1, 1), new(2, 2)));
        Assert.Null(MeasuredArc.Through(new(0, 0), new(0, 0), new(2, 2)));
    }

    [Theory]
    [InlineData(ProgressiveLaw.Clothoid)]
    [InlineData(ProgressiveLaw.Involute)]
    [InlineData(ProgressiveLaw.Logarithmic)]
    public void A_progressive_bend_has_the_length_it_was_measured_by(ProgressiveLaw law) =>
        Gen.Select(Gen.Double[20, 900], Gen.Double[20, 900], Gen.Double[5, 170]).Sample(
            (start, end, degrees) =>
            {
                var sweep = Angle.FromDegrees(degrees);
                var length = ProgressiveLength.Of(start, end, law, sweep);
                Assert.Equal(degrees, ProgressiveLength.SweepOf(start, end, law, length).Degrees, 1e-9);
                // The engine's own curve, measured on the very face it lies on.
                var curve = FinishedCurve.On(new ProgressiveCurve(start, end, sweep, law), Surface.Mid, 1);
                Assert.Equal(length, curve.LengthMm, 1e-6 * length);
            },
            seed: "0000KhUdvQ42",
            iter: 60);
}
