using System.Text.Json.Serialization;
using FormApi.Http.Json;
using FormApi.Http.Units;
using Forming.Facets;
using Forming.Layout;
using Forming.Plans;
using Forming.Pulling;
using Forming.Springback;

namespace FormApi.Features.Forms;

/// <summary>The panel: what it is cut from, how it is pulled, how it will look.</summary>
/// <param name="Thickness">Thickness of the panel's sheet, as calculated with [mm or in].</param>
/// <param name="Springback">How it springs back from the form to the finished curve.</param>
/// <param name="Leads">Its leads, as asked for.</param>
/// <param name="Blank">The flat blank.</param>
/// <param name="Marks">Registration marks on it.</param>
/// <param name="PrintThrough">How much of the facets will show.</param>
/// <param name="Pull">What it takes to pull it.</param>
/// <param name="LargestMiss">Largest miss of the curve fitted to measured points [mm or in]; null for any other curve.</param>
/// <param name="Outlook">How sure this is.</param>
/// <param name="Outcome">The panel that comes off.</param>
internal sealed record PanelResult(
    double Thickness,
    [property: InFull] SpringbackResult Springback,
    [property: InFull] LeadsResult Leads,
    BlankResult Blank,
    MarkResult[] Marks,
    [property: InFull] PrintThroughAnswer PrintThrough,
    PullResult Pull,
    [property: InFull] double? LargestMiss,
    OutlookResult Outlook,
    OutcomeResult Outcome)
{
    /// <summary>The panel in the caller's units.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="specs">What was asked for.</param>
    /// <param name="isTaper">Whether its folds are not parallel.</param>
    /// <param name="units">The caller's units.</param>
    public static PanelResult From(PlannedPanel panel, FormSpecs specs, bool isTaper, UnitSystem units) => new(
        units.Length(specs.Panel.Sheet.ThicknessMm),
        new(
            panel.Springback.Model,
            WireNumber.Of(panel.Springback.FactorAtTightest),
            WireNumber.Of(panel.Springback.FactorAtGentlest),
            UnitSystem.Degrees(panel.Springback.Overbend),
            units.Length(panel.Springback.YieldRadiusMm),
            FlowCurveResult.From(panel.Springback.Flow, units)),
        LeadsResult.From(specs.Panel.LeadInMm, specs.Panel.LeadOutMm, specs.Marks.Tape),
        BlankResult.From(panel.Blank, specs.Marks.Tape, units),
        Lists.Map(panel.Marks, mark => new MarkResult(
            mark.Name,
            units.Length(mark.AtMm),
            TapeReading.Of(mark.AtMm, specs.Marks.Tape).Text,
            mark.Near is { } near ? units.Point(near) : null,
            mark.Far is { } far ? units.Point(far) : null)),
        PrintThroughAnswer.From(panel.PrintThrough, units),
        PullResult.From(panel.Pull, units),
        units.Length(panel.LargestMissMm),
        OutlookResult.From(panel.Outlook, isTaper, units),
        OutcomeResult.From(panel, units));
}

/// <summary>How the panel springs back from the form to the finished curve.</summary>
/// <param name="Model">The model used: <c>wrap</c>, <c>pure-bending</c> or <c>measured-factor</c>.</param>
/// <param name="FactorAtTightest">Finished over formed curvature where the finished curve is tightest.</param>
/// <param name="FactorAtGentlest">The same where it is gentlest; 0 at a flat end.</param>
/// <param name="Overbend">Form sweep less finished sweep [°].</param>
/// <param name="YieldRadius">Mid-surface radius at which the sheet begins to yield [mm or in].</param>
/// <param name="FlowCurve">The flow curve in use.</param>
internal sealed record SpringbackResult(
    string Model,
    double FactorAtTightest,
    double FactorAtGentlest,
    double Overbend,
    double YieldRadius,
    FlowCurveResult FlowCurve);

/// <summary>The panel's flow curve in tension: K (eps0 + plastic strain)^n.</summary>
/// <param name="StrengthCoefficient">K [MPa or psi].</param>
/// <param name="Prestrain">eps0.</param>
/// <param name="StrainHardening">n; 0 where no hardening is known.</param>
/// <param name="UniformStrain">True strain up to which a strip thins evenly.</param>
internal sealed record FlowCurveResult(double StrengthCoefficient, double Prestrain, double StrainHardening, double UniformStrain)
{
    /// <summary>The curve in the caller's units.</summary>
    /// <param name="flow">The curve.</param>
    /// <param name="units">The caller's units.</param>
    public static FlowCurveResult From(FlowCurve flow, UnitSystem units) => new(
        units.Stress(flow.StrengthCoefficientMpa),
        WireNumber.Of(flow.Prestrain),
        WireNumber.Of(flow.Hardening),
        WireNumber.Of(flow.UniformStrain));
}

