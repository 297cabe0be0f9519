using System.Globalization;
using System.Text.Json;
using FormApi.Features.Forms;
using FormApi.Http.Links;
using FormApi.Http.Problems;
using FormApi.Http.Requests;
using FormApi.Http.Units;
using Forming;
using Forming.Checks;
using Forming.Drawing;
using Forming.Jobs;
using Forming.Layout;
using Forming.Materials;
using Forming.Plans;
using Forming.Programs;
using Forming.Programs.Brakes;
using Forming.Results;
using Microsoft.AspNetCore.Http.HttpResults;

namespace FormApi.Features.Programs;

/// <summary>A request that was programmed, ready to be answered in whatever form.</summary>
/// <param name="Program">The program; it has steps, and no check failed.</param>
/// <param name="Part">The part.</param>
/// <param name="Brake">The brake.</param>
/// <param name="Sheet">The part's sheet.</param>
/// <param name="Checks">The program's checks, and those of a part given by its stations.</param>
/// <param name="Links">Its links, and those of the form that was planned.</param>
/// <param name="Shown">The request with every default shown.</param>
internal sealed record ProgrammedJob(
    BrakeProgram Program,
    ProgramPart Part,
    ProgramBrake Brake,
    Sheet Sheet,
    IReadOnlyList<Check> Checks,
    LinksResult Links,
    NormalizedRequest Shown)
{
    /// <summary>The caller's units.</summary>
    public UnitSystem Units => Shown.Units;

    /// <summary>The tape that lengths are read on.</summary>
    public required Tape Tape { get; init; }

    /// <summary>Id of the gauge table that the form's sheet was stated by, or null.</summary>
    public string? GaugeSystem { get; init; }

    /// <summary>What the caller says of the job for its sheets, or null.</summary>
    public TitleBlock? TitleBlock { get; init; }

    /// <summary>The verdict of the checks.</summary>
    public PlanVerdict Verdict =>
        Checks.Any(check => check.Verdict == Forming.Checks.Verdict.Warn) ? PlanVerdict.Attention : PlanVerdict.Ready;

    /// <summary>Programs a request, or says what is in the way.</summary>
    /// <typeparam name="TAnswer">Type of the answer.</typeparam>
    /// <param name="body">The body as it was read.</param>
    /// <param name="answer">Answers the job.</param>
    /// <param name="cancellation">Cancels the calculation.</param>
    public static Results<TAnswer, ProblemResult> Answer<TAnswer>(
        JsonBody<ProgramRequest> body, Func<ProgrammedJob, TAnswer> answer, CancellationToken cancellation)
        where TAnswer : IResult
    {
        return body.AnswerOrRefuse<TAnswer>(given =>
        {
            var units = UnitSystem.Of(given.Units);
            var request = ProgramDefaults.Apply(given);
            var form = FormSpecs.FormFrom(request.Form! with { Stepping = request.Form.Stepping ?? PlannedElsewhere }, units);
            var (part, checks) = request.Stations is null ? Planned(request, cancellation) : Given(request, form, units);
            if (Failed(checks) is { Length: > 0 } failed)
                return Refused(failed, body, units);
            var brake = ProgramSpecs.BrakeFrom(request.Brake!, units);
            GivenPart.RefuseStops(part, brake);
            var program = BrakeProgram.Compute(part, brake, cancellation: cancellation);
            if (program.Impossible is not null)
                return Impossible(program, body, units);
            Check[] all = request.Stations is null ? [.. program.Checks] : [.. program.Checks, .. checks];
            if (Failed(all) is { Length: > 0 } unfit)
                return Refused(unfit, body, units);
            var shown = NormalizedRequest.Of(request);
            return answer(new(program, part, brake, form.Sheet, all, ProgramLinks.Of(request, shown.Canonical.Span), shown)
            {
                Tape = FormDefaults.TapeOf(request.Marks, request.Units),
                TitleBlock = request.Sheet?.AsDrawn(),
                GaugeSystem = request.Form!.GaugeSystem,
            });
        });
    }

    /// <summary>What a drawing of it takes.</summary>
    /// <param name="link">Address that opens the drawing again, or null.</param>
    /// <param name="only">The one step to show, or null for all.</param>
    public ProgramJob AsDrawing(string? link, ProgramStep? only) => new(
        Program,
        Part,
        Brake,
        Sheet,
        Checks,
        Verdict,
        Units.Unit,
        Tape,
        GaugeSystem,
        "Brake program",
        Shown.Fingerprint,
        Units.Wording.Of,
        link,
        only,
        TitleBlock);

    // Stations need no stepping; the form's record does.
    private static SteppingInput PlannedElsewhere { get; } =
        new(Forming.Facets.SteppingRule.EqualAngle, Forming.Facets.SteppingEnds.Half);

    private static (ProgramPart Part, IReadOnlyList<Check> Checks) Planned(ProgramRequest request, CancellationToken cancellation)
    {
        var specs = FormSpecs.From(FormDefaults.Apply(ProgramDefaults.AsForm(request)));
        var plan = FormPlan.Compute(specs.Job, check => check.Verdict == Forming.Checks.Verdict.Fail, cancellation);
        if (plan.Form.Stations.Count > GivenPart.MostFolds)
            throw new NoSolutionException("program.too-many-folds", "form.stepping", $"the plan has {plan.Form.Stations.Count} folds, and programs are worked out for {GivenPart.MostFolds} at most", $"at most {GivenPart.MostFolds} folds");
        return (ProgramPart.Of(plan, specs.Job), plan.Checks);
    }

    private static (ProgramPart Part, IReadOnlyList<Check> Checks) Given(ProgramRequest request, FormSpec form, UnitSystem units)
    {
        var stations = request.Stations!;
        var brake = FormSpecs.BrakeFrom(request.Brake!.AsBrake(), units);
        double[] facets = [.. stations.SkipLast(1).Select(station => units.ToMm(station.FacetAfter))];
        var part = GivenPart.Of([.. stations.Select(station => Angle.FromDegrees(station.Angle))], facets, form, brake);
        return (part, GivenPart.Checks(part, facets, form, brake));
    }

    private static Check[] Failed(IReadOnlyList<Check> checks) => [.. checks.Where(check => check.Verdict == Forming.Checks.Verdict.Fail)];

    private static ProblemResult Refused(Check[] failed, JsonBody<ProgramRequest> body, UnitSystem units) => new(
        ProblemKinds.CannotBeMade,
        "A form with a failed check cannot be sent to a machine; failed: " + string.Join(", ", failed.Select(check => check.Id)) + ".",
        [.. failed.Select(check =>
            FaultAt(PlaceOf(check.Id), check.Id, units.Wording.Of(check.Text), units.Wording.OfOptional(check.Remedy?.Text), body))]);

    private static ProblemResult Impossible(BrakeProgram program, JsonBody<ProgramRequest> body, UnitSystem units)
    {
        var reasons = ProgramAnswer.ImpossibleOf(program, units);
        var order = program.Checks.First(check => check.Id == "order");
        Fault[] faults = reasons.Folds.Length > 0
            ? [.. reasons.Folds.Select(fold => FaultAt(PlaceOf(fold.Fold, body.Value), fold.Check, fold.Text, fold.Remedy.Text, body))]
            : [FaultAt("/brake", order.Id, units.Wording.Of(order.Text), units.Wording.OfOptional(order.Remedy?.Text), body)];
        return new(
            reasons.Proven ? ProblemKinds.ProgramImpossible : ProblemKinds.ProgramNotFound,
            units.Wording.Of(order.Text) + ".",
            faults,
            extensions: new Dictionary<string, JsonElement>
            {
                ["impossible"] = JsonSerializer.SerializeToElement(reasons, ProgramAnswerJson.Default.ImpossibleResult),
            });
    }

    private static Fault FaultAt(string pointer, string code, string message, string? allowed, JsonBody<ProgramRequest> body) =>
        new(pointer, code, message, pointer is "/form" or "/brake" ? null : body.GivenAt(pointer), allowed);

    private static string PlaceOf(int fold, ProgramRequest request) =>
        request.Stations is null ? "/form" : string.Create(CultureInfo.InvariantCulture, $"/stations/{fold - 1}");

    // The field that a caller would look at first; always one that the body has.
    private static string PlaceOf(string check) => check switch
    {
        "brake-length" => "/brake/length",
        "minimum-facet" or "capacity" => "/brake",
        "fold-radius" => "/form/foldRadius",
        "straight-part" => "/form",
        _ => "",
    };
}
