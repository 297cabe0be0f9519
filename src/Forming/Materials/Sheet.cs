namespace Forming.Materials;

/// <summary>A sheet: a material in one thickness.</summary>
/// <param name="Material">The material.</param>
/// <param name="ThicknessMm">Thickness [mm], &gt; 0.</param>
public sealed record Sheet(Material Material, double ThicknessMm);
