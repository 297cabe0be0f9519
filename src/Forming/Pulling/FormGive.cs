namespace Forming.Pulling;

/// <summary>How far the form itself gives under the pull.</summary>
/// <param name="Rotation">Largest rotation of the form's end.</param>
/// <param name="MomentPerWidth">Largest moment the form carries [N·mm/mm].</param>
/// <param name="FirstYieldPerWidth">Moment at which the form's sheet begins to yield [N·mm/mm].</param>
public sealed record FormGive(Angle Rotation, double MomentPerWidth, double FirstYieldPerWidth);
