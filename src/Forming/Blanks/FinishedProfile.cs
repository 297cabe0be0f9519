using Forming.Contact;
using Forming.Curves;
using Forming.Materials;
using Forming.Springback;

namespace Forming.Blanks;

/// <summary>The finished panel's inside face in section, for pictures.</summary>
public static class FinishedProfile
{
    /// <summary>Points of the inside face, in the same frame as the form's section: start of the curve at (0, 0) heading +x.</summary>
    /// <param name="curve">The finished curve.</param>
    /// <param name="surface">The face it was measured on.</param>
    /// <param name="sheet">The panel's sheet.</param>
    /// <param name="leadInMm">Flat before the curve [mm].</param>
    /// <param name="leadOutMm">Flat after it [mm].</param>
    /// <param name="stepsPerPiece">Steps along each smooth piece, &gt; 0.</param>
    /// <returns>[n] points, end of the lead-in to end of the lead-out [mm].</returns>
    public static IReadOnlyList<Point> Of(
        PanelCurve curve, Surface surface, Sheet sheet, double leadInMm, double leadOutMm, int stepsPerPiece = 48)
    {
        // A panel that does not spring back would be formed on its own finished curve.
        var unsprung = new FormingRule(BendingLaw.Of(sheet), MeasuredFactor: 1);
        var contact = ContactCurve.Solve(FinishedCurve.On(curve, surface, sheet.ThicknessMm), unsprung, sheet.ThicknessMm);
        var points = new List<Point> { new(-leadInMm, 0) };
        foreach (var run in contact.Runs)
            points.AddRange(run.Sample(stepsPerPiece).Select(place => place.Position));
        points.Add(contact.End.Position);
        points.Add(contact.End.Position + (leadOutMm * Point.Along(contact.End.Turn)));
        return points;
    }
}
