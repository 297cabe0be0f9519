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
    public abstract double ParameterAt(Measure measure, double value);

    /// <summary>Wanted mid-surface curvature at a parameter [1/mm].</summary>
    /// <param name="u">The parameter.</param>
    public abstract double FinishedCurvatureAt(double u);

    /// <summary>The panel's state under load at a parameter.</summary>
    /// <param name="u">The parameter.</param>
    public abstract BentState StateAt(double u);

    /// <summary>A measure of the whole piece.</summary>
    /// <param name="measure">The measure.</param>
    public double Total(Measure measure) => measure.Of(Turn, Mid);
}
