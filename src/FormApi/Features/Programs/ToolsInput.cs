using System.Linq.Expressions;
using FluentValidation;
using FormApi.Http.Json;
using FormApi.Http.Rules;
using FormApi.Http.Units;

namespace FormApi.Features.Programs;

/// <summary>
/// Tools, gauge and limits of a brake. Outlines are in section, x towards the operator, y up; every default is a generic assumption.
/// </summary>
/// <param name="Clearance">Clearance that is enough [mm or in]. Default: 1 mm.</param>
/// <param name="Plenty">Clearance past which more is not better [mm or in]. Default: 10 mm.</param>
/// <param name="LeastLift">Least lift of the upper jaw with which the part can be moved [mm or in]. Default: 8 mm.</param>
/// <param name="OverTravel">How far past its stop a fold may go [°]. Default: 0.5°.</param>
/// <param name="OpenEnd">Whether the part can be slid off the end of the brake. Default: false.</param>
/// <param name="Gauge">Where the back gauge can be set [mm or in]. Default: 75 to 600 mm on a leaf brake, 10 to 600 mm on a press
/// brake.</param>
/// <param name="StopHeight">How high the face of the gauge's stop reaches over the flat sheet [mm or in]. Default: 25 mm.</param>
/// <param name="Opening">How far the beam lifts or the ram opens [mm or in]. Default: 30 mm on a leaf brake, 200 mm on a press
/// brake.</param>
/// <param name="Beam">Outline of the beam [mm or in], its foremost nose point at x = 0, the underside that clamps at y = 0; leaf brakes
/// only. Default: null, a nose of the fold radius at 45° on a beam 120 mm high.</param>
/// <param name="MinRun">Least run in front that the leaf can fold [mm or in]; leaf brakes only. Default: 8 mm.</param>
/// <param name="MinLand">Least run behind that the beam can clamp [mm or in]; leaf brakes only. Default: 8 mm.</param>
/// <param name="Lever">From the fold to the hand on the leaf [mm or in]; leaf brakes only. Default: 500 mm.</param>
/// <param name="Bearing">From the fold to where the sheet bears on the leaf [mm or in]; leaf brakes only. Default: 15 mm.</param>
/// <param name="BeamDepth">Depth over which the beam clamps [mm or in]; leaf brakes only. Default: 70 mm.</param>
/// <param name="Punch">Outline of the punch [mm or in], its tip at (0, 0); press brakes only. Default: null, 60° with a tip of the fold
/// radius, 16 mm wide, 110 mm high.</param>
/// <param name="Holder">Size of the punch holder; press brakes only. Default: 50 × 70 mm.</param>
/// <param name="Ram">Size of the ram; press brakes only. Default: 80 × 400 mm.</param>
/// <param name="Die">Size of the die; press brakes only. Default: 40 × 60 mm.</param>
/// <param name="Bed">Size of the bed; press brakes only. Default: 90 × 200 mm.</param>
/// <param name="ForceCapacity">Force the brake is rated for [N or lbf]; press brakes only. Default: null, nothing is checked.</param>
internal sealed record ToolsInput(
    double? Clearance = null,
    double? Plenty = null,
    double? LeastLift = null,
    double? OverTravel = null,
    bool? OpenEnd = null,
    GaugeInput? Gauge = null,
    double? StopHeight = null,
    double? Opening = null,
    IReadOnlyList<Pair>? Beam = null,
    double? MinRun = null,
    double? MinLand = null,
    double? Lever = null,
    double? Bearing = null,
    double? BeamDepth = null,
    IReadOnlyList<Pair>? Punch = null,
    ToolSizeInput? Holder = null,
    ToolSizeInput? Ram = null,
    ToolSizeInput? Die = null,
    ToolSizeInput? Bed = null,
    double? ForceCapacity = null);

/// <summary>Where a back gauge can be set, from the sight line of a leaf brake or the punch tip of a press brake.</summary>
/// <param name="Min">Nearest [mm or in].</param>
/// <param name="Max">Farthest [mm or in].</param>
internal sealed record GaugeInput(double Min, double Max);

/// <summary>A block of a press brake in section, centred over the fold.</summary>
/// <param name="Width">Front to back [mm or in].</param>
/// <param name="Height">Height [mm or in].</param>
internal sealed record ToolSizeInput(double Width, double Height);

