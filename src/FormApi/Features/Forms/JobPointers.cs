using System.Globalization;
using System.Text;
using FormApi.Http.Json;
using Forming.Facets;
using Forming.Jobs;

namespace FormApi.Features.Forms;

/// <summary>Where a change to a job is in a request, and how its value is spelt there.</summary>
internal static class JobPointers
{
    /// <summary>The pointer of a change (RFC 6901).</summary>
    /// <param name="change">The change.</param>
    public static string Of(JobChange change) => change.Field switch
    {
        JobField.PanelThickness => "/panel/thickness",
        JobField.PanelGauge => "/panel/gauge",
        JobField.PanelLeadIn => "/panel/leadIn",
        JobField.PanelLeadOut => "/panel/leadOut",
        JobField.PanelLever => "/panel/lever",
        JobField.PanelGrain => "/panel/grain",
        JobField.PanelAllowedRipple => "/panel/allowedRipple",
        JobField.PanelAllowedSlope => "/panel/allowedSlope",
        JobField.PanelStrengthCoefficient => "/panel/material/strengthCoefficient",
        JobField.ClampGap => "/panel/clamp/gap",
        JobField.ClampHeight => "/panel/clamp/height",
        JobField.PullByPeople or JobField.PullByRated => "/panel/pull/by",
        JobField.FormThickness => "/form/thickness",
        JobField.FormGauge => "/form/gauge",
        JobField.FormFoldRadius => "/form/foldRadius",
        JobField.FormLeadIn => "/form/leadIn",
        JobField.FormLeadOut => "/form/leadOut",
        JobField.FormWidth => "/form/width",
        JobField.FormStrengthCoefficient => "/form/material/strengthCoefficient",
        JobField.FormGrain => "/form/grain",
        JobField.FormBacking => "/form/backing",
        JobField.SteppingFolds => "/form/stepping/folds",
        JobField.SteppingAngle => "/form/stepping/angle",
        JobField.SteppingSpacing => "/form/stepping/spacing",
        JobField.SteppingMaxFacet => "/form/stepping/maxFacet",
        JobField.SteppingEnds => "/form/stepping/ends",
        JobField.SteppingRule => "/form/stepping/rule",
        JobField.BrakeLength => "/brake/length",
        JobField.BrakeMinFacet => "/brake/minFacet",
        JobField.BrakeReach => "/brake/reach",
        JobField.BrakeStopResolution => "/brake/stopResolution",
        JobField.MarksResolution => "/marks/resolution",
        JobField.CurveRadius => OfCurve(change, "radius"),
        JobField.CurveStartRadius => OfCurve(change, "startRadius"),
        JobField.CurveEndRadius => OfCurve(change, "endRadius"),
        JobField.CurveSemiAxisX => OfCurve(change, "semiAxisX"),
        JobField.CurveSemiAxisY => OfCurve(change, "semiAxisY"),
        JobField.CurveSweep => OfCurve(change, "sweep"),
        JobField.CurveToNormal => OfCurve(change, "toNormal"),
        _ => throw new InvalidOperationException("A field has no pointer."),
    };

    /// <summary>The value of a change as JSON.</summary>
    /// <param name="change">The change.</param>
    public static RawJson ValueOf(JobChange change) => new(Encoding.UTF8.GetBytes(change switch
    {
        { Field: JobField.PullByPeople, Number: { } people } => string.Create(CultureInfo.InvariantCulture, $"{{\"people\":{people}}}"),
        { Field: JobField.PullByRated, Number: { } rated } => string.Create(CultureInfo.InvariantCulture, $"{{\"rated\":{CanonicalJson.Number(rated)}}}"),
        { Number: { } number } => CanonicalJson.Number(number),
        { Word: Grain word } => Quoted(Wire.Word(word)),
        { Word: FormBacking word } => Quoted(Wire.Word(word)),
        { Word: SteppingEnds word } => Quoted(Wire.Word(word)),
        { Word: SteppingRule word } => Quoted(Wire.Word(word)),
        _ => "null",
    }));

    private static string OfCurve(JobChange change, string field) => change.Part switch
    {
        null => "/panel/curve/" + field,
        { IsTaperEnd: true, Index: var end } => (end == 0 ? "/panel/curve/near/" : "/panel/curve/far/") + field,
        { Index: var piece } => string.Create(CultureInfo.InvariantCulture, $"/panel/curve/segments/{piece}/{field}"),
    };

    private static string Quoted(string word) => "\"" + word + "\"";
}
