using System.Text.Json;
using System.Text.Json.Serialization;
using FormApi.Http.Json;
using FormApi.Http.Links;
using Forming.Checks;
using Forming.Jobs;
using Forming.Plans;
using Forming.Results;

namespace FormApi.Features.Forms;

/// <summary>Everything needed to mark, fold and use a form. Lengths, forces and masses are in the units of the request.</summary>
/// <param name="Engine">Version of the engine that calculated it.</param>
/// <param name="Fingerprint">SHA-256 over the canonical request and the engine's version: the same fingerprint is the same answer.</param>
/// <param name="Request">The request with every default shown; null where the plan chooses.</param>
/// <param name="Verdict">The verdict of the checks: <c>ready</c>, <c>attention</c> where one warns, <c>cannot-be-made</c> where one failed.</param>
/// <param name="Form">The form: where to fold, how far, and what it is cut from.</param>
/// <param name="Panel">The panel: what it is cut from, how it is pulled, how it will look.</param>
/// <param name="Checks">Every check, passed or not.</param>
/// <param name="Safety">Cautions that this job calls for. Local codes, machine manuals and licensed practice come first.</param>
/// <param name="ShopNotes">Hints that save a panel.</param>
/// <param name="Basis">What every headline value rests on.</param>
/// <param name="Links">The same as links that hold the whole request.</param>
internal sealed record FormAnswer(
    string Engine,
    string Fingerprint,
    [property: WrittenAs(typeof(FormRequest))] RawJson Request,
    [property: JsonConverter(typeof(WordConverter<PlanVerdict>))] PlanVerdict Verdict,
    FormResult Form,
    PanelResult Panel,
    CheckResult[] Checks,
    SafetyResult[] Safety,
    ShopNoteResult[] ShopNotes,
    BasisResult[] Basis,
    LinksResult Links);

/// <summary>The form: where to fold, how far, and what it is cut from.</summary>
/// <param name="Sweep">Sum of all fold angles [°]; more than the finished sweep, because the panel springs back.</param>
/// <param name="Folds">Number of folds.</param>
/// <param name="Thickness">Thickness of the form's sheet, as calculated with [mm or in].</param>
/// <param name="Stations">The folds in order from the lead-in.</param>
/// <param name="StopSettings">Stop settings, each for the folds whose angles agree within the stop's resolution.</param>
/// <param name="StopRounding">What rounding the stop angles to the stop's resolution adds to the whole form, in degrees of closing [°]: above 0 it closes too far. Null where a fold has no stop angle.</param>
/// <param name="LargestRounding">Largest effect of rounding the marks [mm or in].</param>
/// <param name="NeutralFactor">Neutral factor K in use.</param>
/// <param name="BlankAtMidNeutral">What K = 0.5 would change in the blank's length [mm or in]: small folds hardly wrap the nose.</param>
/// <param name="Stepping">How even the folds are.</param>
/// <param name="Blank">The flat blank.</param>
/// <param name="Section">The form in section.</param>
/// <param name="Give">How far the form itself gives under the pull: an estimate.</param>
/// <param name="Taper">What only a tapered form has; null where the folds are parallel.</param>
internal sealed record FormResult(
    double Sweep,
    int Folds,
    double Thickness,
    [property: JsonConverter(typeof(StationsConverter))] StationResult[] Stations,
    StopSettingResult[] StopSettings,
    double? StopRounding,
    double LargestRounding,
    double NeutralFactor,
    double BlankAtMidNeutral,
    SteppingResult Stepping,
    BlankResult Blank,
    SectionResult Section,
    GiveResult Give,
    TaperResult? Taper);

/// <summary>What only a tapered form has.</summary>
/// <param name="EndBias">At the near and the far end: how much tighter (+) or opener (-) than wanted a narrow strip cut free there would spring, as a share.</param>
/// <param name="FacetFlatness">Largest distance of a ruling's end from its facet's plane [mm or in].</param>
/// <param name="TouchMiss">Largest miss of a fold line from its ruling, square to the sheet [mm or in].</param>
/// <param name="LineShift">Largest shift of a fold line from its ruling, along the sheet [mm or in].</param>
/// <param name="LineAngle">Largest angle between neighbouring fold lines on the flat [°].</param>
/// <param name="OppositeHand">Whether the second half of a mirrored panel needs an opposite-hand form.</param>
/// <param name="SeenFrom">The face from which blank and lines are given; marks go on the other face.</param>
internal sealed record TaperResult(
    Pair EndBias, double FacetFlatness, double TouchMiss, double LineShift, double LineAngle, bool OppositeHand, string SeenFrom);

