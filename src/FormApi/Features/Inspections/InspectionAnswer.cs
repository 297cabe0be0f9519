using System.Text.Json.Serialization;
using FormApi.Features.Forms;
using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Links;
using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming;
using Forming.Checks;
using Forming.Inspection;
using Forming.Prediction;

namespace FormApi.Features.Inspections;

/// <summary>
/// A folded form against its plan. Frame: the first flat fixed, its start at (0, 0), heading along x, turning left; contact side, sharp
/// mold lines.
/// </summary>
/// <param name="Engine">Version of the engine that calculated it.</param>
/// <param name="Fingerprint">SHA-256 of canonical request and engine version: the same one is the same answer.</param>
/// <param name="Request">The request with every default shown.</param>
/// <param name="WithinTolerance">Whether closing angle and every mold line are within the tolerance as measured.</param>
/// <param name="Next">What to do next.</param>
/// <param name="AsBuilt">The form as it was measured.</param>
/// <param name="Folds">Fold by fold against the plan.</param>
/// <param name="Closing">Error of the whole.</param>
/// <param name="Fit">The measured form laid over the planned one as well as it goes.</param>
/// <param name="Departure">Where it leaves the wanted curve; null where every mold line stays within tolerance. The direction of the
/// lead-out is judged by the closing angle.</param>
/// <param name="Panel">What it does to the panel.</param>
/// <param name="Corrections">The fewest folds to correct.</param>
/// <param name="Suspect">Measurements that are hard to believe; they are counted all the same.</param>
/// <param name="Checks">The tolerances, and the checks that the plan itself failed.</param>
/// <param name="Notes">What to know about the results.</param>
/// <param name="Basis">What every headline value rests on.</param>
/// <param name="Links">The form behind it as links that hold the whole request.</param>
/// <param name="Taper">Both ends of a taper, whose near one the fields above show along z; else left out.</param>
internal sealed record InspectionAnswer(
    string Engine,
    string Fingerprint,
    [property: InFull, WrittenAs(typeof(InspectionRequest))] RawJson Request,
    bool WithinTolerance,
    NextStepResult[] Next,
    AsBuiltResult AsBuilt,
    InspectedFoldResult[] Folds,
    ClosingErrorResult Closing,
    RigidFitResult Fit,
    DepartureResult? Departure,
    PanelEffectResult Panel,
    CorrectionsResult Corrections,
    SuspectResult[] Suspect,
    CheckResult[] Checks,
    ShopNoteResult[] Notes,
    [property: InFull] BasisResult[] Basis,
    [property: InFull] LinksResult Links,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] InspectedTaperResult? Taper)
{
    /// <summary>The answer to a request.</summary>
    /// <param name="report">The inspection.</param>
    /// <param name="failed">Checks that the plan itself failed.</param>
    /// <param name="step">Step of the stop.</param>
    /// <param name="links">Links of the form that was planned, if one was.</param>
    /// <param name="shown">The request with every default shown.</param>
    public static InspectionAnswer From(
        InspectionReport report, IReadOnlyList<Check> failed, Angle step, LinksResult links, NormalizedRequest shown)
    {
        var (units, off) = (shown.Units, report.Off);
        return new(
            EngineVersion.Current,
            shown.Fingerprint,
            shown.Json,
            report.Checks.All(check => check.Verdict == Verdict.Pass),
            Lists.Map(report.Next, step => NextStepResult.From(step, links, units, "/v1/inspections")),
            new(
                UnitSystem.Degrees(new Angle(report.Built.Sweep)),
                Lists.Map(report.Built.FlatsMm, units.Length),
                Lists.Map(off.Ends[0].Built, point => units.Point(InSection(point))),
                Lists.Map(off.Ends[0].Planned, point => units.Point(InSection(point)))),
            [.. off.Ends[0].Misses.Select((miss, i) => FoldOf(report, miss, i, units))],
            new(UnitSystem.Degrees(off.Closing), units.Point(InSection(off.Ends[0].EndMiss))),
            new(UnitSystem.Degrees(off.FitTurn), units.Length(off.LargestHeldMm), units.Length(off.LargestFittedMm)),
            report.Departure is { } departure
                ? new(departure.Facet, departure.IsInside ? "inside" : "outside", units.Length(Math.Abs(departure.ByMm)))
                : null,
            PanelOf(report.Panel, units),
            CorrectionsOf(report, step, units),
            Lists.Map(
                report.Suspect,
                suspect => new SuspectResult(Wire.Pointer(suspect.Subject), suspect.Code, units.Wording.Of(suspect.Text))),
            [.. report.Checks.Concat(failed).Select(check => CheckResult.From(check, units))],
            Lists.Map(report.Notes, note => ShopNoteResult.From(note, units)),
            Lists.Map(report.Basis, BasisResult.From),
            links,
            off is { Twist: { } twist, Skew: { } skew }
                ? new(
                    InspectedEndResult.From(off.Ends[0], units),
                    InspectedEndResult.From(off.Ends[1], units),
                    UnitSystem.Degrees(twist),
                    UnitSystem.Degrees(skew))
                : null);
    }

    private static Point InSection(Point3 point) => new(point.X, point.Y);

    private static InspectedFoldResult FoldOf(InspectionReport report, VertexMiss miss, int i, UnitSystem units)
    {
        var (angle, planned) = (report.Built.FoldAngles[i], report.Planned.FoldAngles[i]);
        return new(
            i + 1,
            UnitSystem.Degrees(new Angle(angle)),
            UnitSystem.Degrees(new Angle(planned)),
            UnitSystem.Degrees(new Angle(angle - planned)),
            units.Point(InSection(miss.Held)),
            units.Length(miss.Held.Length),
            units.Length(miss.FittedMm));
    }

    private static PanelEffectResult PanelOf(PanelEffect effect, UnitSystem units) => new(
        units.Wording.OfOptional(effect.WhyNot),
        PulledPanelResult.From(effect.Planned, units),
        PulledPanelResult.From(effect.AsBuilt, units),
        effect is { Planned: { Shape: { } before } planned, AsBuilt: { Shape: { } after } built }
            ? new(
                UnitSystem.Degrees(after.Sweep - before.Sweep),
                units.Length(after.RadiusMm - before.RadiusMm),
                units.Length(built.Ripple.HeightMm - planned.Ripple.HeightMm),
                units.Length(after.MissMm - before.MissMm))
            : null);

    private static CorrectionsResult CorrectionsOf(InspectionReport report, Angle step, UnitSystem units)
    {
        var plan = report.Corrections;
        return new(
            plan.Found,
            Lists.Map(plan.Folds, fold => new CorrectionResult(
                fold.Fold + 1,
                fold.Steps,
                UnitSystem.Degrees(fold.Steps * step),
                UnitSystem.Degrees(new Angle(report.Built.FoldAngles[fold.Fold]) + (fold.Steps * step)))),
            plan.LowerBound,
            plan.Found,
            plan.IsGentlest,
            plan.Nodes,
            UnitSystem.Degrees(plan.Closing),
            units.Length(plan.MissMm));
    }
}

