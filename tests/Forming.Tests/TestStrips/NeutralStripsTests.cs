using Forming.Folds;
using Forming.Results;
using Forming.TestStrips;

namespace Forming.Tests.TestStrips;

/// <summary>The neutral factor from strips: published allowances read backwards, both ways of measuring, coverage.</summary>
public class NeutralStripsTests
{
    private static NeutralStrip Folded(
        double radius, double thickness, double degrees, double factor, double legA = 40, double legB = 60, FlangeEnd end = FlangeEnd.MoldLine)
    {
        var fold = new FoldShape(radius, thickness, factor);
        var a = degrees * Workshop.Degree;
        var flat = end == FlangeEnd.MoldLine ? legA + legB - fold.Deduction(a) : legA + legB + fold.BendAllowance(a);
        return new(flat, legA, legB, new(a), radius, thickness);
    }

    private static NeutralLesson Learn(NeutralStrip[] strips, FlangeEnd end = FlangeEnd.MoldLine, double lengthError = 0.1) =>
        NeutralStrips.Learn(new() { ThicknessMm = strips[0].ThicknessMm, Strips = strips, MeasuredTo = end, LengthErrorMm = lengthError });

    // FAA-H-8083-31 ch. 4 (read in three web copies): 0.040 in, flats 0.8/1.6/0.8 in from a developed width of 3.74 in, allowance 0.27 in from the
    // chart's column R = 5/32 in. Half of the channel is one 90° strip with 0.8 in to each tangent line and 1.87 in flat. The handbook's factor is
    // 0.0078 × 180/π = 0.447; the half digit of its 0.27 is worth 0.005/(a t) = 0.08 of it.
    [Fact]
    public void The_aircraft_handbooks_channel_gives_its_factor_back()
    {
        var lesson = Learn([new(1.87, 0.8, 0.8, Angle.FromDegrees(90), 5.0 / 32, 0.040)], FlangeEnd.TangentLine, 0.003);
        Workshop.Within(0.08, 0.0078 / Workshop.Degree, lesson.Factor.Value);
        Assert.True(lesson.Factor.Holds(0.0078 / Workshop.Degree));
    }

    // One leg misread by 1 mm in 1.6 mm sheet moves K by 1/(a t) = 0.4: two such strips leave K anywhere from below 0 to above 1.
    [Fact]
    public void Two_strips_a_millimetre_apart_are_named_and_teach_no_factor()
    {
        var one = Folded(2, 1.6, 90, 0.41);
        var lesson = Learn([one, one with { FlatLengthMm = one.FlatLengthMm + 1 }]);
        Assert.Contains(lesson.Doubts, doubt => doubt.Id == "factor-implausible");
        Assert.Equal([0, 1], Assert.Single(lesson.Doubts, doubt => doubt.Id == "strips-contradict").Strips);
        Assert.Empty(Learn([one, one with { FlatLengthMm = one.FlatLengthMm + 0.05 }]).Doubts);
    }

    [Theory]
    [InlineData(1, 31, true)]
    [InlineData(2, 32, false)]
    [InlineData(6, 33, false)]
    public void Nineteen_of_twenty_intervals_hold_the_truth(int strips, int seed, bool errorsAreTrue)
    {
        // Where strips are left over the errors are stated much too small, so that only their scatter can tell.
        var stated = errorsAreTrue ? 1.0 : 0.01;
        Draws.AssertNominal(Draws.Share(seed, random =>
        {
            NeutralStrip[] noisy = [.. Enumerable.Range(0, strips).Select(_ => Read(random))];
            return NeutralStrips.Learn(new()
            {
                ThicknessMm = 2,
                Strips = noisy,
                LengthErrorMm = 0.1 * stated,
                AngleError = Angle.FromDegrees(0.5 * stated),
                RadiusErrorMm = 0.1 * stated,
            }).Factor.Holds(0.41);
        }));

        static NeutralStrip Read(Random random)
        {
            var strip = Folded(3, 2, 90, 0.41);
            return strip with
            {
                FlatLengthMm = strip.FlatLengthMm + Error(0.1),
                FlangeAMm = strip.FlangeAMm + Error(0.1),
                FlangeBMm = strip.FlangeBMm + Error(0.1),
                FoldAngle = strip.FoldAngle + Angle.FromDegrees(Error(0.5)),
                InsideRadiusMm = strip.InsideRadiusMm + Error(0.1),
            };

            double Error(double half) => Draws.Normal(random, half / Draws.Half);
        }
    }

