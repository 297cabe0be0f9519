using CsCheck;
using Forming.Contact;
using Forming.Curves;
using Forming.Materials;
using Forming.Springback;
using MathNet.Numerics.Integration;

namespace Forming.Tests.Contact;

/// <summary>The curve the form has to offer, against springback integrated apart from it.</summary>
public class ContactCurveTests
{
    private const double Thickness = 1.5;
    private static readonly BendingLaw Law = BendingLaw.Of(new Sheet(Workshop.Of("al-3003-h14"), Thickness));

    [Fact]
    public void An_arc_needs_a_tighter_arc_that_turns_further_on_the_same_length()
    {
        var finished = FinishedCurve.On(Workshop.Arc(100, 90), Surface.Inside, Thickness);
        var contact = ContactCurve.Solve(finished, new(Law), Thickness);
        var loaded = Law.LoadedFor(1 / 100.75).Curvature;
        Workshop.Near(loaded * 100.75 * Math.PI / 2, contact.Sweep.Radians, 1e-12);
        Workshop.Near(100.75 * Math.PI / 2, contact.MidMm, 1e-12);
        var radius = (1 / loaded) - (Thickness / 2);
        var end = contact.Sweep.Radians;
        Workshop.Within(1e-10, radius * Math.Sin(end), contact.End.Position.X);
        Workshop.Within(1e-10, radius * (1 - Math.Cos(end)), contact.End.Position.Y);
    }

    [Fact]
    public void A_bend_of_changing_radius_is_the_integral_of_its_formed_curvature() =>
        Gen.Select(Gen.Double[40, 300], Gen.Double[0.3, 4], Gen.Double[20, 200], Gen.Enum<ProgressiveLaw>()).ForAll(
            (radius, opening, sweep, law) =>
            {
                var finished = FinishedCurve.On(Workshop.Progressive(radius, radius * opening, sweep, law), Surface.Inside, Thickness);
                Agrees(finished, ContactCurve.Solve(finished, new(Law), Thickness).End, 1e-9);
            },
            iter: 30);

    [Theory]
    [InlineData(null, 60.0)]
    [InlineData(60.0, null)]
    public void Towards_a_flat_end_the_formed_curvature_starts_at_that_of_first_yield(double? start, double? end)
    {
        var finished = FinishedCurve.On(Workshop.Progressive(start, end, 80, ProgressiveLaw.Clothoid), Surface.Inside, Thickness);
        var contact = ContactCurve.Solve(finished, new(Law), Thickness);
        Agrees(finished, contact.End, 1e-8);
        var flat = contact.Runs[0].At(CurveMeasure.MidLength, start is null ? 0 : contact.Runs[0].MidMm);
        Workshop.Near(Law.YieldCurvature, flat.State.Curvature, 1e-6);
        Assert.All(contact.Runs[0].Sample(50), place => Assert.True(place.State.Curvature >= Law.YieldCurvature * (1 - 1e-12)));
    }

    [Fact]
    public void A_caller_who_has_gone_ends_the_work_on_the_contact_curve()
    {
        // A curvature that jumps along the curve leaves no smooth piece: the dearest curve there is.
        var asked = 0;
        using var gone = new CancellationTokenSource();
        var jumping = new JumpingSpan(() =>
        {
            if (++asked == 1000)
                gone.Cancel();
        });
        var finished = new FinishedCurve([jumping], null);
        Assert.Throws<OperationCanceledException>(() => ContactCurve.Solve(finished, new(Law), Thickness, gone.Token));
        Assert.InRange(asked, 1000, 1300);
    }

    [Fact]
    public void A_flat_stays_flat_and_moves_the_rest_along()
    {
        var chain = new SegmentsCurve([new FlatCurve(30), Workshop.Arc(80, 50), new FlatCurve(25), Workshop.Arc(60, 40)]);
        var contact = ContactCurve.Solve(FinishedCurve.On(chain, Surface.Inside, Thickness), new(Law), Thickness);
        Assert.Equal(2, contact.Runs.Count);
        Assert.Equal(new Point(30, 0), contact.Runs[0].Start.Position);
        var gap = contact.Runs[1].Start.Position - contact.Runs[0].End.Position;
        Workshop.Near(25, gap.Length, 1e-12);
        Workshop.Within(1e-12, contact.Runs[0].End.Turn, Math.Atan2(gap.Y, gap.X));
        Assert.Equal(contact.Runs[0].End.Turn, contact.Runs[1].Start.Turn);
    }

