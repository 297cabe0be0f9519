namespace Forming.Programs.Motion;

/// <summary>Least clearance over a swing.</summary>
/// <param name="Mm">The clearance, at most what is plenty; 0 or less is a collision [mm].</param>
/// <param name="Nearest">What the part comes nearest to, or null where nothing comes near.</param>
/// <param name="AtAngle">Angle of the fold there.</param>
public readonly record struct Clearance(double Mm, string? Nearest, Angle AtAngle);
