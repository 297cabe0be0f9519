using Forming.Facets;
using Forming.Materials;
using Forming.Prediction;
using Forming.Results;
using Forming.Springback;
using Forming.TestStrips;

namespace Forming.Tests.TestStrips;

/// <summary>The allowed ripple from verdicts: bracket, contradictions, strips that tell nothing.</summary>
public class PrintStripsTests
{
    private const double ThicknessMm = 1.6;
    private const double LeverMm = 100;

    private static Material Metal { get; } = Workshop.Of("al-5052-h32");

    private static PrintStrip Strip(double facet, bool shows, double radius = 65, double? lever = LeverMm, bool first = false) =>
        new(facet, radius, ThicknessMm, lever, first, shows);

    private static PrintLesson Learn(params PrintStrip[] strips) => PrintStrips.Learn(new(Metal, strips));

    private static double RippleOf(PrintStrip strip) => Learn(strip).Readings[0].RippleMm!.Value;

    private static double ClosedFormOf(PrintStrip strip)
    {
        var law = BendingLaw.Of(new Sheet(Metal, strip.ThicknessMm));
        return PrintThrough.Compute(strip.FacetMm, strip.LeverMm!.Value, law.At(1 / (strip.FormRadiusMm + (strip.ThicknessMm / 2))), law.Stiffness)!.Value.HeightMm;
    }

    private static FacetedBar Bar(double facetMm, int facets, double degrees, double leverMm) => new(
        new(
            [.. Enumerable.Repeat(facetMm, facets)],
            [.. Enumerable.Range(0, facets + 1).Select(j => (j == 0 || j == facets ? 0.5 : 1) * degrees * Workshop.Degree)],
            4),
        SteppingEnds.Half,
        leverMm);

    [Fact]
    public void A_strip_over_a_form_has_the_ripple_of_its_own_pull()
    {
        var bar = Bar(18, 6, 15, 100);
        var wrapped = PanelWrap.Compute(bar.Form, BendingLaw.Of(new(Metal, ThicknessMm)), new WrapSetup(100));
        var reading = Learn(PrintStrip.OverForm(bar, ThicknessMm, shows: false)).Readings[0];
        Assert.True(reading.IsSimulated);
        Workshop.Near(wrapped.Facets.Max(facet => facet.RippleMm), reading.RippleMm!.Value, 1e-12);
    }

    // Edges that curl make a narrow strip spring back less and gather otherwise.
    [Fact]
    public void A_narrow_strip_is_not_judged_as_a_wide_sheet()
    {
        var strip = PrintStrip.OverForm(Bar(18, 6, 15, 100), ThicknessMm, shows: false);
        Assert.NotEqual(RippleOf(strip), RippleOf(strip with { WidthMm = 15 }), 1e-5);
        Workshop.Near(RippleOf(strip), RippleOf(strip with { WidthMm = 5000 }), 0.01);
    }

    // The closed form is the first guess of the same simulation: within its own scatter of it.
    [Fact]
    public void The_pull_of_like_facets_is_near_its_closed_form()
    {
        foreach (var facet in new[] { 12.0, 15, 18, 22 })
        {
            var reading = Learn(Strip(facet, false)).Readings[0];
            Assert.True(reading.IsSimulated);
            Assert.InRange(reading.RippleMm!.Value / ClosedFormOf(Strip(facet, false)), 1 / 1.97, 1 / 0.82);
        }
    }

    [Fact]
    public void A_strip_whose_pull_cannot_be_followed_falls_back_on_the_closed_form_and_says_so()
    {
        var strip = Strip(26, true, lever: 60);
        var lesson = Learn(strip);
        Assert.False(lesson.Readings[0].IsSimulated);
        Workshop.Near(ClosedFormOf(strip), lesson.Readings[0].RippleMm!.Value, 1e-12);
        Assert.Contains(lesson.Notes, note => note.Id == "closed-form");
        Assert.Contains(lesson.Basis, basis => basis is { Quantity: "strips.ripple.closed", Status: Status.Estimated });
    }

    [Fact]
    public void The_limit_lies_between_the_smooth_and_the_showing()
    {
        var lesson = Learn(Strip(15, false), Strip(18, false), Strip(22, true), Strip(26, true));
        Workshop.Near(RippleOf(Strip(18, false)), lesson.LargestSmoothMm!.Value, 1e-12);
        Workshop.Near(RippleOf(Strip(22, true)), lesson.SmallestShowingMm!.Value, 1e-12);
        Assert.Equal(lesson.LargestSmoothMm, lesson.AllowedRippleMm);
        Assert.Equal(lesson.Readings[1].Slope, lesson.SlopeThere);
        Assert.Empty(lesson.Contradictions);
        Workshop.Near(Math.Sqrt(lesson.LargestSmoothMm.Value * lesson.SmallestShowingMm.Value), RippleOf(Strip(lesson.Next.FacetMm!.Value, false)), 0.1);
    }

