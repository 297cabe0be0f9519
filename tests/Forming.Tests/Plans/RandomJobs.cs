using CsCheck;
using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Layout;
using Forming.Materials;
using Forming.Plans;
using Forming.Springback;

namespace Forming.Tests.Plans;

/// <summary>A job as a shop might send it, sensible or not.</summary>
internal sealed record Job(PanelSpec Panel, FormSpec Form, BrakeSpec Brake, MarkSpec Marks)
{
    /// <summary>A plan whose checks carry no remedies.</summary>
    public FormPlan Plan() => FormPlan.Compute(new FormJob(Panel, Form, Brake, Marks), needsRemedy: _ => false);

    /// <summary>A plan as a caller gets it.</summary>
    public FormPlan PlanWithRemedies() => FormPlan.Compute(new FormJob(Panel, Form, Brake, Marks));
}

/// <summary>Random jobs.</summary>
internal static class RandomJobs
{
    private static readonly Gen<Material> Materials = Gen.Int[0, MaterialCatalog.Default.All.Count - 1].Select(i => MaterialCatalog.Default.All[i]);

    /// <summary>A length over several decades [mm].</summary>
    private static readonly Gen<double> Radius = Gen.Double[0.3, 2.6].Select(exponent => Math.Pow(10, exponent));

    private static readonly Gen<PanelCurve> SingleBend = Gen.Select(Gen.Int[0, 5], Radius, Gen.Double[-1, 1], Gen.Double[1, 350]).Select(
        (kind, radius, opening, sweep) => kind switch
        {
            0 => Workshop.Arc(radius, sweep),
            1 => Workshop.Progressive(opening < 0 ? null : radius, opening < 0 ? radius : null, sweep, ProgressiveLaw.Clothoid),
            2 => new EllipseCurve(radius, radius * Math.Pow(10, opening), Angle.FromDegrees(100 * opening), Angle.FromDegrees((100 * opening) + sweep)),
            _ => Workshop.Progressive(radius, radius * Math.Pow(10, opening), sweep, (ProgressiveLaw)(kind - 3)),
        });

    private static readonly Gen<PanelCurve> Segment = Gen.Select(Gen.Int[0, 9], SingleBend, Radius).Select((kind, bend, length) => kind switch
    {
        < 3 => new FlatCurve(length),
        3 => new ArcCurve(length, Angle.FromDegrees(-20)),
        _ => bend,
    });

    private static readonly Gen<PanelCurve> Measured = Gen.Select(Gen.Double[30, 500], Gen.Double[20, 150], Gen.Int[4, 25], Gen.Double[0.1, 1]).Select(
        (radius, sweep, count, tolerance) =>
        {
            Point[] points = [.. Enumerable.Range(0, count).Select(i => i * sweep * Workshop.Degree / (count - 1))
                .Select(turn => new Point(radius * Math.Sin(turn), radius * (1 - Math.Cos(turn))))];
            return (PanelCurve)new PointsCurve(points, tolerance);
        });

    private static readonly Gen<PanelCurve> Curve = Gen.Select(Gen.Int[0, 19], SingleBend, Segment.List[1, 4], Measured).Select(
        (kind, bend, segments, measured) => kind switch
        {
            < 5 => new SegmentsCurve(segments),
            5 => measured,
            _ => bend,
        });

    private static readonly Gen<SpringbackChoice> Springback = Gen.Select(Gen.Int[0, 9], Gen.Double[0.1, 1]).Select((kind, share) => kind switch
    {
        0 => new MeasuredFactor(share),
        1 => new PureBending(400 * share),
        _ => (SpringbackChoice)new PureBending(),
    });

    private static readonly Gen<Finish> Finishes = Gen.Select(Gen.Int[0, 3], Gen.Double[-2.5, 0.5]).Select((kind, exponent) => kind switch
    {
        0 => Finish.Gloss,
        1 => Finish.Satin,
        2 => Finish.Hidden,
        _ => Finish.Own(Math.Pow(10, exponent), Angle.FromDegrees(10 * Math.Pow(10, exponent))),
    });

    private static readonly Gen<Stepping> Steppings = Gen.Select(
        Gen.Enum<SteppingRule>(), Gen.Enum<SteppingEnds>(), Gen.Int[0, 5], Gen.Int[1, 40], Gen.Double[1, 50], Gen.Double[3, 60]).Select(
        (rule, ends, isFixed, folds, step, most) => new Stepping
        {
            Rule = rule,
            Ends = ends,
            Folds = isFixed == 0 ? folds : null,
            FoldAngle = isFixed == 1 && rule == SteppingRule.EqualAngle ? Angle.FromDegrees(step) : null,
            SpacingMm = isFixed == 1 && rule == SteppingRule.EqualSpacing ? step : null,
            MaxFacetMm = isFixed == 2 ? most : null,
        });

