using System.Globalization;
using System.Text;
using System.Text.Json.Serialization;
using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Links;
using FormApi.Http.Problems;
using FormApi.Http.Results;
using FormApi.Http.Units;
using Forming.Drawing.Svg;
using Forming.Layout;
using Forming.Plans;
using Forming.Programs;
using Forming.Programs.Brakes;
using Forming.Programs.Motion;

namespace FormApi.Features.Programs;

/// <summary>
/// The steps by which a brake folds a form, every one of them followed through its whole swing. Lengths and forces are in the units of the
/// request.
/// </summary>
/// <param name="Engine">Version of the engine that calculated it.</param>
/// <param name="Fingerprint">SHA-256 of canonical request and engine version: the same one is the same answer.</param>
/// <param name="Request">The request with every default shown; null where it has no use.</param>
/// <param name="Verdict">The verdict of the checks: <c>ready</c>, or <c>attention</c> where one warns. A form that cannot be folded is a
/// 422.</param>
/// <param name="Next">What to do next.</param>
/// <param name="Program">The program as a whole.</param>
/// <param name="Steps">The steps in order.</param>
/// <param name="Checks">Every check of the program, the worst step's value for each; with stations also those that a plan makes of the
/// folds.</param>
/// <param name="Safety">Cautions that this job calls for. Local codes, machine manuals and licensed practice come first.</param>
/// <param name="Basis">What every headline value rests on.</param>
/// <param name="Links">The same as links that hold the whole request.</param>
internal sealed record ProgramAnswer(
    string Engine,
    string Fingerprint,
    [property: InFull, WrittenAs(typeof(ProgramRequest))] RawJson Request,
    [property: JsonConverter(typeof(WordConverter<PlanVerdict>))] PlanVerdict Verdict,
    NextStepResult[] Next,
    ProgramResult Program,
    StepResult[] Steps,
    CheckResult[] Checks,
    SafetyResult[] Safety,
    [property: InFull] BasisResult[] Basis,
    [property: InFull] LinksResult Links) : IJudged
{
    /// <inheritdoc/>
    string IJudged.VerdictWord => VerdictWords.Of(Verdict);

    // All folds turn the sheet up, so it is never flipped.
    private const string MarkedFace = "inside";

    /// <summary>The answer to a request.</summary>
    /// <param name="job">The programmed request.</param>
    /// <param name="only">The one step to show, with its picture; null for all.</param>
    public static ProgramAnswer From(ProgrammedJob job, ProgramStep? only = null)
    {
        var (program, units) = (job.Program, job.Units);
        return new(
            EngineVersion.Current,
            job.Shown.Fingerprint,
            job.Shown.Json,
            job.Verdict,
            Lists.Map(program.Next, step => NextStepResult.From(step, job.Links, units)),
            new(
                program.OrderName!,
                program.Turns,
                program.HandlingCost,
                program.StopChanges,
                Lists.Map(program.StopGroups, group => new StopGroupResult(UnitSystem.Degrees(group.Setting), group.Steps)),
                UnitSystem.Degrees(program.StopRounding),
                units.Length(program.Clearance.Mm),
                program.Clearance.Nearest?.Word(),
                job.Brake is PressBrake press ? units.Length(press.DieOpeningFor(job.Part.Shape.ThicknessMm)) : null,
                program.Searched == SearchedOrders.AllOrders ? "all orders" : "families",
                program.IsSearchComplete,
                OrdersOf(program, units)),
            only is null
                ? Lists.Map(program.Steps, step => StepOf(step, job, units))
                : [StepOf(only, job, units) with { Picture = PictureOf(job, only) }],
            Lists.Map(job.Checks, check => CheckResult.From(check, units)),
            Lists.Map(program.Safety, note => SafetyResult.From(note, units)),
            Lists.Map(program.Basis, BasisResult.From),
            job.Links);
    }

    /// <summary>Why there is no program.</summary>
    /// <param name="program">The program that is none.</param>
    /// <param name="units">The caller's units.</param>
    public static ImpossibleResult ImpossibleOf(BrakeProgram program, UnitSystem units) => new(
        program.Impossible!.IsProven,
        program.Impossible.States,
        Lists.Map(program.Impossible.Folds, fold => new ImpossibleFoldResult(
            fold.Fold, fold.Check, fold.Strikes?.Word(), units.Wording.Of(fold.Text), CheckRemedies.From(fold.Remedy, units))),
        OrdersOf(program, units));

    private static OrderTriedResult[] OrdersOf(BrakeProgram program, UnitSystem units) => Lists.Map(
        program.OrdersTried,
        order => new OrderTriedResult(
            order.Name,
            order.IsWhole,
            order.FailedFold,
            order.FailedCheck,
            order.Strikes?.Word(),
            order.HandlingCost,
            units.Length(order.ClearanceMm)));

    private static string PictureOf(ProgrammedJob job, ProgramStep only)
    {
        using var stream = new MemoryStream();
        ProgramSvgSheet.Write(job.AsDrawing(null, only), stream);
        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }

    private static StepResult StepOf(ProgramStep step, ProgrammedJob job, UnitSystem units)
    {
        var isPress = job.Brake is PressBrake;
        return new(
            step.Number,
            string.Create(CultureInfo.InvariantCulture, $"fold-{step.Fold}"),
            step.Fold,
            step.EdgeInFront,
            step.Handling,
            step.HandlingCost,
            step.GaugedEdge,
            step.Gauge.By,
            units.Length(step.Gauge.DistanceMm),
            TapeReading.Of(step.Gauge.DistanceMm, job.Tape).Text,
            step.Gauge.IsInRange,
            UnitSystem.Degrees(step.Gauge.FaceSlope),
            UnitSystem.Degrees(step.FoldAngle),
            UnitSystem.Degrees(step.StopAngle),
            UnitSystem.Degrees(step.StopSetting),
            isPress ? UnitSystem.Degrees(step.IncludedAngle) : null,
            isPress ? UnitSystem.Degrees(step.SpringbackAllowance) : null,
            step.IsStopChanged,
            units.Length(step.DepthMm),
            Force(step.Load.ForceN),
            Force(step.Load.ForceLowN),
            step.Load.MomentNmm is { } moment ? units.Torque(moment) : null,
            Force(step.Load.HandleForceN),
            Force(step.Load.LeafForceN),
            Force(step.Load.ClampForceN),
            units.Length(step.Clearance.Mm),
            step.Clearance.Nearest?.Word(),
            UnitSystem.Degrees(step.Clearance.AtAngle),
            units.Length(step.FrontRunMm),
            units.Length(step.BackRunMm),
            MarkedFace,
            units.Wording.Of(step.Text),
            [.. step.Checks.Where(check => check.Verdict != Forming.Checks.Verdict.Pass).Select(check => CheckResult.From(check, units))],
            step.Gauge.Marks is { } marks
                ? new(units.Length(marks.Near.Mm), units.Length(marks.Far.Mm), marks.Near.Text, marks.Far.Text)
                : null,
            step.Swing is { } swing ? UnitSystem.Degrees(swing) : null,
            step.Section?.Word());

        double? Force(double? newtons) => newtons is { } known ? units.Force(known) : null;
    }
}

