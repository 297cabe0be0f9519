using Forming.Curves;
using Forming.Layout;
using Forming.Panels;
using Forming.Plans.Checks;
using Forming.Plans.Notes;
using Forming.Results;
using Forming.Springback;

namespace Forming.Plans;

/// <summary>The whole job: from a finished curve and a material to a form, a panel blank, checks and cautions.</summary>
public sealed record FormPlan
{
    /// <summary>What the checks come to.</summary>
    public required PlanVerdict Verdict { get; init; }

    /// <summary>The form.</summary>
    public required PlannedForm Form { get; init; }

    /// <summary>The panel.</summary>
    public required PlannedPanel Panel { get; init; }

    /// <summary>Every check, passed or not.</summary>
    public required IReadOnlyList<Check> Checks { get; init; }

    /// <summary>Cautions that this job calls for.</summary>
    public required IReadOnlyList<SafetyNote> Safety { get; init; }

    /// <summary>Hints that save a panel.</summary>
    public required IReadOnlyList<ShopNote> ShopNotes { get; init; }

    /// <summary>What every headline figure rests on.</summary>
    public required IReadOnlyList<Basis> Basis { get; init; }

    /// <summary>Plans a form.</summary>
    /// <param name="panel">The finished panel.</param>
    /// <param name="form">The form.</param>
    /// <param name="brake">The brake.</param>
    /// <param name="marks">How the flat is marked.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <returns>The plan; what cannot be made comes back with its stations and the checks that failed.</returns>
    /// <exception cref="NoSolutionException">What was asked has no answer: the curve reverses, a fold is rounder than the curve …</exception>
    public static FormPlan Compute(
        PanelSpec panel, FormSpec form, BrakeSpec brake, MarkSpec marks, CancellationToken cancellation = default)
    {
        var draft = Draft(panel, form, brake, marks, cancellation);
        var checks = PlanChecks.Of(draft);
        return new()
        {
            Verdict = VerdictOf(checks),
            Form = FormOf(draft),
            Panel = PanelOf(draft),
            Checks = checks,
            Safety = SafetyNotes.Of(draft),
            ShopNotes = Notes.ShopNotes.Of(draft),
            Basis = PlanBasis.Of(draft),
        };
    }

    private static PlanDraft Draft(
        PanelSpec panel, FormSpec form, BrakeSpec brake, MarkSpec marks, CancellationToken cancellation)
    {
        var finished = FinishedCurve.On(panel.Curve, panel.Surface, panel.Sheet.ThicknessMm);
        var fold = new FoldShape(form.FoldRadiusMm, form.Sheet.ThicknessMm, NeutralFactorOf(form));
        var formLaw = BendingLaw.Of(form.Sheet);
        var wrapped = WrappedForm.Solve(finished, panel, form, fold, brake, marks, cancellation);
        var polygon = wrapped.Folds.Polygon;

        var layout = FlatLayout.Of(polygon, fold, form.LeadInMm, form.LeadOutMm);
        var section = FormSection.Of(polygon, wrapped.Contact, fold, form.LeadInMm, form.LeadOutMm);
        var lever = wrapped.Judge.LeverMm;
        var firstFold = section.Vertices[1].X - wrapped.Contact.Runs[0].Start.Position.X;
        var panelBlank = Panels.PanelBlank.Of(
            finished, panel.Sheet.ThicknessMm, panel.TrimMm, panel.LeadInMm, panel.LeadOutMm, panel.Mirrored, firstFold, lever);
        var printThrough = PrintThroughReport.Of(wrapped, panel.Finish);
        var pull = PullForces.Compute(
            wrapped.Contact, wrapped.Rule.Law, wrapped.Tightest, lever, printThrough.WidestFacetMm, panel.WidthMm, panel.Clamp);
        return new()
        {
            Panel = panel,
            Form = form,
            Brake = brake,
            Marks = marks,
            Finished = finished,
            Wrapped = wrapped,
            FormLaw = formLaw,
            Fold = fold,
            Layout = layout,
            FoldBackMissMm = layout.FoldBackMiss(polygon, fold),
            Section = section,
            Stepping = SteppingReports.Of(wrapped.Folds, wrapped.Contact, fold, form.Stepping),
            Stations = StationList.Of(wrapped, fold, layout, form, formLaw, brake, marks),
            PrintThrough = printThrough,
            FormBlank = BlankShape.Rectangle(form.Sheet, layout.LengthMm, form.WidthMm, panel.StockSheets),
            PanelBlank = BlankShape.Rectangle(panel.Sheet, panelBlank.LengthMm, panel.WidthMm, panel.StockSheets),
            PanelMarks = panelBlank.Marks,
            Pull = pull,
            Give = FormGiveEstimate.Compute(
                wrapped.Contact, formLaw, pull.ForceN, Math.Max(lever, printThrough.WidestFacetMm), panel.WidthMm, form.WidthMm),
        };
    }

    private static double NeutralFactorOf(FormSpec form)
    {
        if (form.NeutralFactor is { } factor)
            return factor;
        if (form.FoldRadiusMm >= NeutralLine.SmallestRadiusOverThickness * form.Sheet.ThicknessMm)
            return NeutralLine.Factor(form.FoldRadiusMm, form.Sheet.ThicknessMm);
        throw new NoSolutionException(
            "form.neutral-factor-needed",
            "form.neutralFactor",
            $"a fold radius below {NeutralLine.SmallestRadiusOverThickness} of the thickness has no published neutral factor",
            $"your own neutral factor, or a fold radius of at least {Figure.Length(NeutralLine.SmallestRadiusOverThickness * form.Sheet.ThicknessMm)}");
    }

    private static PlanVerdict VerdictOf(IReadOnlyList<Check> checks)
    {
        var worst = checks.Max(check => check.Verdict);
        return worst switch
        {
            Results.Verdict.Fail => PlanVerdict.CannotBeMade,
            Results.Verdict.Warn => PlanVerdict.Attention,
            _ => PlanVerdict.Ready,
        };
    }

    private static PlannedForm FormOf(PlanDraft draft) => new()
    {
        Sweep = new(draft.Polygon.EndTurn),
        Stations = draft.Stations,
        StopSettings = StopSettings.Of(draft.Stations, draft.Brake.StopResolution),
        Stepping = draft.Stepping,
        LargestRoundingMm = draft.Stations.Max(station => Math.Abs(station.MarkMm - station.AtMm)),
        NeutralFactor = draft.Fold.NeutralFactor,
        BlankAtMidNeutralMm = draft.Polygon.EndTurn * (0.5 - draft.Fold.NeutralFactor) * draft.Fold.ThicknessMm,
        FoldBackMissMm = draft.FoldBackMissMm,
        Blank = draft.FormBlank,
        Section = draft.Section,
        Give = draft.Give,
    };

    private static PlannedPanel PanelOf(PlanDraft draft) => new()
    {
        Springback = SpringbackReports.Of(draft),
        Blank = draft.PanelBlank,
        Marks = draft.PanelMarks,
        PrintThrough = draft.PrintThrough,
        Pull = draft.Pull,
        LargestMissMm = draft.Finished.LargestMissMm,
    };
}