/// <summary>One fold's place on the flat form blank, measured from the chosen datum.</summary>
/// <param name="Number">Number from the lead-in, from 1.</param>
/// <param name="At">Centre line [mm or in].</param>
/// <param name="Mark">Centre line rounded to the tape [mm or in].</param>
/// <param name="MarkText">The rounded centre line as it reads on the tape, such as <c>12 7/16</c>.</param>
/// <param name="TangentLines">Both bend tangent lines, the lead-in side first [mm or in].</param>
/// <param name="SightLine">Line set under the nose with the lead-in side clamped [mm or in].</param>
/// <param name="Angle">Fold angle after springback [°].</param>
/// <param name="RunningAngle">Sum of the fold angles up to and including this one [°].</param>
/// <param name="StopAngle">Exact angle under load [°]; null where the fold would stay elastic.</param>
/// <param name="StopSetting">What to set the stop to: that angle to the stop's resolution, as its group in <c>stopSettings</c> has it [°]; null where there is no stop angle.</param>
/// <param name="Radius">Radius of the contact curve here, under load [mm or in]; null where it is flat.</param>
/// <param name="FacetAfter">Facet after this fold on the contact side, mold line to mold line [mm or in]; the lead-out after the last.</param>
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
    double At,
    double Mark,
    string MarkText,
    Pair TangentLines,
    double SightLine,
    double Angle,
    double RunningAngle,
    double? StopAngle,
    double? StopSetting,
    double? Radius,
    double FacetAfter,
    double StraightAfter,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair? Near = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair? Far = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? BaseNear = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? BaseFar = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? MarkTextFar = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Length = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair? StraightEnds = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair? FacetEnds = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair[]? FirstTangent = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair[]? SecondTangent = null);

/// <summary>One setting of the angle stop and the stations it serves.</summary>
/// <param name="Angle">Mean fold angle of the group [°].</param>
/// <param name="StopAngle">Exact angle under load for it [°]; null where the fold would stay elastic.</param>
/// <param name="StopSetting">What to set the stop to, to its resolution [°]; null where there is no stop angle.</param>
/// <param name="Stations">Station numbers.</param>
internal sealed record StopSettingResult(double Angle, double? StopAngle, double? StopSetting, IReadOnlyList<int> Stations);

/// <summary>How even the folds are.</summary>
/// <param name="AngleSpread">Largest less smallest fold angle, the end folds of half ends left out [°].</param>
/// <param name="SpacingSpread">Largest less smallest distance between fold centre lines within a curved span [mm or in].</param>
/// <param name="SweepOver">Sweep past the wanted one with a fixed angle or spacing; negative is short [°].</param>
/// <param name="LastFoldInstead">The last fold that would close the sweep exactly [°]; null where nothing was fixed.</param>
/// <param name="FlatInsideTangent">How far the lead-in flat is inside the curve's tangent, full ends [mm or in].</param>
/// <param name="Refinement">Result of refining by the predicted ripple; only where it was asked for.</param>
internal sealed record SteppingResult(
    double AngleSpread,
    double SpacingSpread,
    double SweepOver,
    double? LastFoldInstead,
    double FlatInsideTangent,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] RefinementResult? Refinement = null);

/// <summary>Result of refining the folds by the predicted ripple.</summary>
/// <param name="From">Folds by the closed form.</param>
/// <param name="To">Folds kept.</param>
/// <param name="Text">Why the closed form's folds were kept; null where the predicted ripple chose.</param>
internal sealed record RefinementResult(int From, int To, string? Text);

/// <summary>A flat blank.</summary>
/// <param name="Length">Square to the folds [mm or in].</param>
/// <param name="Width">Along the folds [mm or in].</param>
/// <param name="Area">Area [mm² or in²].</param>
/// <param name="Mass">Mass [kg or lb].</param>
/// <param name="Outline">Corners [x, y], first = last, x from the lead-in edge, y along the folds [mm or in].</param>
/// <param name="Stock">What each stock sheet gives, in both directions.</param>
internal sealed record BlankResult(
    double Length,
    double Width,
    double Area,
    double Mass,
    [property: JsonConverter(typeof(PairsConverter))] Pair[] Outline,
    StockResult[] Stock);

/// <summary>How many blanks one stock sheet gives.</summary>
/// <param name="Sheet">Name of the sheet.</param>
/// <param name="Grain">How the folds then lie to the rolling direction.</param>
/// <param name="Pieces">Whole blanks, side by side in one direction.</param>
/// <param name="Use">Share of the sheet used, 0 to 1.</param>
internal sealed record StockResult(
    string Sheet,
    [property: JsonConverter(typeof(WordConverter<Grain>))] Grain Grain,
    int Pieces,
    double Use);

