using Forming.Curves;
using Forming.Facets;
using Forming.Jobs;
using Forming.Materials;
using Forming.Plans.Drafts;
using Forming.Results;

namespace Forming.Plans.Remedies;

/// <summary>Changes to a job, each with what a person has to do.</summary>
/// <param name="job">What was asked.</param>
/// <param name="draft">What was worked out.</param>
internal sealed class ChangeWords(FormJob job, PlanDraft draft)
{
    private const double GentlestStep = 1.02;
    private const int MostGentleSteps = 300;
    private const int MostLeadSteps = 12;

    /// <summary>A length.</summary>
    /// <param name="field">The field.</param>
    /// <param name="values">Values in the caller's unit.</param>
    /// <param name="text">What to do, by the length.</param>
    public RemedyCandidate Length(JobField field, RemedyValues values, Func<Figure, FormattableString> text) =>
        RemedyCandidate.Through(values, value => [new(field, value)], value => text(LengthOf(value)));

    /// <summary>An angle.</summary>
    /// <param name="field">The field.</param>
    /// <param name="values">Values [°].</param>
    /// <param name="text">What to do, by the angle.</param>
    public static RemedyCandidate Degrees(JobField field, RemedyValues values, Func<Figure, FormattableString> text) =>
        RemedyCandidate.Through(values, value => [new(field, value)], value => text(AngleOf(value)));

    /// <summary>A stress.</summary>
    /// <param name="field">The field.</param>
    /// <param name="values">Values in the caller's unit.</param>
    /// <param name="text">What to do, by the stress.</param>
    public RemedyCandidate Stress(JobField field, RemedyValues values, Func<Figure, FormattableString> text) =>
        RemedyCandidate.Through(values, value => [new(field, value)], value => text(Figure.Stress(job.Units.ToMpa(value))));

    /// <summary>One angle, rounded ever more finely.</summary>
    /// <param name="field">The field.</param>
    /// <param name="degrees">The angle [°].</param>
    /// <param name="text">What to do, by the angle.</param>
    public static RemedyCandidate Angles(JobField field, double degrees, Func<Figure, FormattableString> text) =>
        Degrees(field, Finer(degrees), text);

    /// <summary>One spacing of the folds, rounded ever more finely.</summary>
    /// <param name="spacingMm">The spacing [mm].</param>
    public RemedyCandidate Spacings(double spacingMm) => Length(
        JobField.SteppingSpacing, Finer(job.Units.FromMm(spacingMm)), value => $"space the folds {value}, so that they add up to the sweep");

    /// <summary>A number of folds, with nothing else fixed.</summary>
    /// <param name="values">The numbers.</param>
    /// <param name="also">What is changed with it.</param>
    public RemedyCandidate Folds(RemedyValues values, IReadOnlyList<JobChange> also)
    {
        var stepping = draft.Form.Stepping;
        var cleared = new List<JobChange>(also);
        if (stepping.FoldAngle is not null)
            cleared.Add(new(JobField.SteppingAngle, null));
        if (stepping.SpacingMm is not null)
            cleared.Add(new(JobField.SteppingSpacing, null));
        return RemedyCandidate.Through(
            values,
            value => [new(JobField.SteppingFolds, value), .. cleared],
            value => also is [{ Field: JobField.PanelLever, Number: { } lever }]
                ? $"use {value:0} folds and pull {LengthOf(lever)} past the end of the curve"
                : (FormattableString)$"use {value:0} folds");
    }

    /// <summary>Full folds at the ends.</summary>
    public static RemedyCandidate FullEnds() => RemedyCandidate.One(
        $"use full folds at the ends (ends: full) in place of half ones", new JobChange(JobField.SteppingEnds, null, SteppingEnds.Full));

    /// <summary>Another rule for the folds.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="text">What to do.</param>
    public RemedyCandidate Rule(SteppingRule rule, FormattableString text)
    {
        var changes = new List<JobChange> { new(JobField.SteppingRule, null, rule) };
        if (draft.Form.Stepping.FoldAngle is not null)
            changes.Add(new(JobField.SteppingAngle, null));
        if (draft.Form.Stepping.SpacingMm is not null)
            changes.Add(new(JobField.SteppingSpacing, null));
        return RemedyCandidate.One(text, [.. changes]);
    }

    /// <summary>Ribs under the form.</summary>
    /// <param name="text">What to do.</param>
    public static RemedyCandidate Ribs(FormattableString text) =>
        RemedyCandidate.One(text, new JobChange(JobField.FormBacking, null, FormBacking.Ribs));

