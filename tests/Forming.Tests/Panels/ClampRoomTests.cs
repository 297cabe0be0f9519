using Forming.Checks;
using Forming.Pulling;

namespace Forming.Tests.Panels;

/// <summary>Room for the clamp under a form that curls over its own lead-in.</summary>
public class ClampRoomTests
{
    private const double GapMm = 20;

    // Lead-in from -100 to 0 at height 0, up at x = 50, back over the lead-in at a height falling from 90 (x = 50) to 30 (x = -70).
    private static readonly Point[] Curl = [new(-100, 0), new(0, 0), new(50, 40), new(50, 90), new(-70, 30)];

    // The overhang's lowest point over the clamp's stretch, -100 to -20, is its end at 30 mm.
    [Fact]
    public void The_overhangs_end_limits_the_clamp() => Assert.Equal(30, ClampRoom.LeastGapMm(Curl, GapMm));

    // The same overhang ended at x = -10 never comes over the stretch behind the gap.
    [Fact]
    public void What_ends_before_the_clamp_leaves_it_free() =>
        Assert.Null(ClampRoom.LeastGapMm([.. Curl.SkipLast(1), new Point(-10, 60)], GapMm));

    // The first fold rises from where the clamp ends: it is in front of it, not over it.
    [Fact]
    public void A_clamp_right_up_to_the_first_fold_is_free_of_it()
    {
        Assert.Null(ClampRoom.LeastGapMm([.. Curl.SkipLast(1), new Point(10, 100)], 0));
        Assert.Equal(30, ClampRoom.LeastGapMm(Curl, 0));
    }

    // Turned the other way, the lowest point is where the overhang comes over the clamp's near end: 90 - 60 × 70/170 at x = -20.
    [Fact]
    public void A_rising_overhang_is_lowest_at_the_clamps_near_end()
    {
        Point[] rising = [new(-100, 0), new(0, 0), new(50, 40), new(50, 60), new(-120, 120)];
        Workshop.Within(1e-12, 60 + (60 * 70.0 / 170), ClampRoom.LeastGapMm(rising, GapMm)!.Value);
    }

    [Fact]
    public void A_form_of_half_a_turn_is_checked_and_one_of_a_quarter_is_not()
    {
        var quarter = Workshop.Plan(Workshop.Panel(Workshop.Arc(90, 60)));
        Assert.DoesNotContain(quarter.Checks, check => check.Id == "clamp-access");

        var half = Workshop.Plan(Workshop.Panel(Workshop.Arc(25, 160)), Workshop.Form() with { LeadInMm = 100, LeadOutMm = 100 });
        var check = Workshop.CheckOf(half, "clamp-access");
        Assert.Equal(check.Value < Clamp.Default.HeightMm ? Verdict.Warn : Verdict.Pass, check.Verdict);
        Assert.NotNull(check.Value);
    }
}
