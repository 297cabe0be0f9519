using System.Text.Json.Serialization;
using FormApi.Http.Json;
using FormApi.Http.Units;
using Forming;
using Forming.Layout;
using Forming.Plans;
using Forming.Pulling;
using Forming.Tapers;
using Forming.Wrapping;

namespace FormApi.Features.Forms;

/// <summary>The form: where to fold, how far, and what it is cut from.</summary>
/// <param name="Sweep">Sum of all fold angles [°]; more than the finished sweep, because the panel springs back. Of a taper the turn of
/// its face, as <c>taper.turn</c>: no edge's sweep, and a little less than the sum.</param>
/// <param name="Folds">Number of folds.</param>
/// <param name="Thickness">Thickness of the form's sheet, as calculated with [mm or in].</param>
/// <param name="Stations">The folds in order from the lead-in.</param>
/// <param name="StopSettings">Stop settings, each for the folds whose angles agree within the stop's resolution.</param>
/// <param name="StopRounding">What rounding the stop angles to the stop's resolution adds to the whole form, in degrees of closing [°]:
/// above 0 it closes too far. Null where a fold has no stop angle.</param>
/// <param name="LargestRounding">Largest effect of rounding the marks [mm or in].</param>
/// <param name="NeutralFactor">Neutral factor K in use.</param>
/// <param name="BlankAtMidNeutral">What K = 0.5 would change in the blank's length [mm or in]: small folds hardly wrap the nose.</param>
/// <param name="Stepping">How even the folds are.</param>
/// <param name="Leads">Its leads, as asked for.</param>
/// <param name="Blank">The flat blank.</param>
/// <param name="Section">The form in section.</param>
/// <param name="Give">How far the form gives under the pull, without ribs.</param>
/// <param name="Ribs">Ribs to cut with <c>backing</c> <c>ribs</c>, or where the form would bend for good without; else null, and on a
/// taper.</param>
/// <param name="Taper">What only a tapered form has; null where the folds are parallel.</param>
internal sealed record FormResult(
    double Sweep,
    int Folds,
    double Thickness,
    [property: JsonConverter(typeof(StationsConverter))] StationResult[] Stations,
    StopSettingResult[] StopSettings,
    [property: InFull] double? StopRounding,
    [property: InFull] double LargestRounding,
    [property: InFull] double NeutralFactor,
    [property: InFull] double BlankAtMidNeutral,
    [property: InFull] SteppingResult Stepping,
    [property: InFull] LeadsResult Leads,
    BlankResult Blank,
    [property: InFull] SectionResult Section,
    [property: InFull] GiveResult Give,
    RibsResult? Ribs,
    TaperResult? Taper)
{
    /// <summary>The form in the caller's units.</summary>
    /// <param name="form">The form.</param>
    /// <param name="taper">What only a taper has, or null.</param>
    /// <param name="turn">How far the finished panel's face turns.</param>
    /// <param name="specs">What was asked for.</param>
    /// <param name="units">The caller's units.</param>
    public static FormResult From(PlannedForm form, TaperReport? taper, Angle turn, FormSpecs specs, UnitSystem units) => new(
        UnitSystem.Degrees(form.Sweep),
        form.Stations.Count,
        units.Length(specs.Form.Sheet.ThicknessMm),
        Lists.Map(form.Stations, station => StationResult.From(station, specs.Marks.Tape, units)),
        Lists.Map(form.StopSettings, stop => new StopSettingResult(
            UnitSystem.Degrees(stop.FoldAngle), UnitSystem.Degrees(stop.StopAngle), UnitSystem.Degrees(stop.Setting), stop.Stations)),
        UnitSystem.Degrees(form.StopRounding),
        units.Length(form.LargestRoundingMm),
        WireNumber.Of(form.NeutralFactor),
        units.Length(form.BlankAtMidNeutralMm),
        SteppingResult.From(form.Stepping, units),
        LeadsResult.From(specs.Form.LeadInMm, specs.Form.LeadOutMm, specs.Marks.Tape),
        BlankResult.From(form.Blank, specs.Marks.Tape, units),
        new(units.Points(form.Section.Vertices), units.Points(form.Section.ContactCurve), units.Points(form.Section.InsideProfile)),
        GiveResult.From(form.Give),
        form.Ribs is { } ribs ? RibsResult.From(ribs, units) : null,
        taper is null ? null : TaperResult.From(taper, units, turn));
}