    /// <summary>A finer tape.</summary>
    public RemedyCandidate FinerTape()
    {
        var tape = draft.Job.Marks.Tape;
        double[] steps = tape.Unit == LengthUnit.In ? [0.25, 0.125, 0.0625, 0.03125, 0.015625] : [10, 5, 1, 0.5, 0.1];
        return RemedyCandidate.Through(
            new([.. steps.Where(step => step < tape.Resolution)], 0),
            value => [new(JobField.MarksResolution, value)],
            value => $"mark with a tape that steps {Figure.Length(value * tape.UnitMm)}");
    }

    /// <summary>Folds across the grain.</summary>
    /// <param name="field">The panel's or the form's grain.</param>
    /// <param name="text">What to do.</param>
    public static RemedyCandidate Across(JobField field, FormattableString text) =>
        RemedyCandidate.One(text, new JobChange(field, null, Grain.Across));

    /// <summary>A longer lever, on a lead-out that has room for it.</summary>
    /// <param name="values">Levers in the caller's unit.</param>
    public RemedyCandidate LongerLever(RemedyValues values)
    {
        return RemedyCandidate.Through(
            values,
            value => NeedsLeadOut(value)
                ? [new(JobField.PanelLeadOut, value), new(JobField.PanelLever, value)]
                : [new(JobField.PanelLever, value)],
            value => NeedsLeadOut(value)
                ? $"leave a lead-out of {LengthOf(value)} on the panel, pull at its end, and trim it after"
                : (FormattableString)$"pull {LengthOf(value)} past the end of the curve");

        bool NeedsLeadOut(double value) => job.Units.ToMm(value) > draft.Panel.LeadOutMm;
    }

    /// <summary>Longer leads on the form.</summary>
    /// <param name="leads">The leads that are too short, and how long they have to be [mm].</param>
    public RemedyCandidate Leads((JobField Field, double Mm)[] leads)
    {
        var step = RemedyValues.Tape(job.Units);
        return new(MostLeadSteps, 0, i => [.. leads.Select(lead => new JobChange(lead.Field, ValueAt(lead.Mm, i)))], TextAt);

        double ValueAt(double mm, int i)
        {
            var value = job.Units.FromMm(mm);
            return Math.Round((Math.Ceiling((value / step(value)) - 1e-9) + i) * step(value), 6);
        }

        FormattableString TextAt(int i) => leads.Length > 1
            ? $"make the form's lead-in {LengthOf(ValueAt(leads[0].Mm, i))} and its lead-out {LengthOf(ValueAt(leads[1].Mm, i))} long"
            : leads[0].Field == JobField.FormLeadIn
                ? $"make the form's lead-in {LengthOf(ValueAt(leads[0].Mm, i))} long"
                : (FormattableString)$"make the form's lead-out {LengthOf(ValueAt(leads[0].Mm, i))} long";
    }

    /// <summary>Another sheet, by gauge where the sheet was stated by gauge.</summary>
    /// <param name="field">The panel's or the form's thickness.</param>
    /// <param name="gaugeSystem">The gauge system, or null.</param>
    /// <param name="nowMm">Thickness in use [mm].</param>
    /// <param name="guessMm">Thickness that is expected to do [mm].</param>
    /// <param name="farthestMm">The thinnest or thickest [mm].</param>
    /// <param name="text">What to do, by the sheet.</param>
    public RemedyCandidate Thickness(
        JobField field,
        string? gaugeSystem,
        double nowMm,
        double guessMm,
        double farthestMm,
        Func<FormattableString, FormattableString> text)
    {
        if (gaugeSystem is not null && Gauges.TryFind(gaugeSystem, out var system))
        {
            var byGauge = field == JobField.PanelThickness ? JobField.PanelGauge : JobField.FormGauge;
            var gauges = guessMm < nowMm
                ? system.Thicknesses.Where(row => row.Millimetres < nowMm && row.Millimetres >= farthestMm)
                    .OrderByDescending(row => row.Millimetres).ToArray()
                : [.. system.Thicknesses
                    .Where(row => row.Millimetres > nowMm && row.Millimetres <= farthestMm)
                    .OrderBy(row => row.Millimetres)];
            var start = Array.FindIndex(gauges, row => guessMm < nowMm ? row.Millimetres <= guessMm : row.Millimetres >= guessMm);
            return new(
                gauges.Length,
                Math.Max(0, start),
                i => [new(byGauge, gauges[i].Gauge)],
                i => text($"{gauges[i].Gauge} gauge ({Figure.Length(gauges[i].Millimetres)})"));
        }

        var step = RemedyValues.Fine(job.Units);
        var values = guessMm < nowMm
            ? RemedyValues.Down(job.Units.FromMm(nowMm), job.Units.FromMm(guessMm), job.Units.FromMm(farthestMm), step)
            : RemedyValues.Up(job.Units.FromMm(nowMm), job.Units.FromMm(guessMm), job.Units.FromMm(farthestMm), step);
        return RemedyCandidate.Through(values, value => [new(field, value)], value => text($"{LengthOf(value)}"));
    }

