using Forming.Curves;
using Forming.Facets;
using Forming.Layout;
using Forming.Materials;

namespace Forming.Jobs;

/// <summary>Everything a plan is asked.</summary>
/// <param name="Panel">The finished panel.</param>
/// <param name="Form">The form.</param>
/// <param name="Brake">The brake.</param>
/// <param name="Marks">How the flat is marked.</param>
public sealed record FormJob(PanelSpec Panel, FormSpec Form, BrakeSpec Brake, MarkSpec Marks)
{
    /// <summary>The units that the caller states it in.</summary>
    public CallerUnits Units { get; init; } = CallerUnits.Mm;

    /// <summary>Gauge system in which the panel's thickness was stated, or null where it was stated as a length.</summary>
    public string? PanelGaugeSystem { get; init; }

    /// <summary>Gauge system in which the form's thickness was stated, or null where it was stated as a length.</summary>
    public string? FormGaugeSystem { get; init; }

    /// <summary>What the caller left open and was chosen for it.</summary>
    public IReadOnlyList<OpenValue> Assumed { get; init; } = [];

    /// <summary>The job with fields changed.</summary>
    /// <param name="changes">The changes; a later one of a field wins.</param>
    public FormJob With(IEnumerable<JobChange> changes) => changes.Aggregate(this, (job, change) => job.With(change));

    /// <summary>The job with one field changed.</summary>
    /// <param name="change">The change.</param>
    public FormJob With(JobChange change)
    {
        var number = change.Number;
        return change.Field switch
        {
            JobField.PanelThickness or JobField.PanelGauge =>
                WithPanel(Panel with { Sheet = Panel.Sheet with { ThicknessMm = ThicknessMm(PanelGaugeSystem) } }),
            JobField.PanelLeadIn => WithPanel(Panel with { LeadInMm = Mm() }),
            JobField.PanelLeadOut => WithPanel(Panel with { LeadOutMm = Mm() }),
            JobField.PanelLever => WithPanel(Panel with { LeverMm = number is null ? null : Mm() }),
            JobField.PanelGrain => WithPanel(Panel with { Grain = (Grain)change.Word! }),
            JobField.PanelAllowedRipple => WithPanel(Panel with { Finish = Finish.Own(Mm(), Panel.Finish.Slope) }),
            JobField.PanelAllowedSlope => WithPanel(Panel with { Finish = Finish.Own(Panel.Finish.RippleMm, Degrees()) }),
            JobField.PanelStrengthCoefficient => WithPanel(Panel with { Sheet = Stronger(Panel.Sheet) }),
            JobField.FormStrengthCoefficient => WithForm(Form with { Sheet = Stronger(Form.Sheet) }),
            JobField.ClampGap => WithPanel(Panel with { Clamp = Panel.Clamp with { GapMm = Mm() } }),
            JobField.ClampHeight => WithPanel(Panel with { Clamp = Panel.Clamp with { HeightMm = Mm() } }),
            JobField.PullByPeople => WithPanel(Panel with { PullBy = new((int)number!.Value) }),
            JobField.PullByRated => WithPanel(Panel with { PullBy = new(1, Units.ToN(number!.Value)) }),
            JobField.FormThickness or JobField.FormGauge =>
                WithForm(Form with { Sheet = Form.Sheet with { ThicknessMm = ThicknessMm(FormGaugeSystem) } }),
            JobField.FormFoldRadius => WithForm(Form with { FoldRadiusMm = Mm() }),
            JobField.FormLeadIn => WithForm(Form with { LeadInMm = Mm() }),
            JobField.FormLeadOut => WithForm(Form with { LeadOutMm = Mm() }),
            JobField.FormWidth => WithForm(Form with { WidthMm = Mm() }),
            JobField.FormGrain => WithForm(Form with { Grain = (Grain)change.Word! }),
            JobField.FormBacking => WithForm(Form with { Backing = (FormBacking)change.Word! }),
            JobField.SteppingFolds => WithStepping(Form.Stepping with { Folds = (int?)number }),
            JobField.SteppingAngle => WithStepping(Form.Stepping with { FoldAngle = number is null ? null : Degrees() }),
            JobField.SteppingSpacing => WithStepping(Form.Stepping with { SpacingMm = number is null ? null : Mm() }),
            JobField.SteppingMaxFacet => WithStepping(Form.Stepping with { MaxFacetMm = number is null ? null : Mm() }),
            JobField.SteppingEnds => WithStepping(Form.Stepping with { Ends = (SteppingEnds)change.Word! }),
            JobField.SteppingRule => WithStepping(Form.Stepping with { Rule = (SteppingRule)change.Word! }),
            JobField.BrakeLength => this with { Brake = Brake with { LengthMm = Mm() } },
            JobField.BrakeMinFacet => this with { Brake = Brake with { MinFacetMm = Mm() } },
            JobField.BrakeReach => this with { Brake = Brake with { ReachMm = number is null ? null : Mm() } },
            JobField.BrakeStopResolution => this with { Brake = Brake with { StopResolution = Degrees() } },
            JobField.MarksResolution => this with { Marks = Marks with { Tape = Marks.Tape with { Resolution = number!.Value } } },
            _ => WithPanel(Panel with { Curve = Changed(Panel.Curve, change) }),
        };

        double Mm() => Units.ToMm(number!.Value);

        Angle Degrees() => Angle.FromDegrees(number!.Value);

        Sheet Stronger(Sheet sheet) =>
            sheet with { Material = sheet.Material with { StrengthCoefficientMpa = Units.ToMpa(number!.Value) } };

        double ThicknessMm(string? gaugeSystem) =>
            change.Field is JobField.PanelGauge or JobField.FormGauge && Gauges.TryThickness(gaugeSystem!, (int)number!.Value, out var mm)
                ? mm
                : Mm();
    }