/// <summary>What only a tapered form has.</summary>
/// <param name="EndBias">At the near and the far end: how much tighter (+) or opener (-) than wanted a narrow strip cut free there would
/// spring, as a share.</param>
/// <param name="FacetFlatness">Largest distance of a ruling's end from its facet's plane [mm or in].</param>
/// <param name="TouchMiss">Largest miss of a fold line from its ruling, square to the sheet [mm or in].</param>
/// <param name="LineShift">Largest shift of a fold line from its ruling, along the sheet [mm or in].</param>
/// <param name="LineAngle">Largest angle between neighbouring fold lines on the flat [°].</param>
/// <param name="OppositeHand">Whether the second half of a mirrored panel needs an opposite-hand form.</param>
/// <param name="SeenFrom">The face from which blank and lines are given; marks go on the other face.</param>
/// <param name="Turn">How far the finished panel's face turns, square to its rulings [°]: less than the <c>sweep</c> asked of both edges,
/// and what <c>outcome.sweep</c> and <c>outlook.sweep</c> are to be.</param>
internal sealed record TaperResult(
    Pair EndBias,
    double FacetFlatness,
    double TouchMiss,
    double LineShift,
    double LineAngle,
    bool OppositeHand,
    string SeenFrom,
    double Turn)
{
    /// <summary>The taper in the caller's units.</summary>
    /// <param name="taper">The taper.</param>
    /// <param name="units">The caller's units.</param>
    /// <param name="turn">How far the finished panel's face turns.</param>
    public static TaperResult From(TaperReport taper, UnitSystem units, Angle turn) => new(
        new(WireNumber.Of(taper.EndBiasNear), WireNumber.Of(taper.EndBiasFar)),
        units.Length(taper.FacetFlatnessMm),
        units.Length(taper.TouchMissMm),
        units.Length(taper.LineShiftMm),
        UnitSystem.Degrees(taper.LargestLineAngle),
        taper.NeedsOppositeHand,
        "contact face",
        UnitSystem.Degrees(turn));
}

