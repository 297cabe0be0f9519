using Forming.Materials;
using Forming.Prediction;
using Forming.Springback;

namespace Forming.Tests.Prediction;

/// <summary>Two bends with a flat between them: what a panel touches next once it lies on the last fold but one of the first bend.</summary>
/// <remarks>
/// The independent answer needs no contact: the panel leaves that fold in the mean direction of the facets beside it, its moment falls
/// straight to the hand, and the pull at which it first reaches each fold ahead follows from the moment alone.
/// </remarks>
public sealed class LongFlatTests
{
    private const double LeverMm = 88.7;
    private const int Front = 2;
    private const double StepMm = 1;

    private static readonly BendingLaw Law = BendingLaw.Of(new Sheet(Workshop.Of("al-3003-h14"), 1.5875));
    private static readonly double[] Angles = [8.8, 17.6, 17.6, 8.8, 5.3, 10.5, 10.5, 10.5, 10.5, 5.3];

    [Theory]
    [InlineData(5, 4)]
    [InlineData(90, 6)]
    public void A_panel_reaches_over_a_long_flat_before_it_lies_on_the_last_fold_before_it(double flatMm, int nextFold)
    {
        double[] facets = [17.1, 17.3, 17.1, flatMm, 10.3, 10.4, 10.4, 10.4, 10.3];
        var angles = Angles.Select(angle => angle * Workshop.Degree).ToArray();

        var panel = PanelWrap.Compute(new StandingForm(facets, angles, 3), Law, new(LeverMm));
        Assert.Equal(nextFold, panel.Pull.First(step => step.Fold > Front + 1).Fold);

        Assert.Equal(nextFold, 1 + Enumerable.Range(Front + 1, 4).MinBy(fold => PullToReach(facets, angles, fold)));
    }

    // The moment at the front [N·mm/mm] with which the panel comes down to a fold.
    private static double PullToReach(double[] facets, double[] angles, int fold)
    {
        var heading = 0.0;
        var headings = angles.Select(angle => heading += angle).ToArray();
        Point target = default;
        for (var j = Front; j < fold; j++)
            target += facets[j] * Point.Along(headings[j]);
        var from = (headings[Front - 1] + headings[Front]) / 2;
        var hand = facets.Skip(Front).Sum() + LeverMm;
        var (low, high) = (0.5 * Law.FirstYieldMoment, 2 * Law.FirstYieldMoment);
        for (var i = 0; i < 25; i++)
        {
            var moment = (low + high) / 2;
            if (IsShortOf(target, from, moment, hand))
                low = moment;
            else
                high = moment;
        }

        return low;
    }

    private static bool IsShortOf(Point target, double heading, double moment, double hand)
    {
        Point place = default;
        for (var s = StepMm / 2; s < hand; s += StepMm)
        {
            heading += CurvatureAt(moment * (1 - (s / hand))) * StepMm;
            place += StepMm * Point.Along(heading);
            if (Point.Along(heading).Dot(target - place) <= 0)
                return Point.Along(heading).Cross(target - place) > 0;
        }

        return true;
    }

    private static double CurvatureAt(double moment)
    {
        if (moment <= Law.FirstYieldMoment)
            return moment / Law.Stiffness;
        var (low, high) = (Law.FirstYieldMoment / Law.Stiffness, 1.0);
        for (var i = 0; i < 25; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Law.At(middle).MomentPerWidth < moment ? (middle, high) : (low, middle);
        }

        return low;
    }
}