/// <summary>A registration mark on the flat panel blank.</summary>
/// <param name="Name">What it is.</param>
/// <param name="At">From the lead-in edge of the blank [mm or in]; on a taper where the line crosses the lower base line.</param>
/// <param name="AtText">The same as it reads on the tape.</param>
/// <param name="Near">Near end of the line [x, y] in the panel's sheet frame [mm or in]; tapers only.</param>
/// <param name="Far">Far end of it [mm or in]; tapers only.</param>
internal sealed record MarkResult(
    string Name,
    double At,
    [property: InFull] string AtText,
    [property: InFull, JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair? Near = null,
    [property: InFull, JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair? Far = null);

/// <summary>How much of the facets will show; from a wrap model not yet checked against measured panels.</summary>
/// <param name="Known">Whether the prediction is valid; false never means smooth.</param>
/// <param name="Text">Why it is not known, or null.</param>
/// <param name="Facet">The facet nearest to its limit [mm or in]; null where not known.</param>
/// <param name="AllowedFacet">How wide that very facet might be [mm or in]; null where not known or where nothing would show.</param>
/// <param name="Ripple">Peak-to-valley height of that facet [mm or in]; null where not known.</param>
/// <param name="Slope">Slope of that facet against the smooth curve [°]; null where not known.</param>
/// <param name="AllowedRipple">Allowed ripple in force [mm or in].</param>
/// <param name="AllowedSlope">Allowed slope in force [°].</param>
internal sealed record PrintThroughAnswer(
    bool Known,
    string? Text,
    double? Facet,
    double? AllowedFacet,
    double? Ripple,
    double? Slope,
    double AllowedRipple,
    double AllowedSlope)
{
    /// <summary>The wrap in the caller's units.</summary>
    /// <param name="print">The wrap.</param>
    /// <param name="units">The caller's units.</param>
    public static PrintThroughAnswer From(PrintThroughResult print, UnitSystem units) => new(
        print.Known,
        print.WhyUnknown,
        units.Length(print.NearestFacetMm),
        units.Length(print.AllowedFacetMm),
        units.Length(print.RippleMm),
        UnitSystem.Degrees(print.Slope),
        units.Length(print.Allowed.RippleMm),
        UnitSystem.Degrees(print.Allowed.Slope));
}

/// <summary>What it takes to pull the panel around the form.</summary>
/// <param name="MomentPerWidth">Bending moment at the tightest point [N·mm/mm or lbf·in/in].</param>
/// <param name="Lever">From the end of the curve to the hand [mm or in].</param>
/// <param name="LongestLever">Longest lever that keeps the wrap in order [mm or in]; 0 where none does, null where any does.</param>
/// <param name="ClampGap">From the first fold's tangent line back to the clamp [mm or in].</param>
/// <param name="Force">Largest hand force over the wrap, whole width [N or lbf].</param>
/// <param name="ClampLoad">Hold-down at the clamp, whole width [N or lbf], never negative: 1.5 M/d, M the moment at the first fold, d the
/// clamp's gap; M/b right up to the fold, b the clamp's depth.</param>
/// <param name="EnergyReleased">Elastic energy let go when the pull ends [J or ft·lbf].</param>
internal sealed record PullResult(
    [property: InFull] double MomentPerWidth,
    double Lever,
    [property: InFull] double? LongestLever,
    [property: InFull] double ClampGap,
    double Force,
    [property: InFull] double ClampLoad,
    [property: InFull] double EnergyReleased)
{
    /// <summary>The pull in the caller's units.</summary>
    /// <param name="pull">The pull.</param>
    /// <param name="units">The caller's units.</param>
    public static PullResult From(Pull pull, UnitSystem units) => new(
        units.Moment(pull.MomentPerWidth),
        units.Length(pull.LeverMm),
        units.Length(pull.LongestLeverMm),
        units.Length(pull.ClampGapMm),
        units.Force(pull.ForceN),
        units.Force(pull.ClampLoadN),
        units.Energy(pull.EnergyReleasedJ));
}