/// <summary>The form as it was measured.</summary>
/// <param name="Sweep">Sum of its folds [°].</param>
/// <param name="Facets">Lead-in, facets, lead-out, mold line to mold line [mm or in].</param>
/// <param name="Vertices">Start, every mold line, end [x, y] [mm or in].</param>
/// <param name="Planned">The same of the plan [x, y] [mm or in].</param>
internal sealed record AsBuiltResult(double Sweep, double[] Facets, Pair[] Vertices, Pair[] Planned);

/// <summary>A tapered form as it was measured, in space: z in the lead-in, to the far end.</summary>
/// <param name="Near">The near end.</param>
/// <param name="Far">The far end.</param>
/// <param name="Twist">How far the lead-out turns too far about its own direction, square to the last fold [°].</param>
/// <param name="Skew">How far it and the last fold turn too far in its plane [°].</param>
internal sealed record InspectedTaperResult(InspectedEndResult Near, InspectedEndResult Far, double Twist, double Skew);

/// <summary>One end of a tapered form.</summary>
/// <param name="Vertices">Start, every mold line, end [x, y, z] [mm or in].</param>
/// <param name="Planned">The same of the plan.</param>
/// <param name="Distances">Of each mold line, the first flat fixed [mm or in].</param>
/// <param name="Fitted">The same after the rigid fit.</param>
internal sealed record InspectedEndResult(double[][] Vertices, double[][] Planned, double[] Distances, double[] Fitted)
{
    /// <summary>The end in the caller's units.</summary>
    /// <param name="end">The end against its plan.</param>
    /// <param name="units">The caller's units.</param>
    public static InspectedEndResult From(EndDeviation end, UnitSystem units) => new(
        Lists.Map(end.Built, units.Triple),
        Lists.Map(end.Planned, units.Triple),
        Lists.Map(end.Misses, miss => units.Length(miss.Held.Length)),
        Lists.Map(end.Misses, miss => units.Length(miss.FittedMm)));
}

/// <summary>One fold against the plan.</summary>
/// <param name="Number">Number from the lead-in, from 1.</param>
/// <param name="Angle">Measured [°].</param>
/// <param name="Planned">As it should be [°].</param>
/// <param name="Error">Measured less planned [°].</param>
/// <param name="Miss">How far its mold line is off with the first flat fixed [x, y] [mm or in].</param>
/// <param name="Distance">Length of that [mm or in].</param>
/// <param name="Fitted">Distance after the rigid fit [mm or in].</param>
internal sealed record InspectedFoldResult(
    int Number, double Angle, double Planned, double Error, Pair Miss, double Distance, double Fitted);

/// <summary>Error of the whole.</summary>
/// <param name="Angle">Sum of all folds less the planned one; of a taper the turn of the lead-out about the last fold [°]. Positive is
/// folded too far.</param>
/// <param name="End">How far the end of the lead-out is off with the first flat fixed [x, y] [mm or in].</param>
internal sealed record ClosingErrorResult(double Angle, Pair End);

