namespace Forming.Programs.Brakes;

/// <summary>A press brake: a punch presses the sheet into a die, both sides swing up.</summary>
public sealed record PressBrake : ProgramBrake
{
    /// <summary>Opening of the die [mm]; null takes 6, 8, 10 or 12 thicknesses.</summary>
    public double? DieOpeningMm { get; init; }

    /// <summary>The punch in section [mm], its tip at (0, 0); null takes the default.</summary>
    public IReadOnlyList<Point>? Punch { get; init; }

    /// <summary>The punch holder, above the punch.</summary>
    public ToolSize Holder { get; init; } = new(50, 70);

    /// <summary>The ram, above the holder.</summary>
    public ToolSize Ram { get; init; } = new(80, 400);

    /// <summary>The die.</summary>
    public ToolSize Die { get; init; } = new(40, 60);

    /// <summary>The bed below the die.</summary>
    public ToolSize Bed { get; init; } = new(90, 200);

    /// <summary>Force the brake is rated for [N], or null.</summary>
    public double? ForceCapacityN { get; init; }

    /// <inheritdoc/>
    public override double GaugeMinMm { get; init; } = 10;

    /// <inheritdoc/>
    public override double OpeningMm { get; init; } = 200;

    /// <summary>The die's opening for a sheet [mm].</summary>
    /// <param name="thicknessMm">Thickness of the sheet [mm].</param>
    /// <remarks>A trade journal's rule; between 2.5 and 3 mm, 8 and 9 mm, 10 and 12 mm it is silent and the wider opening is taken
    /// (assumption).</remarks>
    public double DieOpeningFor(double thicknessMm) => DieOpeningMm ?? thicknessMm switch
    {
        <= 2.5 => 6 * thicknessMm,
        <= 8 => 8 * thicknessMm,
        <= 10 => 10 * thicknessMm,
        _ => 12 * thicknessMm,
    };

    internal override BrakeTools ToolsFor(ProgramPart part) => PressTools.Of(this, part);
}