/// <summary>A program as a whole.</summary>
/// <param name="OrderName">Name of the order.</param>
/// <param name="Turns">Turns of the part end for end.</param>
/// <param name="HandlingCost">What all handling costs, in slides to the next mark: slide 1, draw out and put in again 2, turn end for end 3
/// (assumption).</param>
/// <param name="StopChanges">Changes of the stop after the first setting.</param>
/// <param name="StopGroups">Steps in a row that share one setting of the stop.</param>
/// <param name="StopRounding">What rounding the stop angles to the stop's resolution adds to the whole form, in degrees of closing [°]:
/// above 0 it closes too far.</param>
/// <param name="Clearance">Least clearance of all steps, at most the tools' <c>plenty</c> [mm or in].</param>
/// <param name="Nearest">What is nearest to the part there; null where nothing is near.</param>
/// <param name="DieOpening">Opening of the die in use [mm or in]; null on a leaf brake.</param>
/// <param name="Searched">Which orders were searched: <c>all orders</c>, up to 8 folds; <c>families</c>, those whose made folds are always
/// the outer ones of both edges, or one run of neighbours.</param>
/// <param name="SearchComplete">Whether the search was complete; else a better order may exist. It ends after a counted amount of work,
/// never by a clock: the same request has the same answer.</param>
/// <param name="OrdersTried">The orders that were followed.</param>
internal sealed record ProgramResult(
    string OrderName,
    int Turns,
    int HandlingCost,
    int StopChanges,
    StopGroupResult[] StopGroups,
    double StopRounding,
    double Clearance,
    string? Nearest,
    double? DieOpening,
    string Searched,
    bool SearchComplete,
    [property: InFull] OrderTriedResult[] OrdersTried);