    private static readonly Gen<PanelSpec> Panels = Gen.Select(
        Gen.Select(Materials, Gen.Double[0.3, 4], Curve, Gen.Enum<Surface>()),
        Gen.Select(Gen.Double[20, 2500], Gen.Double[0, 300], Gen.Double[0, 300], Gen.Double[0, 10]),
        Gen.Select(Finishes, Springback, Gen.Enum<Grain>(), Gen.Double[-300, 400]),
        Gen.Bool).Select((sheet, sizes, rest, mirrored) => new PanelSpec
        {
            Sheet = new(sheet.Item1, sheet.Item2),
            Curve = sheet.Item3,
            Surface = sheet.Item4,
            WidthMm = sizes.Item1,
            LeadInMm = sizes.Item2,
            LeadOutMm = sizes.Item3,
            TrimMm = sizes.Item4,
            Finish = rest.Item1,
            Springback = rest.Item2,
            Grain = rest.Item3,
            LeverMm = rest.Item4 < 0 ? null : rest.Item4,
            Mirrored = mirrored,
            Clamp = new(sizes.Item4 % 3 < 1 ? null : 10 + sizes.Item4, 40, 25),
        });

    private static readonly Gen<FormSpec> Forms = Gen.Select(
        Gen.Select(Materials, Gen.Double[0.5, 4], Gen.Double[0.05, 8]),
        Gen.Select(Gen.Double[0, 200], Gen.Double[0, 200], Gen.Double[20, 3000]),
        Steppings,
        Gen.Double[0, 0.5]).Select((sheet, sizes, stepping, factor) => new FormSpec
        {
            Sheet = new(sheet.Item1, sheet.Item2),
            FoldRadiusMm = sheet.Item3,
            LeadInMm = sizes.Item1,
            LeadOutMm = sizes.Item2,
            WidthMm = sizes.Item3,
            Stepping = stepping,
            NeutralFactor = factor < 0.25 ? null : factor,
        });

    private static readonly Gen<BrakeSpec> Brakes = Gen.Select(Gen.Enum<BrakeKind>(), Gen.Double[200, 3000], Gen.Double[1, 30], Gen.Double[0.1, 2]).Select(
        (kind, length, minFacet, resolution) => new BrakeSpec
        {
            Kind = kind,
            LengthMm = length,
            MinFacetMm = minFacet,
            StopResolution = Angle.FromDegrees(resolution),
            DieOpeningMm = kind == BrakeKind.Press ? 16 : null,
            Capacity = resolution < 0.5 ? new(1.6, 400) : null,
        });

    private static readonly Gen<MarkSpec> Marks = Gen.Select(Gen.Enum<Datum>(), Gen.Bool).Select(
        (datum, inches) => new MarkSpec(datum, inches ? new(LengthUnit.In, 1.0 / 64) : new(LengthUnit.Mm, 0.5)));

    /// <summary>Any job that passes the request's own rules.</summary>
    public static Gen<Job> Any { get; } = Gen.Select(Panels, Forms, Brakes, Marks).Select((panel, form, brake, marks) => new Job(panel, form, brake, marks));

    /// <summary>Jobs of one bend that a shop would hardly hesitate over, with a lever of their own.</summary>
    public static Gen<Job> Plain { get; } = Gen.Select(
        Gen.Select(Gen.Double[40, 200], Gen.Double[0.4, 2.5], Gen.Double[20, 150], Gen.Int[0, 3]),
        Gen.Select(Gen.Double[0.8, 2.5], Gen.Double[40, 100], Gen.Enum<SteppingRule>(), Gen.Enum<SteppingEnds>()),
        Gen.Int[4, 20]).Select((bend, rest, folds) => new Job(
            Workshop.Panel(bend.Item4 == 3
                ? Workshop.Arc(bend.Item1, bend.Item3)
                : Workshop.Progressive(bend.Item1, bend.Item1 * bend.Item2, bend.Item3, (ProgressiveLaw)bend.Item4)) with
            {
                Sheet = new(Workshop.Of("al-3003-h14"), rest.Item1),
                LeverMm = rest.Item2,
            },
            Workshop.Form(new() { Rule = rest.Item3, Ends = rest.Item4, Folds = folds }),
            Workshop.Brake with { MinFacetMm = 2 },
            Workshop.Marks));
}
