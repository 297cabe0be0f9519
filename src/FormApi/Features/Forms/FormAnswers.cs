using FormApi.Http;
using FormApi.Http.Json;
using FormApi.Http.Links;
using FormApi.Http.Units;
using Forming;
using Forming.Blanks;
using Forming.Checks;
using Forming.Facets;
using Forming.Jobs;
using Forming.Plans;
using Forming.Prediction;
using Forming.Pulling;
using Forming.Tapers;
using Forming.Wrapping;

namespace FormApi.Features.Forms;

/// <summary>From a plan to the answer, in the caller's units.</summary>
internal static class FormAnswers
{
    /// <summary>The answer to a request.</summary>
    /// <param name="job">The planned request.</param>
    public static FormAnswer From(PlannedJob job)
    {
        var (plan, specs, units) = (job.Plan, job.Specs, job.Units);
        return new(
            EngineVersion.Current,
            job.Shown.Fingerprint,
            job.Shown.Json,
            plan.Verdict,
            FormOf(plan, specs, units),
            PanelOf(plan.Panel, specs, units),
            Map(plan.Checks, check => CheckOf(check, units)),
            Map(plan.Safety, note => new SafetyResult(note.Id, note.Level, units.Wording.Of(note.Text))),
            Map(plan.ShopNotes, note => new ShopNoteResult(note.Id, units.Wording.Of(note.Text))),
            Map(plan.Basis, basis => new BasisResult(basis.Quantity, basis.Method, basis.Source, basis.Status)),
            AnswerLinks.OfForm(job.Shown.Canonical.Span, plan.Taper is not null));
    }

    private static FormResult FormOf(FormPlan plan, FormSpecs specs, UnitSystem units) => FormOf(plan.Form, plan.Taper, specs, units);

    private static FormResult FormOf(PlannedForm form, TaperReport? taper, FormSpecs specs, UnitSystem units) => new(
        UnitSystem.Degrees(form.Sweep),
        form.Stations.Count,
        units.Length(specs.Form.Sheet.ThicknessMm),
        Map(form.Stations, station => StationOf(station, units)),
        Map(form.StopSettings, stop => new StopSettingResult(
            UnitSystem.Degrees(stop.FoldAngle), UnitSystem.Degrees(stop.StopAngle), UnitSystem.Degrees(stop.Setting), stop.Stations)),
        UnitSystem.Degrees(form.StopRounding),
        units.Length(form.LargestRoundingMm),
        WireNumber.Of(form.NeutralFactor),
        units.Length(form.BlankAtMidNeutralMm),
        SteppingOf(form.Stepping, units),
        BlankOf(form.Blank, units),
        new(Points(form.Section.Vertices, units), Points(form.Section.ContactCurve, units), Points(form.Section.InsideProfile, units)),
        new(UnitSystem.Degrees(form.Give.Rotation), units.Moment(form.Give.MomentPerWidth), units.Moment(form.Give.FirstYieldPerWidth)),
        taper is null ? null : TaperOf(taper, units));

    private static TaperResult TaperOf(TaperReport taper, UnitSystem units) => new(
        new(WireNumber.Of(taper.EndBiasNear), WireNumber.Of(taper.EndBiasFar)),
        units.Length(taper.FacetFlatnessMm),
        units.Length(taper.TouchMissMm),
        units.Length(taper.LineShiftMm),
        UnitSystem.Degrees(taper.LargestLineAngle),
        taper.NeedsOppositeHand,
        "contact face");

    private static StationResult StationOf(Forming.Layout.Station station, UnitSystem units) =>
        station.Line is { } line ? WithLine(PlainOf(station, units), line, units) : PlainOf(station, units);

    private static StationResult WithLine(StationResult station, Forming.Layout.FoldLine line, UnitSystem units) => station with
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

    private static StationResult PlainOf(Forming.Layout.Station station, UnitSystem units) => new(
        station.Number,
        units.Length(station.AtMm),
        units.Length(station.MarkMm),
        station.MarkText,
        new(units.Length(station.FirstTangentMm), units.Length(station.SecondTangentMm)),
        units.Length(station.SightLineMm),
        UnitSystem.Degrees(station.FoldAngle),
        UnitSystem.Degrees(station.RunningAngle),
        UnitSystem.Degrees(station.StopAngle),
        UnitSystem.Degrees(station.StopSetting),
        units.Length(station.RadiusMm),
        units.Length(station.FacetAfterMm),
        units.Length(station.StraightAfterMm));

    private static SteppingResult SteppingOf(SteppingReport stepping, UnitSystem units) => new(
        UnitSystem.Degrees(stepping.AngleSpread),
        units.Length(stepping.SpacingSpreadMm),
        UnitSystem.Degrees(stepping.SweepOver),
        UnitSystem.Degrees(stepping.LastFoldInstead),
        units.Length(stepping.FlatInsideTangentMm),
        stepping.Refinement is { } refined ? new(refined.ClosedFormFolds, refined.Folds, refined.WhyKept) : null);