/// <summary>Steps in a row that share one setting of the stop.</summary>
/// <param name="StopSetting">What the stop is set to, to its resolution [°].</param>
/// <param name="Steps">Numbers of the steps.</param>
internal sealed record StopGroupResult(double StopSetting, IReadOnlyList<int> Steps);

/// <summary>An order that was followed.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Whole">Whether it reached its end.</param>
/// <param name="FailedFold">Number of the fold at which it failed; null where it reached its end.</param>
/// <param name="FailedCheck">Id of the check that failed there, or null.</param>
/// <param name="Strikes">What the part strikes there, or null.</param>
/// <param name="HandlingCost">What its handling costs as far as it got, in slides to the next mark.</param>
/// <param name="Clearance">Its least clearance as far as it got [mm or in].</param>
internal sealed record OrderTriedResult(
    string Name, bool Whole, int? FailedFold, string? FailedCheck, string? Strikes, int HandlingCost, double Clearance);

/// <summary>One fold at the brake.</summary>
/// <param name="Number">Number of the step, from 1.</param>
/// <param name="Id">Its name, the same whatever the order of the steps.</param>
/// <param name="Fold">Number of the fold, from 1 at the start edge, the lead-in.</param>
/// <param name="EdgeInFront">The edge towards the operator.</param>
/// <param name="Handling">How the part is moved to the fold.</param>
/// <param name="HandlingCost">What that costs, in slides to the next mark.</param>
/// <param name="GaugedEdge">The edge behind, which is gauged.</param>
/// <param name="GaugedBy">What places the part.</param>
/// <param name="GaugeDistance">From the sight line of a leaf brake or the punch tip of a press brake to the stop [mm or in]; by mark, to
/// the edge behind, and no gauge is set by it.</param>
/// <param name="GaugeDistanceText">That distance as it reads on the tape.</param>
/// <param name="GaugeInRange">Whether the gauge reaches there.</param>
/// <param name="FaceSlope">Slope of the face that meets the stop [°]; below 45° the sheet can ride over or under it.</param>
/// <param name="Angle">Fold angle after springback [°].</param>
/// <param name="StopAngle">Exact angle under load [°].</param>
/// <param name="StopSetting">What to set the stop to: that angle to the stop's resolution, one setting for folds that agree within it
/// [°].</param>
/// <param name="IncludedAngle">Angle between the two flats under load, 180° less the stop angle [°]; null on a leaf brake.</param>
/// <param name="SpringbackAllowance">How far the fold goes past its angle under load [°]; null on a leaf brake.</param>
/// <param name="StopChange">Whether the stop is changed for this step.</param>
/// <param name="Depth">How far the ram moves down from touching the flat sheet [mm or in]; null on a leaf brake.</param>
/// <param name="Force">Force of the ram, an upper bound for small folds [N or lbf]; null on a leaf brake.</param>
/// <param name="ForceLow">The same by plane strain alone, without friction [N or lbf]; null on a leaf brake.</param>
/// <param name="Moment">Moment at the leaf over the whole width [N·mm or lbf·in]; null on a press brake.</param>
/// <param name="HandleForce">Force at the handle, without the leaf's weight and friction [N or lbf]; null on a press brake.</param>
/// <param name="LeafForce">Force of the leaf on the sheet [N or lbf]; null on a press brake.</param>
/// <param name="ClampForce">Force of the beam on the sheet [N or lbf]; null on a press brake.</param>
/// <param name="Clearance">Least clearance over the whole swing, at most the tools' <c>plenty</c> [mm or in]; true within 0.02 mm and never
/// too high by more.</param>
/// <param name="Nearest">What is nearest to the part; null where nothing is near.</param>
/// <param name="ClearanceAtAngle">Angle of the fold there [°].</param>
/// <param name="FrontRun">Flat in front of the fold, at its shorter end [mm or in].</param>
/// <param name="BackRun">Flat behind the fold, at its shorter end [mm or in].</param>
/// <param name="FaceUp">The face that lies up: always <c>inside</c>, the marked face; the part is never flipped.</param>
/// <param name="Text">What to do, in words.</param>
/// <param name="Checks">The step's own checks that did not pass.</param>
/// <param name="Marks">The marks of the line to set under nose or punch, on the sheet's long edges, from the datum; tapers only.</param>
/// <param name="Swing">From the last line to this one [°], anticlockwise seen from above; tapers only, null at the first step.</param>
/// <param name="Section">Third of the fold with the least clearance: <c>near</c>, <c>middle</c> or <c>far</c>; tapers only.</param>
/// <param name="Picture">The step as an SVG picture; only where a link asks for one step.</param>
internal sealed record StepResult(
    int Number,
    string Id,
    int Fold,
    [property: JsonConverter(typeof(WordConverter<PartEdge>))] PartEdge EdgeInFront,
    [property: JsonConverter(typeof(WordConverter<Handling>))] Handling Handling,
    int HandlingCost,
    [property: JsonConverter(typeof(WordConverter<PartEdge>))] PartEdge GaugedEdge,
    [property: JsonConverter(typeof(WordConverter<GaugedBy>))] GaugedBy GaugedBy,
    double GaugeDistance,
    string GaugeDistanceText,
    bool GaugeInRange,
    double FaceSlope,
    double Angle,
    double StopAngle,
    double StopSetting,
    double? IncludedAngle,
    double? SpringbackAllowance,
    bool StopChange,
    double? Depth,
    double? Force,
    double? ForceLow,
    double? Moment,
    double? HandleForce,
    double? LeafForce,
    double? ClampForce,
    double Clearance,
    string? Nearest,
    double ClearanceAtAngle,
    double FrontRun,
    double BackRun,
    string FaceUp,
    string Text,
    CheckResult[] Checks,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] LineMarksResult? Marks = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Swing = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Section = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Picture = null);

