using Forming.Contact;
using Forming.Numerics;
using Forming.Springback;

namespace Forming.Tapers;

/// <summary>How the panel wraps over a tapered form: its state, arc and lever at both ends of every ruling.</summary>
internal sealed class TaperWrap
{
    private const int Samples = 32;

    /// <summary>Curvatures that differ by less are equal: on a cone they are so all along.</summary>
    private const double Rounding = 1e-9;

    private readonly BendingLaw _law;
    private readonly (double Turn, BentState State)[] _nearPeaks;
    private readonly (double Turn, BentState State)[] _farPeaks;

    /// <summary>Looks along the sweep.</summary>
    /// <param name="formed">The panel on the form.</param>
    /// <param name="law">The panel's bending law.</param>
    public TaperWrap(FormedPanel formed, BendingLaw law)
    {
        Formed = formed;
        _law = law;
        Near = [.. Turns.Select(turn => PlaceAt(turn, isFar: false))];
        Far = [.. Turns.Select(turn => PlaceAt(turn, isFar: true))];
        _nearPeaks = [.. Peaks(isFar: false)];
        _farPeaks = [.. Peaks(isFar: true)];
    }

    /// <summary>Whether an end is bent the most somewhere between its own ends: then more folds may fall less well.</summary>
    public bool IsUneven => _nearPeaks.Length + _farPeaks.Length > 0;

    /// <summary>The panel on the form.</summary>
    public FormedPanel Formed { get; }

    /// <summary>Places along the near end.</summary>
    public IReadOnlyList<ContactPoint> Near { get; }

    /// <summary>Places along the far end.</summary>
    public IReadOnlyList<ContactPoint> Far { get; }

    /// <summary>Width of the curve square to the rulings, near end [mm].</summary>
    public double NearMidMm => Near[^1].MidMm;

    /// <summary>The same at the far end [mm].</summary>
    public double FarMidMm => Far[^1].MidMm;

    /// <summary>Even steps along the sweep [rad].</summary>
    public IEnumerable<double> Turns => Enumerable.Range(0, Samples + 1).Select(i => Formed.Panel.Sweep * i / Samples);

    /// <summary>The panel's state where it is bent the most.</summary>
    public BentState Tightest => Near.Concat(Far).Select(place => place.State).MaxBy(state => state.Curvature);

    /// <summary>One end of a ruling as a place along a curve.</summary>
    /// <param name="turn">Tangent angle of the ruling [rad].</param>
    /// <param name="isFar">Whether the far end.</param>
    public ContactPoint PlaceAt(double turn, bool isFar)
    {
        var ruling = Formed.Panel.At(turn);
        var radius = isFar ? ruling.FarBendRadius : ruling.NearBendRadius;
        var mid = (isFar ? Formed.FarWidth : Formed.NearWidth).At(turn);
        return new(Formed.Turn.At(turn), mid, default, 1 / radius, _law.At(Formed.Factor.At(turn) / radius));
    }

    /// <summary>The panel's state where it is bent the most between two rulings.</summary>
    /// <param name="from">Tangent angle of the ruling nearer to the start [rad].</param>
    /// <param name="to">Tangent angle of the ruling nearer to the end [rad].</param>
    /// <param name="isFar">Whether at the far end.</param>
    public BentState TightestBetween(double from, double to, bool isFar)
    {
        BentState start = PlaceAt(from, isFar).State, end = PlaceAt(to, isFar).State;
        var tightest = start.Curvature >= end.Curvature ? start : end;
        foreach (var (turn, state) in isFar ? _farPeaks : _nearPeaks)
        {
            if (state.Curvature > tightest.Curvature && turn >= from && turn <= to)
                tightest = state;
        }

        return tightest;
    }

    // Where the curvature turns from growing to falling: bracketed by the samples, then narrowed.
    private IEnumerable<(double Turn, BentState State)> Peaks(bool isFar)
    {
        var places = isFar ? Far : Near;
        for (var i = 1; i < Samples; i++)
        {
            double before = Curvature(i - 1), here = Curvature(i), after = Curvature(i + 1);
            if (!(here >= before && here >= after) || here - Math.Min(before, after) <= Rounding * here)
                continue;
            var peak = GoldenSection.Peak(
                turn => PlaceAt(turn, isFar).State.Curvature,
                Formed.Panel.Sweep * (i - 1) / Samples,
                Formed.Panel.Sweep * (i + 1) / Samples);
            yield return (peak, PlaceAt(peak, isFar).State);
        }

        double Curvature(int index) => places[index].State.Curvature;
    }

    /// <summary>How far the panel slides forward under the hand at the end where it slides further [mm].</summary>
    public double SlideMm => Math.Max(SlideOf(Near), SlideOf(Far));

    private double SlideOf(IReadOnlyList<ContactPoint> places)
    {
        var springback = 0.0;
        for (var i = 1; i < places.Count; i++)
            springback +=
                (places[i - 1].State.MomentPerWidth + places[i].State.MomentPerWidth) / 2 * (places[i].MidMm - places[i - 1].MidMm);
        return Pulling.Lever.SlideMm(places[^1].MidMm, places[^1].Turn, springback / _law.Stiffness);
    }

    /// <summary>Longest lever that keeps the wrap in order at both ends.</summary>
    /// <param name="share">Share of the longest.</param>
    public double LongestLeverMm(double share) => Math.Min(
        Pulling.Lever.LongestMm(Near, NearMidMm, share), Pulling.Lever.LongestMm(Far, FarMidMm, share));
}