/// <summary>What tools must satisfy.</summary>
internal sealed class ToolsInputRules : AbstractValidator<ToolsInput>
{
    // What a drawing's corner loses when it is written down.
    private const double SamePlace = 1e-6;

    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public ToolsInputRules(UnitSystem units)
    {
        RuleFor(tools => tools.Clearance).Within(Ranges.ToolRoom, units);
        RuleFor(tools => tools.Plenty).Within(Ranges.ToolRoom, units);
        RuleFor(tools => tools.LeastLift).Within(Ranges.ToolRoom, units);
        RuleFor(tools => tools.OverTravel).Within(Ranges.OverTravel, units);
        RuleFor(tools => tools.Gauge!).SetValidator(new GaugeInputRules(units)).When(tools => tools.Gauge is not null);
        RuleFor(tools => tools.StopHeight).Within(Ranges.ToolSize, units);
        RuleFor(tools => tools.Opening).Within(Ranges.ToolSize, units);
        RuleFor(tools => tools.MinRun).Within(Ranges.ToolRoom, units);
        RuleFor(tools => tools.MinLand).Within(Ranges.ToolRoom, units);
        RuleFor(tools => tools.Lever).Within(Ranges.ToolSize, units);
        RuleFor(tools => tools.Bearing).Within(Ranges.ToolSize, units);
        RuleFor(tools => tools.BeamDepth).Within(Ranges.ToolSize, units);
        RuleFor(tools => tools.ForceCapacity).Within(Ranges.RatedForce, units);
        Expression<Func<ToolsInput, ToolSizeInput?>>[] sizes = [
            tools => tools.Holder, tools => tools.Ram, tools => tools.Die, tools => tools.Bed];
        foreach (var size in sizes)
            RuleFor(size!).SetValidator(new ToolSizeInputRules(units)!);
        RuleFor(tools => tools.Beam!.Count).Within(Ranges.OutlineCount, units).About(tools => tools.Beam)
            .When(tools => tools.Beam is not null);
        RuleFor(tools => tools.Punch!.Count).Within(Ranges.OutlineCount, units).About(tools => tools.Punch)
            .When(tools => tools.Punch is not null);
        RuleFor(tools => tools).Custom((tools, context) =>
        {
            if (OutlineRules.Check(context, checking => checking.Beam, tools.Beam, units)
                && !StandsRight(tools.Beam!, corner => IsZero(corner.First)))
            {
                context.FaultAt(checking => checking.Beam, "outline.off-its-place", "The outline is not placed by its clamping edge.", "its underside at y = 0, the foremost point of its nose at x = 0");
            }

            if (OutlineRules.Check(context, checking => checking.Punch, tools.Punch, units)
                && !StandsRight(tools.Punch!, corner => IsZero(corner.First) && IsZero(corner.Second)))
            {
                context.FaultAt(checking => checking.Punch, "outline.off-its-place", "The outline is not placed by its tip.", "its tip, the lowest point, at (0, 0)");
            }

        });
    }

    private static bool StandsRight(IReadOnlyList<Pair> outline, Func<Pair, bool> isPlace) =>
        IsZero(outline.Min(corner => corner.Second)) && outline.Any(isPlace);

    private static bool IsZero(double coordinate) => Math.Abs(coordinate) <= SamePlace;
}

/// <summary>What a gauge must satisfy.</summary>
internal sealed class GaugeInputRules : AbstractValidator<GaugeInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public GaugeInputRules(UnitSystem units)
    {
        RuleFor(gauge => gauge.Min).Within(Ranges.ToolRoom, units);
        RuleFor(gauge => gauge.Max).Within(Ranges.ToolRoom, units);
        RuleFor(gauge => gauge.Max).Must((gauge, max) => !(max < gauge.Min))
            .Else("contradicts", "The farthest place of the gauge is nearer than the nearest.", "at least min");
    }
}

/// <summary>What the size of a tool must satisfy.</summary>
internal sealed class ToolSizeInputRules : AbstractValidator<ToolSizeInput>
{
    /// <summary>Rules, with limits in the caller's units.</summary>
    /// <param name="units">The caller's units.</param>
    public ToolSizeInputRules(UnitSystem units)
    {
        RuleFor(size => size.Width).Within(Ranges.ToolSize, units);
        RuleFor(size => size.Height).Within(Ranges.ToolSize, units);
    }
}