/// <summary>Two marks of a line.</summary>
/// <param name="Near">On the near edge [mm or in].</param>
/// <param name="Far">On the far edge [mm or in].</param>
/// <param name="NearText">The near one as it reads on the tape.</param>
/// <param name="FarText">The far one.</param>
internal sealed record LineMarksResult(double Near, double Far, string NearText, string FarText);

/// <summary>Why a form cannot be folded on the given tools.</summary>
/// <param name="Proven">Whether no order exists for these tools, for certain; handling is left aside in the proof.</param>
/// <param name="States">States of the part that were looked at.</param>
/// <param name="Folds">The folds at fault.</param>
/// <param name="OrdersTried">The orders that were followed, and where each failed.</param>
internal sealed record ImpossibleResult(bool Proven, int States, ImpossibleFoldResult[] Folds, OrderTriedResult[] OrdersTried);

/// <summary>A fold that cannot be made last, or in any state.</summary>
/// <param name="Fold">Its number, from 1.</param>
/// <param name="Check">Id of the check that fails.</param>
/// <param name="Strikes">What the part strikes, or null where a flat is too short.</param>
/// <param name="Text">Why not.</param>
/// <param name="Remedy">Which tool, facet or split would do.</param>
internal sealed record ImpossibleFoldResult(int Fold, string Check, string? Strikes, string Text, RemedyResult Remedy);