/// <summary>The form in section: the lead-in flat along x, the tangent point of the curve at (0, 0).</summary>
/// <param name="Vertices">Contact-side outline [x, y]: end of the lead-in, every mold line, end of the lead-out [mm or in].</param>
/// <param name="ContactCurve">Points of the smooth contact curve [x, y] [mm or in].</param>
/// <param name="InsideProfile">Inside face [x, y], tangent line to tangent line, for ribs and bulkheads [mm or in].</param>
internal sealed record SectionResult(
    [property: JsonConverter(typeof(PairsConverter))] Pair[] Vertices,
    [property: JsonConverter(typeof(PairsConverter))] Pair[] ContactCurve,
    [property: JsonConverter(typeof(PairsConverter))] Pair[] InsideProfile);

/// <summary>How far the form itself gives under the pull.</summary>
/// <param name="Rotation">Rotation of the form's end [°].</param>
/// <param name="Moment">Largest moment per width that the form carries [N·mm/mm or lbf·in/in].</param>
/// <param name="FirstYield">Moment per width at which the form's sheet begins to yield [N·mm/mm or lbf·in/in].</param>
internal sealed record GiveResult(double Rotation, double Moment, double FirstYield);

/// <summary>The panel: what it is cut from, how it is pulled, how it will look.</summary>
/// <param name="Thickness">Thickness of the panel's sheet, as calculated with [mm or in].</param>
/// <param name="Springback">How it springs back from the form to the finished curve.</param>
/// <param name="Blank">The flat blank.</param>
/// <param name="Marks">Registration marks on it.</param>
/// <param name="PrintThrough">How much of the facets will show.</param>
/// <param name="Pull">What it takes to pull it.</param>
/// <param name="LargestMiss">Largest miss of the curve fitted to measured points [mm or in]; null for any other curve.</param>
/// <param name="Prediction">Headlines of how it comes off this form in simulation; only with <c>predict</c> or a refined stepping.</param>
internal sealed record PanelResult(
    double Thickness,
    SpringbackResult Springback,
    BlankResult Blank,
    MarkResult[] Marks,
    PrintThroughAnswer PrintThrough,
    PullResult Pull,
    double? LargestMiss,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] PredictionHeadline? Prediction = null);

/// <summary>Headlines of how the panel comes off the form, from a simulated pull not yet checked against measured panels; all of it at <c>/v1/forms/prediction</c>.</summary>
/// <param name="Wraps">Whether the panel lands on every fold, one after another.</param>
/// <param name="Text">Why it does not, or why ripple is not known; null where both are given.</param>
/// <param name="Radius">Radius of the circle that fits best from the third fold to the last but one (with five folds to the last one, with fewer from the first), on the face the curve was measured on [mm or in]; null where the panel is flat there, or does not wrap.</param>
/// <param name="Sweep">Turn of the whole panel let go [°]; null where it does not wrap.</param>
/// <param name="Miss">Largest distance from the wanted curve, laid over it as well as it goes [mm or in]; null where it does not wrap.</param>
/// <param name="HeldMiss">The same with the lead-in flats laid on each other [mm or in]; null where it does not wrap.</param>
/// <param name="Ripple">Largest peak-to-valley height over one facet [mm or in]; null where not known.</param>
/// <param name="Slope">Largest slope against a facet's own smooth arc [°]; null where not known.</param>
/// <param name="EndAngle">Angle of the sheet's end to pull to [°]; null where it does not wrap.</param>
/// <param name="Force">Largest hand force, whole width [N or lbf]; null where it does not wrap.</param>
internal sealed record PredictionHeadline(
    bool Wraps,
    string? Text,
    double? Radius,
    double? Sweep,
    double? Miss,
    double? HeldMiss,
    double? Ripple,
    double? Slope,
    double? EndAngle,
    double? Force);

/// <summary>How the panel springs back from the form to the finished curve.</summary>
/// <param name="Model">The model used: <c>pure-bending</c>, <c>wrapped</c>, <c>measured-factor</c> or <c>effective-yield</c>.</param>
/// <param name="FactorAtTightest">Finished over formed curvature where the finished curve is tightest.</param>
/// <param name="FactorAtGentlest">The same where it is gentlest; 0 at a flat end.</param>
/// <param name="Overbend">Form sweep less finished sweep [°].</param>
/// <param name="YieldRadius">Mid-surface radius at which the sheet begins to yield [mm or in].</param>
/// <param name="Other">What the other model would have asked for.</param>
internal sealed record SpringbackResult(
    string Model,
    double FactorAtTightest,
    double FactorAtGentlest,
    double Overbend,
    double YieldRadius,
    OtherSpringbackResult Other);