/// <summary>One fold's place on the flat form blank, measured from the chosen datum.</summary>
/// <param name="Number">Number from the lead-in, from 1.</param>
/// <param name="At">Centre line [mm or in].</param>
/// <param name="Mark">Centre line rounded to the tape [mm or in].</param>
/// <param name="MarkText">The rounded centre line as it reads on the tape, such as <c>12 7/16</c>.</param>
/// <param name="TangentLines">Both bend tangent lines, the lead-in side first [mm or in].</param>
/// <param name="SightLine">Line set under the nose with the lead-in side clamped [mm or in].</param>
/// <param name="SightLineText">The sight line as it reads on the tape.</param>
/// <param name="Angle">Fold angle after springback [°].</param>
/// <param name="RunningAngle">Sum of the fold angles up to and including this one [°].</param>
/// <param name="StopAngle">Exact angle under load [°]; null where the fold would stay elastic.</param>
/// <param name="StopSetting">What to set the stop to: that angle to the stop's resolution, as its group in <c>stopSettings</c> has it [°];
/// null where there is no stop angle.</param>
/// <param name="Radius">Radius of the contact curve here, under load [mm or in]; null where it is flat.</param>
/// <param name="FacetAfter">Facet after this fold on the contact side, mold line to mold line [mm or in]; the lead-out after the
/// last.</param>
/// <param name="StraightAfter">Straight part of that facet [mm or in].</param>
/// <param name="Near">Near end of the centre line [x, y] in the sheet frame [mm or in]; tapers only.</param>
/// <param name="Far">Far end of the centre line [x, y] in the sheet frame [mm or in]; tapers only.</param>
/// <param name="BaseNear">Where the centre line crosses the lower base line, from the datum [mm or in]; tapers only.</param>
/// <param name="BaseFar">Where the centre line crosses the upper base line, from the datum [mm or in]; tapers only.</param>
/// <param name="MarkTextFar">The upper crossing as it reads on the tape; tapers only.</param>
/// <param name="Length">Length of the fold [mm or in]; tapers only.</param>
/// <param name="StraightEnds">Straight width of the facet after this fold at the near and the far end [mm or in]; tapers only.</param>
/// <param name="FacetEnds">The facet after this fold, mold line to mold line, at the near and the far end [mm or in]; tapers only.</param>
/// <param name="FirstTangent">Near and far end of the tangent line on the lead-in side [x, y] [mm or in]; tapers only.</param>
/// <param name="SecondTangent">Near and far end of the tangent line on the lead-out side [x, y] [mm or in]; tapers only.</param>
internal sealed record StationResult(
    int Number,
    [property: InFull] double At,
    double Mark,
    string MarkText,
    [property: InFull] Pair TangentLines,
    double SightLine,
    [property: InFull] string SightLineText,
    double Angle,
    [property: InFull] double RunningAngle,
    [property: InFull] double? StopAngle,
    double? StopSetting,
    [property: InFull] double? Radius,
    [property: InFull] double FacetAfter,
    [property: InFull] double StraightAfter,
    [property: InFull, JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair? Near = null,
    [property: InFull, JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair? Far = null,
    [property: InFull, JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? BaseNear = null,
    [property: InFull, JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? BaseFar = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? MarkTextFar = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Length = null,
    [property: InFull, JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair? StraightEnds = null,
    [property: InFull, JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair? FacetEnds = null,
    [property: InFull, JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair[]? FirstTangent = null,
    [property: InFull, JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair[]? SecondTangent = null)
{
    /// <summary>The station in the caller's units.</summary>
    /// <param name="station">The station.</param>
    /// <param name="tape">The tape it is laid out by.</param>
    /// <param name="units">The caller's units.</param>
    public static StationResult From(Station station, Tape tape, UnitSystem units) =>
        station.Line is { } line ? WithLine(PlainOf(station, tape, units), line, units) : PlainOf(station, tape, units);

    private static StationResult WithLine(StationResult station, FoldLine line, UnitSystem units) => station with
    {
        Near = units.Point(line.Near),
        Far = units.Point(line.Far),
        BaseNear = units.Length(line.BaseNearMm),
        BaseFar = units.Length(line.BaseFarMm),
        MarkTextFar = line.MarkFar.Text,
        Length = units.Length(line.LengthMm),
        StraightEnds = new(units.Length(line.StraightNearMm), units.Length(line.StraightFarMm)),
        FacetEnds = new(units.Length(line.FacetNearMm), units.Length(line.FacetFarMm)),
        FirstTangent = [units.Point(line.FirstTangentNear), units.Point(line.FirstTangentFar)],
        SecondTangent = [units.Point(line.SecondTangentNear), units.Point(line.SecondTangentFar)],
    };

    private static StationResult PlainOf(Station station, Tape tape, UnitSystem units) => new(
        station.Number,
        units.Length(station.AtMm),
        units.Length(station.MarkMm),
        station.MarkText,
        new(units.Length(station.FirstTangentMm), units.Length(station.SecondTangentMm)),
        units.Length(station.SightLineMm),
        TapeReading.Of(station.SightLineMm, tape).Text,
        UnitSystem.Degrees(station.FoldAngle),
        UnitSystem.Degrees(station.RunningAngle),
        UnitSystem.Degrees(station.StopAngle),
        UnitSystem.Degrees(station.StopSetting),
        units.Length(station.RadiusMm),
        units.Length(station.FacetAfterMm),
        units.Length(station.StraightAfterMm));
}

/// <summary>One setting of the angle stop and the stations it serves.</summary>
/// <param name="Angle">Mean fold angle of the group [°].</param>
/// <param name="StopAngle">Exact angle under load for it [°]; null where the fold would stay elastic.</param>
/// <param name="StopSetting">What to set the stop to, to its resolution [°]; null where there is no stop angle.</param>
/// <param name="Stations">Station numbers.</param>
internal sealed record StopSettingResult(
    [property: InFull] double Angle, [property: InFull] double? StopAngle, double? StopSetting, IReadOnlyList<int> Stations);

/// <summary>How even the folds are.</summary>
/// <param name="AngleSpread">Largest less smallest fold angle, the end folds of half ends left out [°].</param>
/// <param name="SpacingSpread">Largest less smallest distance between fold centre lines within a curved span [mm or in].</param>
/// <param name="SweepOver">Sweep past the wanted one with a fixed angle or spacing; negative is short [°].</param>
/// <param name="LastFoldInstead">The last fold that would close the sweep exactly [°]; null where nothing was fixed.</param>
/// <param name="FlatInsideTangent">How far the lead-in flat is inside the curve's tangent, full ends [mm or in].</param>
internal sealed record SteppingResult(
    double AngleSpread,
    double SpacingSpread,
    double SweepOver,
    double? LastFoldInstead,
    double FlatInsideTangent)
{
    /// <summary>The spread in the caller's units.</summary>
    /// <param name="stepping">The spread.</param>
    /// <param name="units">The caller's units.</param>
    public static SteppingResult From(SteppingReport stepping, UnitSystem units) => new(
        UnitSystem.Degrees(stepping.AngleSpread),
        units.Length(stepping.SpacingSpreadMm),
        UnitSystem.Degrees(stepping.SweepOver),
        UnitSystem.Degrees(stepping.LastFoldInstead),
        units.Length(stepping.FlatInsideTangentMm));
}

/// <summary>The form in section: the lead-in flat along x, the tangent point of the curve at (0, 0).</summary>
/// <param name="Vertices">Contact-side outline [x, y]: end of the lead-in, every mold line, end of the lead-out [mm or in].</param>
/// <param name="ContactCurve">Points of the smooth contact curve [x, y] [mm or in].</param>
/// <param name="InsideProfile">Inside face [x, y], tangent line to tangent line, for ribs and bulkheads [mm or in].</param>
internal sealed record SectionResult(
    [property: JsonConverter(typeof(PairsConverter))] Pair[] Vertices,
    [property: JsonConverter(typeof(PairsConverter))] Pair[] ContactCurve,
    [property: JsonConverter(typeof(PairsConverter))] Pair[] InsideProfile);

/// <summary>Ribs under the form.</summary>
/// <param name="Count">How many.</param>
/// <param name="Spacing">From one to the next [mm or in].</param>
/// <param name="At">Place of each, from one edge of the form [mm or in].</param>
/// <param name="Outline">What to cut [x, y], last joined to first, as in <c>section</c> [mm or in]; empty where the form curls up too
/// far.</param>
internal sealed record RibsResult(
    int Count, double Spacing, double[] At, [property: InFull, JsonConverter(typeof(PairsConverter))] Pair[] Outline)
{
    /// <summary>In the caller's units.</summary>
    /// <param name="ribs">The ribs.</param>
    /// <param name="units">The caller's units.</param>
    public static RibsResult From(Ribs ribs, UnitSystem units) =>
        new(ribs.AtMm.Count, units.Length(ribs.SpacingMm), Lists.Map(ribs.AtMm, units.Length), units.Points(ribs.Outline));
}

/// <summary>How far the form itself gives under the pull.</summary>
/// <param name="Rotation">Rotation of the form's end, closing [°].</param>
/// <param name="ShareOfYield">Largest moment that the form carries over the one at which its sheet begins to yield.</param>
/// <param name="ClampShare">Share of the rotation between clamp and first fold.</param>
internal sealed record GiveResult(double Rotation, double ShareOfYield, double ClampShare)
{
    /// <summary>In the caller's units.</summary>
    /// <param name="give">How far the form gives.</param>
    public static GiveResult From(FormGive give) =>
        new(UnitSystem.Degrees(give.Rotation), WireNumber.Of(give.ShareOfYield), WireNumber.Of(give.ClampShare));
}
