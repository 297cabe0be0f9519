namespace Forming.Springback;

/// <summary>What the width of a strip does to how it bends.</summary>
public static class StripWidth
{
    // Below this the quotient loses its digits and the series has them.
    private const double Narrow = 0.05;

    /// <summary>Share of plane stress in a strip that is bent to a cylinder: 1 for a narrow one, 0 for a wide sheet.</summary>
    /// <param name="widthMm">Width of the strip [mm], &gt; 0.</param>
    /// <param name="radiusMm">Radius it is bent to [mm], &gt; 0.</param>
    /// <param name="thicknessMm">Thickness [mm], &gt; 0.</param>
    /// <param name="poissonRatio">Poisson's ratio.</param>
    /// <remarks>
    /// <c>(2/γ)(cosh γ - cos γ)/(sinh γ + sin γ)</c> with <c>γ = b (3(1 - v²))^¼/√(R t)</c>: the elastic plate, after D. G. Ashwell 1950,
    /// from memory; that a yielding strip follows it is an assumption. The edges curl over a length of about √(R t).
    /// </remarks>
    public static double PlaneStress(double widthMm, double radiusMm, double thicknessMm, double poissonRatio)
    {
        var g = widthMm * Math.Pow(3 * (1 - (poissonRatio * poissonRatio)), 0.25) / Math.Sqrt(radiusMm * thicknessMm);
        if (g < Narrow)
            return 1 - (g * g * g * g / 180);
        // Both sides times 2e^-γ, so that nothing overflows.
        double once = Math.Exp(-g), twice = once * once;
        return 2 / g * (1 + twice - (2 * once * Math.Cos(g))) / (1 - twice + (2 * once * Math.Sin(g)));
    }
}