/// <summary>What another model would have asked for.</summary>
/// <param name="Model">The other model.</param>
/// <param name="Sweep">Form sweep that it needs [°].</param>
internal sealed record OtherSpringbackResult(string Model, double Sweep);

/// <summary>A registration mark on the flat panel blank.</summary>
/// <param name="Name">What it is.</param>
/// <param name="At">From the lead-in edge of the blank [mm or in]; on a taper where the line crosses the lower base line.</param>
/// <param name="Near">Near end of the line [x, y] in the panel's sheet frame [mm or in]; tapers only.</param>
/// <param name="Far">Far end of it [mm or in]; tapers only.</param>
internal sealed record MarkResult(
    string Name,
    double At,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair? Near = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] Pair? Far = null);

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
    double AllowedSlope);

/// <summary>What it takes to pull the panel around the form.</summary>
/// <param name="MomentPerWidth">Bending moment at the tightest point [N·mm/mm or lbf·in/in].</param>
/// <param name="Lever">From the end of the curve to the hand [mm or in].</param>
/// <param name="LongestLever">Longest lever that keeps the wrap in order [mm or in]; 0 where none does, null where any does.</param>
/// <param name="Force">Largest hand force over the wrap, whole width [N or lbf].</param>
/// <param name="ClampLoad">Hold-down at the clamp against the first fold's push, whole width [N or lbf], never negative: 1.5 M/d, M the moment at the first fold, d the clamp's gap, or half the first facet where the folds at the ends are full: clamp there.</param>
/// <param name="EnergyReleased">Elastic energy let go when the pull ends [J or ft·lbf].</param>
internal sealed record PullResult(
    double MomentPerWidth,
    double Lever,
    double? LongestLever,
    double Force,
    double ClampLoad,
    double EnergyReleased);

/// <summary>One value compared with one limit.</summary>
/// <param name="Id">Stable id such as <c>facet-width</c>.</param>
/// <param name="Verdict">The result: <c>fail</c> only for what cannot be folded or is unsafe.</param>
/// <param name="Value">The value; null where it is not known.</param>
/// <param name="Limit">The limit; null where there is none.</param>
/// <param name="Bound">Whether the value should be at <c>least</c> or at <c>most</c> the limit.</param>
/// <param name="Unit">Unit of both; empty for a plain number.</param>
/// <param name="Text">What was found.</param>
/// <param name="Remedy">What to do about it; left out where it passed, or where nothing is known that would.</param>
internal sealed record CheckResult(
    string Id,
    [property: JsonConverter(typeof(WordConverter<Verdict>))] Verdict Verdict,
    double? Value,
    double? Limit,
    [property: JsonConverter(typeof(WordConverter<Bound>))] Bound Bound,
    string Unit,
    string Text,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] RemedyResult? Remedy = null);

/// <summary>What to do about a check that did not pass.</summary>
/// <param name="Text">What to do, in words.</param>
/// <param name="Changes">Changes to the request, to be made together: the engine planned the job with them, found that the check passes, and that no other got worse. Empty where it found none, or where none is tried.</param>
internal sealed record RemedyResult(string Text, ChangeResult[] Changes);

/// <summary>One change to a request.</summary>
/// <param name="Pointer">Where (RFC 6901), in the request as the answer shows it.</param>
/// <param name="Value">What to put there: a number in the request's units, a word, an object, or null.</param>
internal sealed record ChangeResult(string Pointer, [property: WrittenAs(typeof(JsonElement))] RawJson Value);

/// <summary>One caution that the request calls for.</summary>
/// <param name="Id">Stable id such as <c>sharp-edges</c>.</param>
/// <param name="Level">How serious.</param>
/// <param name="Text">The caution.</param>
internal sealed record SafetyResult(
    string Id,
    [property: JsonConverter(typeof(WordConverter<SafetyLevel>))] SafetyLevel Level,
    string Text);

/// <summary>One hint that saves a panel.</summary>
/// <param name="Id">Stable id such as <c>burr-side</c>.</param>
/// <param name="Text">The hint.</param>
internal sealed record ShopNoteResult(string Id, string Text);

/// <summary>What a headline value rests on.</summary>
/// <param name="Quantity">The value, by its name in the answer.</param>
/// <param name="Method">The formula or method, in words.</param>
/// <param name="Source">The published text, or what is used in its place.</param>
/// <param name="Status">How well it is supported.</param>
internal sealed record BasisResult(
    string Quantity,
    string Method,
    string Source,
    [property: JsonConverter(typeof(WordConverter<Status>))] Status Status);