    /// <summary>A gentler curve: every bend tighter than a radius opened to it.</summary>
    /// <param name="insideMm">Tightest inside radius on the form [mm].</param>
    /// <param name="ratio">How much it has to grow.</param>
    /// <param name="mostMm">The largest radius [mm].</param>
    public RemedyCandidate Gentler(double insideMm, double ratio, double mostMm)
    {
        var start = (int)Math.Clamp(Math.Ceiling(Math.Log(ratio) / Math.Log(GentlestStep)), 0, MostGentleSteps - 1);
        var tightest = CurveRadii.Of(draft.Panel.Curve).Select(radius => radius.Mm).DefaultIfEmpty(insideMm).Min();
        var count = CurveRadii.Of(draft.Panel.Curve).Any() ? MostGentleSteps : 0;
        return new(count, Math.Min(start, Math.Max(0, count - 1)), i => CurveRadii.AtLeast(job, draft.Panel.Curve, RadiusAt(i)), i => $"open the curve to a radius of at least {LengthOf(RadiusAt(i))}");

        double RadiusAt(int i)
        {
            var value = Math.Min(job.Units.FromMm(mostMm), job.Units.FromMm(tightest) * Math.Pow(GentlestStep, i + 1));
            var step = RemedyValues.Fine(job.Units)(value);
            return Math.Round(Math.Ceiling((value / step) - 1e-9) * step, 6);
        }
    }

    /// <summary>A tighter curve of the same shape.</summary>
    /// <param name="guess">Share of the radius that is expected to do.</param>
    /// <param name="least">The smallest share.</param>
    public RemedyCandidate Tighter(double guess = 0.7, double least = 0.2)
    {
        var radii = CurveRadii.Of(draft.Panel.Curve).ToArray();
        if (radii.Length == 0 || radii.Any(radius => radius.Field == JobField.CurveSemiAxisX))
            return RemedyCandidate.Nothing;
        var now = job.Units.FromMm(radii.Min(radius => radius.Mm));
        return RemedyCandidate.Through(
            RemedyValues.Down(now, now * guess, now * least, RemedyValues.Fine(job.Units)),
            value => [.. radii.Select(radius =>
                new JobChange(radius.Field, Math.Round(job.Units.FromMm(radius.Mm) * value / now, 6), Part: radius.Part))],
            value => radii.Length == 1
                ? $"bend it tighter, to a radius of {LengthOf(value)}: so gentle a bend does not land on its folds one after another at any lever"
                : (FormattableString)$"bend it tighter, all radii by one share and the tightest to {LengthOf(value)}: so gentle a bend does not land on its folds one after another at any lever");
    }

    /// <summary>A smaller sweep on one form.</summary>
    /// <param name="guess">Sweep that is expected to do [rad].</param>
    /// <param name="now">Sweep in use [rad].</param>
    /// <param name="least">The smallest share of it.</param>
    public RemedyCandidate Sweep(double guess, double now, double least = 0)
    {
        var ends = CurveSweeps.Of(draft.Panel.Curve).ToArray();
        if (ends.Length == 0)
            return RemedyCandidate.Nothing;
        var whole = draft.Panel.Curve is TaperCurve ? ends[0].Degrees : ends.Sum(end => end.Degrees);
        var values = RemedyValues.Down(whole, whole * guess / now, Math.Max(1, least * whole), RemedyValues.Degrees);
        return RemedyCandidate.Through(
            values,
            value => [.. ends.Select(end =>
                new JobChange(end.Field, Math.Round(end.FromDegrees + SweepOf(end.Degrees, value / whole), 6), Part: end.Part))],
            value => $"bend {AngleOf(value)} of it on this form, and the rest on a second one");

        // Every bend by its share, to a tenth of a degree.
        static double SweepOf(double degrees, double share) => Math.Round(Math.Max(1, Math.Floor((degrees * share * 10) + 1e-6)) / 10, 6);
    }

    private static RemedyValues Finer(double value) =>
        new([.. Enumerable.Range(1, 4).Select(digits => Math.Round(value, digits)).Distinct().Where(rounded => rounded > 0)], 0);

    /// <summary>A length in the caller's unit as a figure.</summary>
    /// <param name="value">The length.</param>
    public Figure LengthOf(double value) => Figure.Length(job.Units.ToMm(value));

    private static Figure AngleOf(double degrees) => Figure.Angle(Angle.FromDegrees(degrees).Radians);
}