    [Fact]
    public void Bends_that_follow_each_other_without_a_flat_are_one_stretch()
    {
        var chain = new SegmentsCurve([Workshop.Arc(80, 50), Workshop.Arc(60, 40)]);
        var whole = ContactCurve.Solve(FinishedCurve.On(chain, Surface.Inside, Thickness), new(Law), Thickness);
        Assert.Single(whole.Runs);
        var split = new SegmentsCurve([Workshop.Arc(80, 20), Workshop.Arc(80, 30), Workshop.Arc(60, 40)]);
        var other = ContactCurve.Solve(FinishedCurve.On(split, Surface.Inside, Thickness), new(Law), Thickness);
        Workshop.Within(1e-9, 0, (whole.End.Position - other.End.Position).Length);
        Workshop.Near(whole.Sweep.Radians, other.Sweep.Radians, 1e-12);
    }

    [Fact]
    public void A_measured_factor_replaces_the_model()
    {
        var finished = FinishedCurve.On(Workshop.Progressive(60, 150, 90, ProgressiveLaw.Logarithmic), Surface.Inside, Thickness);
        var contact = ContactCurve.Solve(finished, new(Law, MeasuredFactor: 0.8), Thickness);
        Workshop.Near(finished.Sweep.Radians / 0.8, contact.Sweep.Radians, 1e-12);
        Assert.All(contact.Runs[0].Sample(20), place => Workshop.Near(place.FinishedCurvature / 0.8, place.State.Curvature, 1e-9));
    }

    [Fact]
    public void Every_measure_along_a_stretch_finds_its_own_place_again() =>
        Gen.Select(Gen.Double[40, 300], Gen.Double[0.3, 4], Gen.Double[20, 200], Gen.Double[0.001, 0.999], Gen.Double[0, 5]).ForAll(
            (radius, opening, sweep, share, inward) =>
            {
                var curve = Workshop.Progressive(radius, radius * opening, sweep, ProgressiveLaw.Clothoid);
                var run = ContactCurve.Solve(FinishedCurve.On(curve, Surface.Inside, Thickness), new(Law), Thickness).Runs[0];
                foreach (var measure in new[] { CurveMeasure.TurnedAngle, CurveMeasure.MidLength, CurveMeasure.ParallelLength(inward) })
                {
                    var value = share * run.Total(measure);
                    var place = run.At(measure, value);
                    Workshop.Near(value, measure.Of(place.Turn, place.MidMm), 1e-9);
                }
            },
            iter: 100);

    // ds = rho dphi of the finished span; near a flat end everything is smooth in the span's parameter, which goes with the root of the length.
    private static void Agrees(FinishedCurve finished, ContactFrame end, double share)
    {
        const int pieces = 8, order = 20;
        var bend = finished.Bends.Single();
        double turn = 0, x = 0, y = 0;
        for (var i = 0; i < pieces; i++)
        {
            double from = (double)i / pieces, to = (i + 1.0) / pieces, before = turn;
            double TurnTo(double u) => GaussLegendreRule.Integrate(TurnRate, from, u, order);
            x += GaussLegendreRule.Integrate(u => ContactRate(u) * Math.Cos(before + TurnTo(u)), from, to, order);
            y += GaussLegendreRule.Integrate(u => ContactRate(u) * Math.Sin(before + TurnTo(u)), from, to, order);
            turn += TurnTo(to);
        }

        Workshop.Near(turn, end.Turn, share);
        Workshop.Within(share * finished.LengthMm, 0, (end.Position - new Point(x, y)).Length);

        double TurnRate(double u) => bend.RatesAt(u).Length * Law.LoadedFor(bend.RatesAt(u).Curvature).Curvature;
        double ContactRate(double u) => bend.RatesAt(u).Length - (Thickness / 2 * TurnRate(u));
    }

    /// <summary>A bend whose curvature jumps to and fro, and that tells when it is looked at.</summary>
    private sealed record JumpingSpan(Action OnLook) : BendSpan(Angle.FromDegrees(80), 0)
    {
        protected override double MeasuredLengthMm => 100;

        protected override double MeasuredTightestRadiusMm => 60;

        protected override double MeasuredGentlestRadiusMm => 90;

        protected override SpanRates MeasuredRatesAt(double u)
        {
            OnLook();
            return new(100, u * 100 % 1 < 0.5 ? 1 / 60.0 : 1 / 90.0);
        }
    }
}