    private static BlankResult BlankOf(Blank blank, UnitSystem units) => new(
        units.Length(blank.LengthMm),
        units.Length(blank.WidthMm),
        units.Area(blank.AreaMm2),
        units.Mass(blank.MassKg),
        Points(blank.Outline, units),
        Map(blank.Stock, stock => new StockResult(
            stock.Sheet.Name, stock.FoldsAlongGrain ? Grain.Along : Grain.Across, stock.Pieces, WireNumber.Of(stock.Use))));

    private static PanelResult PanelOf(PlannedPanel panel, FormSpecs specs, UnitSystem units) => new(
        units.Length(specs.Panel.Sheet.ThicknessMm),
        new(
            panel.Springback.Model,
            WireNumber.Of(panel.Springback.FactorAtTightest),
            WireNumber.Of(panel.Springback.FactorAtGentlest),
            UnitSystem.Degrees(panel.Springback.Overbend),
            units.Length(panel.Springback.YieldRadiusMm),
            new(panel.Springback.OtherModel, UnitSystem.Degrees(panel.Springback.OtherSweep))),
        BlankOf(panel.Blank, units),
        Map(panel.Marks, mark => new MarkResult(
            mark.Name,
            units.Length(mark.AtMm),
            mark.Near is { } near ? units.Point(near) : null,
            mark.Far is { } far ? units.Point(far) : null)),
        PrintThroughOf(panel.PrintThrough, units),
        PullOf(panel.Pull, units),
        units.Length(panel.LargestMissMm),
        panel.Prediction is { } prediction ? HeadlineOf(prediction, units) : null);

    private static PredictionHeadline HeadlineOf(PanelPrediction prediction, UnitSystem units) => new(
        prediction.Wraps,
        units.Wording.OfOptional(prediction.WhyNot) ?? prediction.Ripple.WhyUnknown,
        units.Length(prediction.Shape?.RadiusMm),
        UnitSystem.Degrees(prediction.Shape?.Sweep),
        units.Length(prediction.Shape?.MissMm),
        units.Length(prediction.Shape?.HeldMissMm),
        units.Length(prediction.Ripple.HeightMm),
        UnitSystem.Degrees(prediction.Ripple.Slope),
        UnitSystem.Degrees(prediction.Pull?.EndAngle),
        prediction.Pull is { } pull ? units.Force(pull.ForceN) : null);

    private static PrintThroughAnswer PrintThroughOf(PrintThroughResult print, UnitSystem units) => new(
        print.Known,
        print.WhyUnknown,
        units.Length(print.NearestFacetMm),
        units.Length(print.AllowedFacetMm),
        units.Length(print.RippleMm),
        UnitSystem.Degrees(print.Slope),
        units.Length(print.Allowed.RippleMm),
        UnitSystem.Degrees(print.Allowed.Slope));

    private static PullResult PullOf(Pull pull, UnitSystem units) => new(
        units.Moment(pull.MomentPerWidth),
        units.Length(pull.LeverMm),
        units.Length(pull.LongestLeverMm),
        units.Force(pull.ForceN),
        units.Force(pull.ClampLoadN),
        units.Energy(pull.EnergyReleasedJ));

    /// <summary>A check in the caller's units.</summary>
    /// <param name="check">The check.</param>
    /// <param name="units">The caller's units.</param>
    internal static CheckResult CheckOf(Check check, UnitSystem units) => new(
        check.Id,
        check.Verdict,
        units.Figure(check.Value, check.Quantity),
        units.Figure(check.Limit, check.Quantity),
        check.Bound,
        units.NameOf(check.Quantity),
        units.Wording.Of(check.Text),
        check.Remedy is { } remedy ? RemedyOf(remedy, units) : null);

    /// <summary>A remedy in the caller's units.</summary>
    /// <param name="remedy">The remedy.</param>
    /// <param name="units">The caller's units.</param>
    internal static RemedyResult RemedyOf(Remedy remedy, UnitSystem units) => new(
        units.Wording.Of(remedy.Text),
        Map(remedy.Changes, change => new ChangeResult(JobPointers.Of(change), JobPointers.ValueOf(change))));

    private static Pair[] Points(IReadOnlyList<Point> points, UnitSystem units)
    {
        var pairs = new Pair[points.Count];
        for (var i = 0; i < pairs.Length; i++)
            pairs[i] = units.Point(points[i]);
        return pairs;
    }

    /// <summary>Every item, mapped.</summary>
    /// <typeparam name="TFrom">From this.</typeparam>
    /// <typeparam name="TTo">To this.</typeparam>
    /// <param name="items">The items.</param>
    /// <param name="map">How.</param>
    internal static TTo[] Map<TFrom, TTo>(IReadOnlyList<TFrom> items, Func<TFrom, TTo> map)
    {
        var mapped = new TTo[items.Count];
        for (var i = 0; i < mapped.Length; i++)
            mapped[i] = map(items[i]);
        return mapped;
    }
}