/// <summary>The measured form laid over the planned one.</summary>
/// <param name="Turn">How far it had to be turned [°].</param>
/// <param name="LargestHeld">Largest distance of a mold line with the first flat fixed [mm or in].</param>
/// <param name="LargestFitted">Largest distance of a mold line after the fit [mm or in].</param>
internal sealed record RigidFitResult(double Turn, double LargestHeld, double LargestFitted);

/// <summary>Where a form leaves the wanted curve.</summary>
/// <param name="Facet">Number of the fold before the first facet whose far end is past tolerance, from 1; the last is the lead-out.</param>
/// <param name="Side"><c>inside</c> where the form is too tight, <c>outside</c> where it is too open.</param>
/// <param name="By">How far its far end is off, square to the planned facet [mm or in].</param>
internal sealed record DepartureResult(int Facet, string Side, double By);

/// <summary>What the errors do to a panel: the same pull over the planned form and over the form as it is, in simulation.</summary>
/// <param name="Text">Why it is not known, or null.</param>
/// <param name="Planned">Off the planned form; null where it is not known.</param>
/// <param name="AsBuilt">Off the form as it is; null where it is not known.</param>
/// <param name="Change">The second less the first; null where one of them does not wrap.</param>
internal sealed record PanelEffectResult(string? Text, PulledPanelResult? Planned, PulledPanelResult? AsBuilt, PanelChangeResult? Change);

/// <summary>A panel off a form, in simulation; not yet checked against measured panels.</summary>
/// <param name="Wraps">Whether it lands on every fold, one after another.</param>
/// <param name="Text">Why it does not, or null.</param>
/// <param name="Sweep">Turn of the panel let go [°]; null where it does not wrap.</param>
/// <param name="Radius">Radius of the circle that fits best [mm or in]; null where it is flat or does not wrap.</param>
/// <param name="Ripple">Largest ripple [mm or in]; null where not known.</param>
/// <param name="Miss">Largest distance from the wanted curve, laid over it as well as it goes [mm or in]; null where it does not
/// wrap.</param>
internal sealed record PulledPanelResult(bool Wraps, string? Text, double? Sweep, double? Radius, double? Ripple, double? Miss)
{
    /// <summary>The panel in the caller's units.</summary>
    /// <param name="prediction">The panel, or null.</param>
    /// <param name="units">The caller's units.</param>
    public static PulledPanelResult? From(PanelPrediction? prediction, UnitSystem units) => prediction is null
        ? null
        : new(
            prediction.Wraps,
            units.Wording.OfOptional(prediction.WhyNot),
            UnitSystem.Degrees(prediction.Shape?.Sweep),
            units.Length(prediction.Shape?.RadiusMm),
            units.Length(prediction.Ripple.HeightMm),
            units.Length(prediction.Shape?.MissMm));
}

/// <summary>What the errors of the form change in the panel.</summary>
/// <param name="Sweep">Turn [°].</param>
/// <param name="Radius">Radius [mm or in]; null where one of them is flat.</param>
/// <param name="Ripple">Largest ripple [mm or in]; null where not known.</param>
/// <param name="Miss">Largest distance from the wanted curve [mm or in].</param>
internal sealed record PanelChangeResult(double Sweep, double? Radius, double? Ripple, double Miss);

/// <summary>The fewest folds to correct, in whole steps of the stop, so that the form is within its tolerance.</summary>
/// <param name="Found">Whether there is such a correction; none needed counts.</param>
/// <param name="Folds">The folds to correct, from the lead-in.</param>
/// <param name="LowerBound">Proven: with fewer corrected folds it cannot be done.</param>
/// <param name="Proven">Whether the answer is proven fewest.</param>
/// <param name="AllCompared">Whether all choices of as many folds were compared: then none needs fewer steps, nor with as many leaves less
/// miss.</param>
/// <param name="Searched">Places looked at; at three million the search ends.</param>
/// <param name="Closing">Error of the sum of all folds afterwards [°]; null where none was found.</param>
/// <param name="LargestMiss">Largest miss of a mold line afterwards, the first flat fixed [mm or in]; null where none was found.</param>
internal sealed record CorrectionsResult(
    bool Found,
    CorrectionResult[] Folds,
    int LowerBound,
    bool Proven,
    bool AllCompared,
    int Searched,
    double? Closing,
    double? LargestMiss);

/// <summary>A fold to correct.</summary>
/// <param name="Fold">Number of the fold, from 1.</param>
/// <param name="Steps">Steps of the stop; negative opens it.</param>
/// <param name="Change">The same as an angle [°].</param>
/// <param name="Angle">Fold angle afterwards [°].</param>
internal sealed record CorrectionResult(int Fold, int Steps, double Change, double Angle);

/// <summary>A measurement that is hard to believe.</summary>
/// <param name="Pointer">JSON pointer of it in the request.</param>
/// <param name="Code">Stable code.</param>
/// <param name="Text">Why.</param>
internal sealed record SuspectResult(string Pointer, string Code, string Text);
