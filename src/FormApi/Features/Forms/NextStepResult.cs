using System.Text.Json.Serialization;
using FormApi.Http.Json;
using FormApi.Http.Links;
using FormApi.Http.Problems;
using FormApi.Http.Units;
using Forming.Plans.Notes;
using Forming.TestStrips;

namespace FormApi.Features.Forms;

/// <summary>What to do next.</summary>
/// <param name="Id">What it is.</param>
/// <param name="Text">What to do, in words.</param>
/// <param name="Link">Where to send what is measured, or to fetch what is needed.</param>
/// <param name="Remedy">Changes to the request for it.</param>
/// <param name="FirstStrip">Strips to cut for it.</param>
/// <param name="Strip">Strip to bend next; only in answers to strips.</param>
internal sealed record NextStepResult(
    [property: JsonConverter(typeof(WordConverter<NextStepKind>))] NextStepKind Id,
    [property: InFull] string Text,
    [property: InFull] string? Link,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] RemedyResult? Remedy = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] FirstStripResult? FirstStrip = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] NextStripResult? Strip = null)
{
    /// <summary>A step in the caller's units.</summary>
    /// <param name="step">The step.</param>
    /// <param name="links">Links of the job.</param>
    /// <param name="units">The caller's units.</param>
    /// <param name="asked">Where the request was sent, and is sent again once it is changed.</param>
    public static NextStepResult From(NextStep step, LinksResult links, UnitSystem units, string asked = "/v1/forms") => new(
        step.Kind,
        units.Wording.Of(step.Text),
        LinkOf(step.Kind, links, asked),
        step.Remedy is { } remedy ? CheckRemedies.From(remedy, units) : null,
        step.Strips is { } strips
            ? new(
                strips.Count,
                units.Length(strips.LengthMm),
                units.Length(strips.WidthMm),
                units.Length(strips.ThicknessMm),
                strips.StopSetting is { } stop ? UnitSystem.Degrees(stop) : null,
                units.Length(strips.RoundRadiusMm))
            : null);

    private static string? LinkOf(NextStepKind kind, LinksResult links, string asked) => kind switch
    {
        NextStepKind.ChangeJob => asked,
        NextStepKind.BendStrip => "/v1/test-strips/springback",
        NextStepKind.FoldStrips => "/v1/test-strips/stop",
        NextStepKind.PrintSheet or NextStepKind.PullPanel => links.Drawing,
        NextStepKind.MakeRibs => links.Drawing is { } drawing ? drawing + "?part=rib" : null,
        NextStepKind.RunProgram => links.Program,
        NextStepKind.MeasurePanel => "/v1/panels/corrections",
        _ => "/v1/inspections",
    };
}

/// <summary>Strips to cut and bend before the sheet is cut.</summary>
/// <param name="Count">How many.</param>
/// <param name="Length">Across the bend [mm or in].</param>
/// <param name="Width">Along the bend [mm or in].</param>
/// <param name="Thickness">Of the sheet they are cut from [mm or in].</param>
/// <param name="StopSetting">What to set the stop to [°]; null where they are bent round a bar.</param>
/// <param name="Radius">Radius of the bar [mm or in]; null where they are folded.</param>
internal sealed record FirstStripResult(int Count, double Length, double Width, double Thickness, double? StopSetting, double? Radius);

/// <summary>Strip to bend next, with the values that matter for it.</summary>
/// <param name="StopAngle">Stop angle to set [°].</param>
/// <param name="Angle">Fold angle to aim at [°].</param>
/// <param name="Facet">Facet of the form [mm or in].</param>
/// <param name="Radius">Radius of the form's outside [mm or in].</param>
/// <param name="Thickness">Thickness of the strip [mm or in].</param>
/// <param name="Lever">Lever to pull at [mm or in].</param>
internal sealed record NextStripResult(
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? StopAngle,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Angle,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Facet,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Radius,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Thickness,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Lever)
{
    /// <summary>The strip in a caller's units.</summary>
    /// <param name="next">The strip.</param>
    /// <param name="units">The caller's units.</param>
    public static NextStripResult From(NextStrip next, UnitSystem units) => new(
        UnitSystem.Degrees(next.StopAngle),
        UnitSystem.Degrees(next.FoldAngle),
        units.Length(next.FacetMm),
        units.Length(next.FormRadiusMm),
        units.Length(next.ThicknessMm),
        units.Length(next.LeverMm));
}
