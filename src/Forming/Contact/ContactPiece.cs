using Forming.Springback;

namespace Forming.Contact;

/// <summary>A stretch of the contact curve along which everything is smooth, in its own frame: start (0, 0), heading +x.</summary>
internal abstract class ContactPiece
{
    /// <summary>Turn of the whole piece [rad].</summary>
    public abstract double Turn { get; }

    /// <summary>Mid-surface length of the whole piece [mm].</summary>
    public abstract double Mid { get; }

    /// <summary>Parameters between the ends at which the panel is bent the most.</summary>
    public virtual IEnumerable<double> InnerPeaks => [];

    /// <summary>What has grown from the start of the piece to a parameter from 0 to 1.</summary>
    /// <param name="u">The parameter.</param>
    public abstract PieceGrowth At(double u);

    /// <summary>The parameter at which a measure of the piece reaches a value.</summary>
    /// <param name="measure">The measure.</param>
    /// <param name="value">Its value, from 0 to that of the whole piece.</param>
    public abstract double ParameterAt(CurveMeasure measure, double value);

    /// <summary>Wanted mid-surface curvature at a parameter [1/mm].</summary>
    /// <param name="u">The parameter.</param>
    public abstract double FinishedCurvatureAt(double u);

    /// <summary>The panel's state under load at a parameter.</summary>
    /// <param name="u">The parameter.</param>
    public abstract BentState StateAt(double u);

    /// <summary>A measure of the whole piece.</summary>
    /// <param name="measure">The measure.</param>
    public double Total(CurveMeasure measure) => measure.Of(Turn, Mid);
}

/// <summary>Where a stretch of the contact curve begins or ends.</summary>
/// <param name="Turn">Tangent angle under load [rad].</param>
/// <param name="MidMm">Place along the panel's mid surface from the start of the curve [mm].</param>
/// <param name="Position">Place in section [mm].</param>
public readonly record struct ContactFrame(double Turn, double MidMm, Point Position)
{
    internal ContactFrame Then(PieceGrowth growth)
    {
        var heading = Point.Along(Turn);
        return new(
            Turn + growth.Turn,
            MidMm + growth.Mid,
            Position + (growth.Position.X * heading) + (growth.Position.Y * heading.Left()));
    }

    internal ContactFrame ThenFlat(double length) =>
        this with { MidMm = MidMm + length, Position = Position + (length * Point.Along(Turn)) };
}

/// <summary>A running measure along a curve: so much per turned angle and so much per mid-surface length.</summary>
/// <param name="PerTurn">Growth per turned angle under load [per rad].</param>
/// <param name="PerMid">Growth per mid-surface length [per mm].</param>
public readonly record struct CurveMeasure(double PerTurn, double PerMid)
{
    /// <summary>The turned angle under load [rad].</summary>
    public static CurveMeasure TurnedAngle { get; } = new(1, 0);

    /// <summary>The mid-surface length of the panel [mm].</summary>
    public static CurveMeasure MidLength { get; } = new(0, 1);

    /// <summary>The length of a parallel curve [mm].</summary>
    /// <param name="inwardMm">Its distance from the panel's mid surface towards the inside [mm].</param>
    public static CurveMeasure ParallelLength(double inwardMm) => new(-inwardMm, 1);

    /// <summary>The measure of a stretch.</summary>
    /// <param name="turn">Its turned angle under load [rad].</param>
    /// <param name="mid">Its mid-surface length [mm].</param>
    public double Of(double turn, double mid) => (PerTurn * turn) + (PerMid * mid);
}

/// <summary>From the curvature wanted in the finished panel to the panel's state on the form.</summary>
/// <param name="Law">Bending law of the panel's sheet, for moments and for springback unless it was measured.</param>
/// <param name="MeasuredFactor">Measured springback factor, or null.</param>
/// <param name="Correction">How the form departs from that, or null.</param>
public sealed record FormingRule(BendingLaw Law, double? MeasuredFactor = null, ContactCorrection? Correction = null)
{
    /// <summary>Whether a bend of constant radius stays one on the form.</summary>
    public bool KeepsArcs => Correction is null;

    /// <summary>The panel's state on the form.</summary>
    /// <param name="finishedCurvature">Wanted mid-surface curvature [1/mm], at least 0.</param>
    /// <param name="midMm">Place along the curve's mid surface [mm].</param>
    public BentState StateFor(double finishedCurvature, double midMm)
    {
        var state = MeasuredFactor is { } factor ? Law.At(finishedCurvature / factor) : Law.LoadedFor(finishedCurvature);
        return Correction is null ? state : Law.At(state.Curvature * Correction.At(midMm));
    }
}