    [Fact]
    public void The_first_facet_shows_more_than_the_others() =>
        Assert.InRange(RippleOf(Strip(18, false, first: true)) / RippleOf(Strip(18, false)), 1.3, 2.5);

    // An eye with a sharp limit: following the suggestions closes the bracket on it, whichever side the first strip fell on.
    [Theory]
    [InlineData(0.05, 30)]
    [InlineData(0.05, 6)]
    [InlineData(0.2, 12)]
    [Trait("Category", "Long")]
    public void Following_the_suggestions_finds_the_limit(double limit, double firstFacet)
    {
        var strips = new List<PrintStrip> { Judged(firstFacet) };
        for (var round = 0; round < 16; round++)
            strips.Add(Judged(Learn([.. strips]).Next.FacetMm!.Value));
        var lesson = Learn([.. strips]);
        Assert.InRange(lesson.AllowedRippleMm!.Value, 0.98 * limit, limit);
        Assert.InRange(lesson.SmallestShowingMm!.Value, limit, 1.02 * limit);
        Assert.Empty(lesson.Contradictions);

        PrintStrip Judged(double facet) => Strip(facet, RippleOf(Strip(facet, false)) > limit);
    }

    [Fact]
    public void Contradictions_are_named_pair_by_pair_and_the_careful_end_is_kept()
    {
        var lesson = Learn(Strip(15, false), Strip(18, true), Strip(20, false), Strip(22, true), Strip(24, false));
        Assert.Equal([(2, 1), (4, 1), (4, 3)], lesson.Contradictions.Select(pair => (pair.Smooth, pair.Showing)));
        Workshop.Near(RippleOf(Strip(15, false)), lesson.AllowedRippleMm!.Value, 1e-12);
        Workshop.Near(RippleOf(Strip(24, false)), lesson.LargestSmoothMm!.Value, 1e-12);
    }

    [Fact]
    public void Strips_that_all_show_leave_no_limit_to_plan_by()
    {
        var lesson = Learn(Strip(22, true), Strip(26, true));
        Assert.Null(lesson.AllowedRippleMm);
        Assert.Null(lesson.LargestSmoothMm);
        Workshop.Near(lesson.SmallestShowingMm!.Value / 2, RippleOf(Strip(lesson.Next.FacetMm!.Value, false)), 0.1);
    }

    [Fact]
    public void Strips_that_are_all_smooth_say_that_the_limit_may_lie_higher()
    {
        var lesson = Learn(Strip(15, false));
        Workshop.Near(RippleOf(Strip(15, false)), lesson.AllowedRippleMm!.Value, 1e-12);
        Assert.Contains(lesson.Notes, note => note.Id == "no-upper-end");
        Workshop.Near(2 * lesson.AllowedRippleMm!.Value, RippleOf(Strip(lesson.Next.FacetMm!.Value, false)), 0.1);
    }

    [Fact]
    public void Strips_that_tell_nothing_are_named_and_left_out_of_the_bracket()
    {
        var lesson = Learn(Strip(15, false), Strip(40, true, lever: 400), Strip(60, false, radius: 2000));
        Assert.NotNull(lesson.Readings[0].RippleMm);
        Assert.All(lesson.Readings.Skip(1), reading => Assert.NotNull(reading.WhyUnusable));
        Assert.All(lesson.Readings.Skip(1), reading => Assert.Null(reading.RippleMm));
        Assert.Null(lesson.SmallestShowingMm);
        Assert.Equal("strips.none-usable", Assert.Throws<NoSolutionException>(() => Learn(Strip(60, false, radius: 2000))).Code);
    }

    [Fact]
    public void Without_a_lever_the_longest_in_order_is_taken_and_said()
    {
        var lesson = Learn(Strip(15, false, lever: null));
        Assert.InRange(lesson.Readings[0].LeverMm, 1, 250);
        Assert.NotNull(lesson.Readings[0].RippleMm);
        Assert.Contains(lesson.Notes, note => note.Id == "lever-chosen");
    }

    [Fact]
    public void A_metal_without_known_hardening_is_refused() => Assert.Equal(
        "strips.no-hardening",
        Assert.Throws<NoSolutionException>(() => PrintStrips.Learn(new(Workshop.Perfect(70e3, 0.33, 150), [Strip(15, false)]))).Code);

    // Trade facts (common practice, no source): 1/2 in facets at 15° folds smooth, 1 1/2 in facets at 45° folds show; radius about 2 in, half-hard 1/16 in.
    [Fact]
    public void The_trades_own_strips_leave_the_satin_limit_in_their_gap()
    {
        var metal = Workshop.Of("al-3003-h14");
        var lesson = PrintStrips.Learn(new(metal, [new(12.7, 50.8, 1.5875, 150, false, false), new(38.1, 50.8, 1.5875, 150, false, true)]));
        Assert.InRange(Finish.Satin.RippleMm, lesson.LargestSmoothMm!.Value, lesson.SmallestShowingMm!.Value);
        Assert.Empty(lesson.Contradictions);
    }
}
