using Forming.Springback;

namespace Forming.Contact;

/// <summary>A point of the contact curve, which touches the panel's inside face under load.</summary>
/// <param name="Turn">Tangent angle under load [rad].</param>
/// <param name="MidMm">Place along the panel's mid surface from the start of the curve [mm].</param>
/// <param name="Position">Place in section [mm].</param>
/// <param name="FinishedCurvature">Wanted mid-surface curvature here [1/mm].</param>
/// <param name="State">The panel's state under load.</param>
public readonly record struct ContactPoint(
    double Turn, double MidMm, Point Position, double FinishedCurvature, BentState State)
{
    /// <summary>Centre of a fold whose outside face touches the curve here.</summary>
    /// <param name="outerRadiusMm">Outside radius p of the fold [mm].</param>
    public Point FoldCentre(double outerRadiusMm) => Position + (outerRadiusMm * Point.Along(Turn).Left());

    /// <summary>Radius of the contact curve [mm]; infinite where the panel is flat under load.</summary>
    /// <param name="thicknessMm">The panel's thickness [mm].</param>
    public double RadiusMm(double thicknessMm) => (1 / State.Curvature) - (thicknessMm / 2);
}
