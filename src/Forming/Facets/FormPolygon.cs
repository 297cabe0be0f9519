using Forming.Contact;
using Forming.Folds;

namespace Forming.Facets;

/// <summary>Folds touching the contact curve, and the facets between them.</summary>
/// <param name="Places">[m] where the folds' outside faces touch the contact curve.</param>
/// <param name="Centres">[m] fold centres [mm].</param>
/// <param name="Angles">[m] fold angles [rad].</param>
/// <param name="Straights">[m - 1] straight parts between them: the chords between fold centres [mm].</param>
/// <param name="Facets">[m - 1] facets on the contact side, mold line to mold line [mm].</param>
/// <param name="EndTurn">Direction of the flat after the last fold [rad].</param>
public sealed record FormPolygon(
    ContactPoint[] Places, Point[] Centres, double[] Angles, double[] Straights, double[] Facets, double EndTurn)
{
    /// <summary>Folds a stretch that lies between two flats.</summary>
    /// <param name="places">[m] places of the folds.</param>
    /// <param name="startTurn">Direction of the flat before [rad].</param>
    /// <param name="endTurn">Direction of the flat after [rad].</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <remarks>
    /// The straight part of a facet is the chord between neighbouring fold centres, which lie on the inner parallel curve; a fold's
    /// angle is the turn from one chord to the next. The angles add up to the turn of the stretch exactly.
    /// </remarks>
    public static FormPolygon Through(ContactPoint[] places, double startTurn, double endTurn, FoldShape fold)
    {
        var count = places.Length;
        var centres = new Point[count];
        double[] angles = new double[count], straights = new double[count - 1], facets = new double[count - 1];
        centres[0] = places[0].FoldCentre(fold.OuterRadiusMm);
        var heading = Point.Along(startTurn);
        var turn = startTurn;
        for (var j = 0; j < count - 1; j++)
        {
            centres[j + 1] = places[j + 1].FoldCentre(fold.OuterRadiusMm);
            var chord = centres[j + 1] - centres[j];
            straights[j] = chord.Length;
            angles[j] = Math.Atan2(heading.Cross(chord), heading.Dot(chord));
            turn += angles[j];
            heading = chord;
        }

        angles[^1] = endTurn - turn;
        for (var j = 0; j < count - 1; j++)
            facets[j] = straights[j] + fold.Setback(angles[j]) + fold.Setback(angles[j + 1]);
        return new(places, centres, angles, straights, facets, endTurn);
    }

    /// <summary>The same straight parts with other fold angles.</summary>
    /// <param name="angles">[m] fold angles that add up to the turn there was [rad].</param>
    /// <param name="fold">Shape of the folds.</param>
    public FormPolygon WithAngles(double[] angles, FoldShape fold)
    {
        var centres = (Point[])Centres.Clone();
        var facets = new double[Facets.Length];
        double turn = 0;
        for (var j = 0; j < facets.Length; j++)
        {
            turn += angles[j];
            centres[j + 1] = centres[j] + (Straights[j] * Point.Along(turn));
            facets[j] = Straights[j] + fold.Setback(angles[j]) + fold.Setback(angles[j + 1]);
        }

        return this with { Centres = centres, Angles = angles, Facets = facets };
    }

    /// <summary>Distances between fold centre lines on the flat.</summary>
    /// <param name="fold">Shape of the folds.</param>
    /// <returns>[m - 1] distances [mm].</returns>
    public double[] Spacings(FoldShape fold)
    {
        var spacings = new double[Straights.Length];
        for (var j = 0; j < spacings.Length; j++)
            spacings[j] = Straights[j] + ((fold.BendAllowance(Angles[j]) + fold.BendAllowance(Angles[j + 1])) / 2);
        return spacings;
    }
}
