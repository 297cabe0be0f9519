using Forming.Prediction;
using Forming.Tests.Outlook;

namespace Forming.Tests.Prediction;

/// <summary>A panel that was let go and is pulled once more: the wrap goes on from what each place has seen.</summary>
public class SecondPullTests
{
    public static TheoryData<string, double, double, double, int> Jobs => new()
    {
        { "al-3003-h14", 1.6, 75, 90, 8 },
        { "steel-cr-cs", 1.0, 150, 90, 11 },
        { "ss-304", 1.2, 90, 90, 9 },
        { "steel-cr-cs", 1.0, 400, 40, 8 },
    };

    [Theory]
    [MemberData(nameof(Jobs))]
    public void A_second_pull_over_the_same_form_changes_next_to_nothing(string material, double thickness, double radius, double sweep, int folds)
    {
        var (job, first) = OutlookJobs.Solved(material, thickness, radius, sweep, folds);
        var again = PanelPrediction.Of(job with { PulledBefore = job.Form });
        Assert.True(again.Wraps, again.WhyNot?.ToString());
        Workshop.Within(0.1, first.Shape!.Sweep.Degrees, again.Shape!.Sweep.Degrees);
        Workshop.Near(first.Shape.RadiusMm!.Value, again.Shape.RadiusMm!.Value, 0.005);
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Over_a_form_closed_further_it_gains_a_part_of_what_a_new_panel_would(string material, double thickness, double radius, double sweep, int folds)
    {
        var (job, first) = OutlookJobs.Solved(material, thickness, radius, sweep, folds);
        var closed = job.Form with { FoldAngles = [.. job.Form.FoldAngles.Select(angle => angle * 1.04)] };
        var fresh = PanelPrediction.Of(job with { Form = closed });
        var again = PanelPrediction.Of(job with { Form = closed, PulledBefore = job.Form });
        Assert.True(again.Wraps, again.WhyNot?.ToString());
        // What it has set already spreads the new bend wider, so more of it springs back.
        var gain = (again.Shape!.Sweep - first.Shape!.Sweep).Radians / (fresh.Shape!.Sweep - first.Shape.Sweep).Radians;
        Assert.InRange(gain, 0.4, 1);
        Assert.InRange(again.Shape.RadiusMm!.Value, 0.97 * fresh.Shape.RadiusMm!.Value, first.Shape.RadiusMm!.Value);
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Over_a_form_opened_again_a_panel_keeps_what_it_has(string material, double thickness, double radius, double sweep, int folds)
    {
        var (job, first) = OutlookJobs.Solved(material, thickness, radius, sweep, folds);
        var opened = job.Form with { FoldAngles = [.. job.Form.FoldAngles.Select(angle => angle * 0.96)] };
        var again = PanelPrediction.Of(job with { Form = opened, PulledBefore = job.Form });
        Assert.True(again.Wraps, again.WhyNot?.ToString());
        Workshop.Within(0.3, first.Shape!.Sweep.Degrees, again.Shape!.Sweep.Degrees);
    }
}
