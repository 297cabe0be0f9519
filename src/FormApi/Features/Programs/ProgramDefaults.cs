using FormApi.Features.Forms;
using FormApi.Http.Units;
using Forming.Jobs;
using Forming.Programs.Brakes;

namespace FormApi.Features.Programs;

/// <summary>Fills in what a request left out; what has no use on its kind of brake, or with stations, stays null.</summary>
internal static class ProgramDefaults
{
    private static readonly LeafBrake Leaf = new() { LengthMm = 1 };
    private static readonly PressBrake Press = new() { LengthMm = 1 };

    /// <summary>The request with every default shown, still in the caller's units.</summary>
    /// <param name="request">A request that passed its rules.</param>
    public static ProgramRequest Apply(ProgramRequest request)
    {
        var units = UnitSystem.Of(request.Units);
        if (request.Stations is not null)
        {
            return request with
            {
                Form = request.Form! with
                {
                    GaugeSystem = FormDefaults.GaugeSystemOf(request.Form),
                    Grain = request.Form.Grain ?? Grain.Unknown,
                    Stop = FormDefaults.WithRounding(request.Form.Stop),
                    Assumed = [],
                },
                Brake = Apply(request.Brake!, FormDefaults.Apply(request.Brake!.AsBrake(), units), units),
            };
        }

        var form = FormDefaults.Apply(AsForm(request));
        return request with
        {
            Panel = form.Panel,
            Form = form.Form,
            Brake = Apply(request.Brake ?? new(), form.Brake!, units),
            Marks = form.Marks,
        };
    }

    /// <summary>The request as one for a form; only without stations.</summary>
    /// <param name="request">The request.</param>
    public static FormRequest AsForm(ProgramRequest request) =>
        new(request.Units, request.Panel!, request.Form, request.Brake?.AsBrake(), request.Marks, request.Sheet);

    private static ProgramBrakeInput Apply(ProgramBrakeInput given, BrakeInput brake, UnitSystem units)
    {
        var isPress = brake.Kind == BrakeKind.Press;
        return given with
        {
            Length = brake.Length,
            Kind = brake.Kind,
            MinFacet = brake.MinFacet,
            StopResolution = brake.StopResolution,
            Assumed = brake.Assumed,
            Tools = Apply(given.Tools ?? new(), isPress, units),
        };
    }

    private static ToolsInput Apply(ToolsInput tools, bool isPress, UnitSystem units)
    {
        ProgramBrake of = isPress ? Press : Leaf;
        return tools with
        {
            Clearance = tools.Clearance ?? units.Length(of.ClearanceMm),
            Plenty = tools.Plenty ?? units.Length(of.PlentyMm),
            LeastLift = tools.LeastLift ?? units.Length(of.LeastLiftMm),
            OverTravel = tools.OverTravel ?? UnitSystem.Degrees(of.OverTravel),
            OpenEnd = tools.OpenEnd ?? of.IsOpenEnded,
            Gauge = tools.Gauge ?? new(units.Length(of.GaugeMinMm), units.Length(of.GaugeMaxMm)),
            StopHeight = tools.StopHeight ?? units.Length(of.StopHeightMm),
            Opening = tools.Opening ?? units.Length(of.OpeningMm),
            MinRun = isPress ? null : tools.MinRun ?? units.Length(Leaf.MinRunMm),
            MinLand = isPress ? null : tools.MinLand ?? units.Length(Leaf.MinLandMm),
            Lever = isPress ? null : tools.Lever ?? units.Length(Leaf.LeverMm),
            Bearing = isPress ? null : tools.Bearing ?? units.Length(Leaf.BearingMm),
            BeamDepth = isPress ? null : tools.BeamDepth ?? units.Length(Leaf.BeamDepthMm),
            Holder = isPress ? tools.Holder ?? Size(Press.Holder, units) : null,
            Ram = isPress ? tools.Ram ?? Size(Press.Ram, units) : null,
            Die = isPress ? tools.Die ?? Size(Press.Die, units) : null,
            Bed = isPress ? tools.Bed ?? Size(Press.Bed, units) : null,
        };
    }

    private static ToolSizeInput Size(ToolSize size, UnitSystem units) => new(units.Length(size.WidthMm), units.Length(size.HeightMm));
}