    // The tangent of each reading by differences, beside the closed form that weighs the strips.
    [Theory]
    [InlineData(FlangeEnd.MoldLine, 90)]
    [InlineData(FlangeEnd.MoldLine, 30)]
    [InlineData(FlangeEnd.TangentLine, 90)]
    public void Reading_errors_do_to_the_factor_what_they_are_said_to(FlangeEnd end, double degrees)
    {
        var strip = Folded(3, 2, degrees, 0.41, end: end);
        const double step = 1e-5;
        double[] moved =
        [
            FactorOf(strip with { FlatLengthMm = strip.FlatLengthMm + step }),
            FactorOf(strip with { FlangeAMm = strip.FlangeAMm + step }),
            FactorOf(strip with { FlangeBMm = strip.FlangeBMm + step }),
            FactorOf(strip with { FoldAngle = new(strip.FoldAngle.Radians + step) }),
            FactorOf(strip with { InsideRadiusMm = strip.InsideRadiusMm + step }),
        ];
        double[] errors = [0.1, 0.1, 0.1, 0.5 * Workshop.Degree, 0.1];
        var expected = Math.Sqrt(moved.Zip(errors, (factor, error) => Math.Pow((factor - 0.41) / step * error, 2)).Sum());
        Workshop.Near(expected, Learn([strip], end).Readings[0].FactorError, 1e-4);

        double FactorOf(NeutralStrip one) => Learn([one], end).Factor.Value;
    }

    [Fact]
    public void A_misread_strip_is_named_and_still_counted()
    {
        NeutralStrip[] strips = [.. Enumerable.Range(0, 6).Select(i => Folded(3, 2, 90, 0.41 + (0.004 * Math.Sin(5 * i)) + (i == 3 ? 0.3 : 0)))];
        var lesson = Learn(strips);
        Assert.Equal(3, Assert.Single(lesson.Outliers).Index);
        Workshop.Within(0.01, 0.46, lesson.Factor.Value);
    }

    [Fact]
    public void A_neutral_line_outside_of_the_sheet_is_named_among_others_and_refused_alone()
    {
        var lesson = Learn([Folded(3, 2, 90, 0.4), Folded(3, 2, 90, 1.2)]);
        Assert.Equal(1, Assert.Single(lesson.Outliers).Index);
        Assert.Equal("strips.neutral-line-outside", Assert.Throws<NoSolutionException>(() => Learn([Folded(3, 2, 90, 1.2)])).Code);
        Assert.Throws<NoSolutionException>(() => Learn([Folded(3, 2, 90, 0.4)], FlangeEnd.TangentLine));
    }

    [Fact]
    public void The_next_strip_leaves_the_factor_less_open_than_one_like_the_first()
    {
        var strip = Folded(3, 2, 20, 0.41);
        var next = Folded(3, 2, Learn([strip]).Next.FoldAngle!.Value.Degrees, 0.41);
        Assert.True(Learn([next]).Readings[0].FactorError < Learn([strip]).Readings[0].FactorError);
        Assert.True(HalfOf(next) < HalfOf(strip));

        double HalfOf(NeutralStrip other) => Learn([strip, other]).Factor.High!.Value - 0.41;
    }

    [Fact]
    public void Strips_of_mixed_radii_and_radii_without_a_published_factor_are_said_to_be()
    {
        var lesson = Learn([Folded(0.3, 2, 90, 0.2), Folded(3, 2, 90, 0.4)]);
        Assert.Contains(lesson.Notes, note => note.Id == "mixed-radii");
        Assert.Null(lesson.Published);
        Assert.Null(lesson.Readings[0].Published);
        Workshop.Near(NeutralLine.Factor(3, 2), lesson.Readings[1].Published!.Value, 1e-12);
    }
}
