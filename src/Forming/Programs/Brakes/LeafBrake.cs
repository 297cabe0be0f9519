namespace Forming.Programs.Brakes;

/// <summary>A leaf brake: the sheet is clamped under a beam with a nose, a leaf swings the front up.</summary>
public sealed record LeafBrake : ProgramBrake
{
    /// <summary>The beam in section [mm], its foremost nose point at x = 0, its underside at y = 0; null takes the default.</summary>
    public IReadOnlyList<Point>? Beam { get; init; }

    /// <summary>Least run in front that the leaf can fold [mm].</summary>
    public double MinRunMm { get; init; } = 8;

    /// <summary>Least run behind that the beam can clamp [mm].</summary>
    public double MinLandMm { get; init; } = 8;

    /// <summary>From the fold to the hand on the leaf [mm].</summary>
    public double LeverMm { get; init; } = 500;

    /// <summary>From the fold to where the sheet bears on the leaf [mm].</summary>
    public double BearingMm { get; init; } = 15;

    /// <summary>Depth over which the beam clamps [mm].</summary>
    public double BeamDepthMm { get; init; } = 70;

    /// <inheritdoc/>
    public override double GaugeMinMm { get; init; } = 75;

    /// <inheritdoc/>
    public override double OpeningMm { get; init; } = 30;

    internal override BrakeTools ToolsFor(ProgramPart part) => LeafTools.Of(this, part);
}
