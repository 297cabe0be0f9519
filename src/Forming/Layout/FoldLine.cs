namespace Forming.Layout;

/// <summary>One fold of a tapered form on its flat blank, in the sheet frame.</summary>
/// <remarks>
/// Sheet frame: x along the chord from the first to the last fold's near end, y to the far end, (0, 0) the lower left corner of the
/// bounding rectangle, seen from the contact face. The rectangle's lower and upper edges are the base lines.
/// </remarks>
/// <param name="Near">Near end of the centre line [mm].</param>
/// <param name="Far">Far end of the centre line [mm].</param>
/// <param name="BaseNearMm">Where the centre line crosses the lower base line, from the datum [mm].</param>
/// <param name="BaseFarMm">Where it crosses the upper base line, from the datum [mm].</param>
/// <param name="MarkFar">The upper crossing as it reads on the tape.</param>
/// <param name="LengthMm">Length of the fold [mm].</param>
/// <param name="StraightNearMm">Straight width of the facet after this fold, near end [mm].</param>
/// <param name="StraightFarMm">The same at the far end [mm].</param>
/// <param name="FacetNearMm">The facet after this fold, mold line to mold line, near end [mm].</param>
/// <param name="FacetFarMm">The same at the far end [mm].</param>
/// <param name="FirstTangentNear">Near end of the tangent line on the lead-in side [mm].</param>
/// <param name="FirstTangentFar">Far end of it [mm].</param>
/// <param name="SecondTangentNear">Near end of the tangent line on the lead-out side [mm].</param>
/// <param name="SecondTangentFar">Far end of it [mm].</param>
public sealed record FoldLine(
    Point Near,
    Point Far,
    double BaseNearMm,
    double BaseFarMm,
    TapeReading MarkFar,
    double LengthMm,
    double StraightNearMm,
    double StraightFarMm,
    double FacetNearMm,
    double FacetFarMm,
    Point FirstTangentNear,
    Point FirstTangentFar,
    Point SecondTangentNear,
    Point SecondTangentFar);
