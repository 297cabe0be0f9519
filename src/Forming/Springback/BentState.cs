namespace Forming.Springback;

/// <summary>A wide sheet bent past yield, or not, by pure bending.</summary>
/// <param name="Curvature">Curvature of the mid surface under load [1/mm].</param>
/// <param name="MomentPerWidth">Bending moment [N·mm/mm].</param>
/// <param name="TangentStiffness">Growth of the moment with the curvature [N·mm²/mm].</param>
/// <param name="WorkPerArea">Work done, the integral of the moment over the curvature [N/mm].</param>
/// <param name="IsPlastic">Whether the skin has yielded.</param>
public readonly record struct BentState(
    double Curvature, double MomentPerWidth, double TangentStiffness, double WorkPerArea, bool IsPlastic);
