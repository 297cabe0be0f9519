using Forming.Programs.Brakes;

namespace Forming.Programs;

/// <summary>What a fold asks of the brake.</summary>
/// <param name="ForceN">Force of the ram, an upper bound [N]; press brakes only.</param>
/// <param name="ForceLowN">The same without friction [N].</param>
/// <param name="MomentNmm">Moment at the leaf [N·mm]; leaf brakes only.</param>
/// <param name="HandleForceN">Force at the handle, without the leaf's weight and friction [N].</param>
/// <param name="LeafForceN">Force of the leaf on the sheet [N].</param>
/// <param name="ClampForceN">Force of the beam on the sheet [N].</param>
public sealed record FoldLoad(
    double? ForceN, double? ForceLowN, double? MomentNmm, double? HandleForceN, double? LeafForceN, double? ClampForceN)
{
    /// <summary>
    /// Factor of the air-bending formula for a die of eight thicknesses; a little high for a wider one, low for a narrower.
    /// </summary>
    public const double AirBend = 1.33;

    /// <summary>The opening in thicknesses at which that factor was found.</summary>
    public const double AirBendOpeningOverThickness = 8;

    /// <summary>The same from plane strain alone.</summary>
    public static double AirBendLow { get; } = 2 / Math.Sqrt(3);

    /// <summary>Force of an air bend, <c>k UTS W t²/V</c>.</summary>
    /// <param name="factor">k.</param>
    /// <param name="ultimateMpa">Ultimate strength [MPa].</param>
    /// <param name="widthMm">Length of the fold [mm].</param>
    /// <param name="thicknessMm">Thickness [mm].</param>
    /// <param name="openingMm">Opening of the die [mm].</param>
    /// <returns>Force [N].</returns>
    /// <remarks>Source key <c>air-bend-lecture</c>: peak load of a large bend, an upper bound for folds of 5 to 20°.</remarks>
    public static double AirBendForceN(double factor, double ultimateMpa, double widthMm, double thicknessMm, double openingMm) =>
        factor * ultimateMpa * widthMm * thicknessMm * thicknessMm / openingMm;

    /// <summary>Fully plastic moment of a wide sheet, <c>(2/√3) UTS t²/4</c> per width.</summary>
    /// <param name="ultimateMpa">Ultimate strength in place of the flow stress: high for small folds [MPa].</param>
    /// <param name="widthMm">Length of the fold [mm].</param>
    /// <param name="thicknessMm">Thickness [mm].</param>
    /// <returns>Moment [N·mm].</returns>
    /// <remarks>Source key <c>marciniak-duncan-hu</c>, eq. 6.21.</remarks>
    public static double PlasticMomentNmm(double ultimateMpa, double widthMm, double thicknessMm) =>
        2 / Math.Sqrt(3) * ultimateMpa * thicknessMm * thicknessMm / 4 * widthMm;

    /// <summary>Load of the longest fold.</summary>
    internal static FoldLoad Of(ProgramPart part, ProgramBrake brake) => Of(part, brake, part.WidthMm);

    /// <summary>Load of a fold.</summary>
    internal static FoldLoad Of(ProgramPart part, ProgramBrake brake, double lengthMm)
    {
        var t = part.Shape.ThicknessMm;
        if (brake is PressBrake press)
        {
            var opening = press.DieOpeningFor(t);
            return new(
                AirBendForceN(AirBend, part.UltimateMpa, lengthMm, t, opening),
                AirBendForceN(AirBendLow, part.UltimateMpa, lengthMm, t, opening),
                null,
                null,
                null,
                null);
        }

        var leaf = (LeafBrake)brake;
        var moment = PlasticMomentNmm(part.UltimateMpa, lengthMm, t);
        return new(null, null, moment, moment / leaf.LeverMm, moment / leaf.BearingMm, moment / leaf.BeamDepthMm);
    }

    /// <summary>
    /// Share of the brake's capacity that a part uses, the larger of rating by sheet and by force; null without a rating.
    /// </summary>
    internal static double? UseOfCapacity(ProgramPart part, ProgramBrake brake)
    {
        var t = part.Shape.ThicknessMm;
        double? bySheet = brake.Capacity is { } rated
            ? part.UltimateMpa * t * t / (rated.UltimateMpa * rated.ThicknessMm * rated.ThicknessMm)
            : null;
        var byForce = UseOfForce(part, brake);
        return bySheet is { } sheet && byForce is { } force ? Math.Max(sheet, force) : bySheet ?? byForce;
    }

    /// <summary>Share of the rated force that a fold uses; null without such a rating.</summary>
    internal static double? UseOfForce(ProgramPart part, ProgramBrake brake) =>
        brake is PressBrake { ForceCapacityN: { } capacity } ? Of(part, brake).ForceN / capacity : null;
}
