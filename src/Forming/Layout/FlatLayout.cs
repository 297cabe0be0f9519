using Forming.Facets;
using Forming.Folds;

namespace Forming.Layout;

/// <summary>Where everything lies on the flat form blank, from its lead-in edge.</summary>
/// <param name="LengthMm">Length of the blank [mm].</param>
/// <param name="CentreLines">[m] fold centre lines [mm].</param>
/// <param name="Allowances">[m] bend allowances, each half to either side of its centre line [mm].</param>
/// <param name="LeadInStraightMm">Straight part of the lead-in [mm].</param>
/// <param name="LeadOutStraightMm">Straight part of the lead-out [mm].</param>
public sealed record FlatLayout(
    double LengthMm, double[] CentreLines, double[] Allowances, double LeadInStraightMm, double LeadOutStraightMm)
{
    /// <summary>Lays a form out flat.</summary>
    /// <param name="polygon">Its folds and facets.</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <param name="leadInMm">Lead-in, to the first mold line [mm].</param>
    /// <param name="leadOutMm">Lead-out, from the last mold line [mm].</param>
    /// <remarks>
    /// Straight parts and bend allowances laid end to end; the leads lose the setbacks of the end folds:
    /// <c>blank = (lead-in - SB_1 + BA_1/2) + Σ flat spacings + (BA_m/2 + lead-out - SB_m)</c>.
    /// </remarks>
    public static FlatLayout Of(FormPolygon polygon, FoldShape fold, double leadInMm, double leadOutMm)
    {
        var count = polygon.Angles.Length;
        double[] centres = new double[count], allowances = new double[count];
        var leadIn = leadInMm - fold.Setback(polygon.Angles[0]);
        var leadOut = leadOutMm - fold.Setback(polygon.Angles[^1]);
        var along = leadIn;
        for (var j = 0; j < count; j++)
        {
            allowances[j] = fold.BendAllowance(polygon.Angles[j]);
            centres[j] = along + (allowances[j] / 2);
            along += allowances[j] + (j < count - 1 ? polygon.Straights[j] : leadOut);
        }

        return new(along, centres, allowances, leadIn, leadOut);
    }

    /// <summary>Folds the layout back: each fold an arc of the neutral line, each facet straight, from the lead-in on.</summary>
    /// <param name="polygon">The polygon it was laid out from.</param>
    /// <param name="fold">Shape of the folds.</param>
    /// <returns>Largest distance of a fold centre from where the polygon has it [mm].</returns>
    public double FoldBackMiss(FormPolygon polygon, FoldShape fold)
    {
        // The walk follows the neutral line, which lies at the neutral radius from every fold centre.
        var neutral = fold.NeutralRadiusMm;
        var position = polygon.Centres[0] - new Point(LeadInStraightMm, neutral);
        var heading = new Point(1, 0);
        double turn = 0, along = 0, largest = 0;
        for (var j = 0; j < CentreLines.Length; j++)
        {
            var tangent = CentreLines[j] - (Allowances[j] / 2);
            position += (tangent - along) * heading;
            var centre = position + (neutral * heading.Left());
            largest = Math.Max(largest, (centre - polygon.Centres[j]).Length);
            turn += Allowances[j] / neutral;
            heading = Point.Along(turn);
            position = centre - (neutral * heading.Left());
            along = tangent + Allowances[j];
        }

        var direction = Math.Abs(turn - polygon.EndTurn) * (LengthMm - along);
        return Math.Max(largest, direction);
    }
}
