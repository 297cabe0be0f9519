namespace Forming.Curves;

/// <summary>One ruling of a tapered panel, in the finished panel.</summary>
/// <param name="Turn">Tangent angle phi that it joins on both curves [rad].</param>
/// <param name="Along">u = q·t: far point less near point, along the tangent [mm].</param>
/// <param name="Length">L, length of the ruling [mm].</param>
/// <param name="EdgeAngle">w, ruling against the edge [rad].</param>
/// <param name="Slope">p, slope of the sheet [rad]; negative where the far end is wider.</param>
/// <param name="NormalRate">lam, turn of the sheet's normal per turn of the tangent.</param>
/// <param name="HeadingRate">eta', turn of the ruling's heading in the flat sheet per turn of the tangent.</param>
/// <param name="NearRadius">rho0, radius of the near curve on the measured face [mm].</param>
/// <param name="FarRadius">rho1, radius of the far curve on the measured face [mm].</param>
/// <param name="NearWidth">n0, mid-surface width square to the ruling per turn, near end [mm].</param>
/// <param name="FarWidth">n1, the same at the far end [mm].</param>
internal readonly record struct Ruling(
    double Turn,
    double Along,
    double Length,
    double EdgeAngle,
    double Slope,
    double NormalRate,
    double HeadingRate,
    double NearRadius,
    double FarRadius,
    double NearWidth,
    double FarWidth)
{
    /// <summary>Width square to the ruling per turn at its middle [mm].</summary>
    public double MiddleWidth => (NearWidth + FarWidth) / 2;

    /// <summary>r0, bending radius of the mid surface at the near end [mm].</summary>
    public double NearBendRadius => NearWidth / NormalRate;

    /// <summary>r1, bending radius of the mid surface at the far end [mm].</summary>
    public double FarBendRadius => FarWidth / NormalRate;
}
