using FormApi.Http.Json;
using FormApi.Http.Units;
using Forming;
using Forming.Jobs;
using Forming.Programs.Brakes;

namespace FormApi.Features.Programs;

/// <summary>From a brake as a request states it to the library's.</summary>
internal static class ProgramSpecs
{
    /// <summary>The brake with its tools.</summary>
    /// <param name="brake">The brake with its defaults filled in.</param>
    /// <param name="units">The caller's units.</param>
    public static ProgramBrake BrakeFrom(ProgramBrakeInput brake, UnitSystem units)
    {
        var tools = brake.Tools!;
        ProgramBrake bare = brake.Kind == BrakeKind.Press ? PressFrom(brake, tools, units) : LeafFrom(brake, tools, units);
        return bare with
        {
            ClearanceMm = units.ToMm(tools.Clearance!.Value),
            PlentyMm = units.ToMm(tools.Plenty!.Value),
            LeastLiftMm = units.ToMm(tools.LeastLift!.Value),
            OverTravel = Angle.FromDegrees(tools.OverTravel!.Value),
            IsOpenEnded = tools.OpenEnd!.Value,
            GaugeMinMm = units.ToMm(tools.Gauge!.Min),
            GaugeMaxMm = units.ToMm(tools.Gauge.Max),
            StopHeightMm = units.ToMm(tools.StopHeight!.Value),
            OpeningMm = units.ToMm(tools.Opening!.Value),
            Capacity = CapacityFrom(brake, units),
        };
    }

    private static LeafBrake LeafFrom(ProgramBrakeInput brake, ToolsInput tools, UnitSystem units) => new()
    {
        LengthMm = units.ToMm(brake.Length!.Value),
        Beam = OutlineFrom(tools.Beam, units),
        MinRunMm = units.ToMm(tools.MinRun!.Value),
        MinLandMm = units.ToMm(tools.MinLand!.Value),
        LeverMm = units.ToMm(tools.Lever!.Value),
        BearingMm = units.ToMm(tools.Bearing!.Value),
        BeamDepthMm = units.ToMm(tools.BeamDepth!.Value),
    };

    private static PressBrake PressFrom(ProgramBrakeInput brake, ToolsInput tools, UnitSystem units) => new()
    {
        LengthMm = units.ToMm(brake.Length!.Value),
        DieOpeningMm = brake.DieOpening is { } opening ? units.ToMm(opening) : null,
        Punch = OutlineFrom(tools.Punch, units),
        Holder = SizeFrom(tools.Holder!, units),
        Ram = SizeFrom(tools.Ram!, units),
        Die = SizeFrom(tools.Die!, units),
        Bed = SizeFrom(tools.Bed!, units),
        ForceCapacityN = tools.ForceCapacity is { } force ? units.ToN(force) : null,
    };

    private static BrakeCapacity? CapacityFrom(ProgramBrakeInput brake, UnitSystem units) =>
        brake.Capacity is { } rated ? new(units.ToMm(rated.Thickness), units.ToMpa(rated.Ultimate)) : null;

    private static Point[]? OutlineFrom(IReadOnlyList<Pair>? outline, UnitSystem units) =>
        outline is null ? null : [.. outline.Select(corner => new Point(units.ToMm(corner.First), units.ToMm(corner.Second)))];

    private static ToolSize SizeFrom(ToolSizeInput size, UnitSystem units) => new(units.ToMm(size.Width), units.ToMm(size.Height));
}
