using Forming.Contact;
using Forming.Springback;

namespace Forming.Tapers;

/// <summary>How the panel wraps over a tapered form: its state, arc and lever at both ends of every ruling.</summary>
internal sealed class TaperWrap
{
    private const int Samples = 32;

    private readonly BendingLaw law;

    /// <summary>Looks along the sweep.</summary>
    /// <param name="formed">The panel on the form.</param>
    /// <param name="law">The panel's bending law.</param>
    public TaperWrap(FormedPanel formed, BendingLaw law)
    {
        Formed = formed;
        this.law = law;
        Near = [.. Turns.Select(turn => PlaceAt(turn, isFar: false))];
        Far = [.. Turns.Select(turn => PlaceAt(turn, isFar: true))];
    }

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
        return new(Formed.Turn.At(turn), mid, default, 1 / radius, law.At(Formed.Factor.At(turn) / radius));
    }

    /// <summary>Longest lever that keeps the wrap in order at both ends.</summary>
    /// <param name="share">Share of the longest.</param>
    public double LongestLeverMm(double share) => Math.Min(
        Panels.Lever.LongestMm(Near, NearMidMm, share), Panels.Lever.LongestMm(Far, FarMidMm, share));
}