    private FormJob WithPanel(PanelSpec panel) => this with { Panel = panel };

    private FormJob WithForm(FormSpec form) => this with { Form = form };

    private FormJob WithStepping(Stepping stepping) => this with { Form = Form with { Stepping = stepping } };

    private PanelCurve Changed(PanelCurve curve, JobChange change) => (curve, change.Field) switch
    {
        (SegmentsCurve chain, _) =>
            new SegmentsCurve([.. chain.Segments.Select((piece, i) => i == change.Part?.Index ? Changed(piece, change) : piece)]),
        (TaperCurve taper, _) => change.Part?.Index == 0
            ? taper with { Near = Changed(taper.Near, change) }
            : taper with { Far = Changed(taper.Far, change) },
        (ArcCurve arc, JobField.CurveRadius) => arc with { RadiusMm = Units.ToMm(change.Number!.Value) },
        (ArcCurve arc, JobField.CurveSweep) => arc with { Sweep = Angle.FromDegrees(change.Number!.Value) },
        (ProgressiveCurve bend, JobField.CurveStartRadius) => bend with { StartRadiusMm = MmOrNone(change) },
        (ProgressiveCurve bend, JobField.CurveEndRadius) => bend with { EndRadiusMm = MmOrNone(change) },
        (ProgressiveCurve bend, JobField.CurveSweep) => bend with { Sweep = Angle.FromDegrees(change.Number!.Value) },
        (EllipseCurve ellipse, JobField.CurveSemiAxisX) => ellipse with { SemiAxisXMm = Units.ToMm(change.Number!.Value) },
        (EllipseCurve ellipse, JobField.CurveSemiAxisY) => ellipse with { SemiAxisYMm = Units.ToMm(change.Number!.Value) },
        (EllipseCurve ellipse, JobField.CurveToNormal) => ellipse with { ToNormal = Angle.FromDegrees(change.Number!.Value) },
        _ => throw new ArgumentOutOfRangeException(nameof(change), change, "The curve has no such field."),
    };

    private double? MmOrNone(JobChange change) => change.Number is { } length ? Units.ToMm(length) : null;
}

/// <summary>How the flat blank is marked.</summary>
/// <param name="Datum">Where marks are measured from.</param>
/// <param name="Tape">The tape they are read on.</param>
public sealed record MarkSpec(Datum Datum, Tape Tape)
{
    /// <summary>A place on the flat as it is measured from the datum [mm].</summary>
    /// <param name="fromLeadInMm">From the lead-in edge [mm].</param>
    /// <param name="lengthMm">Length of the flat [mm].</param>
    public double FromDatum(double fromLeadInMm, double lengthMm) => Datum switch
    {
        Datum.FarEdge => lengthMm - fromLeadInMm,
        Datum.Centre => fromLeadInMm - (lengthMm / 2),
        _ => fromLeadInMm,
    };
}
