using System.Globalization;
using FluentValidation;
using FormApi.Http.Rules;
using FormApi.Http.Units;
using Forming;
using Forming.Curves;

namespace FormApi.Features.Forms;

/// <summary>Curves given as people measure them: what is missing, what contradicts, and the curve in its own terms.</summary>
internal static class MeasuredCurves
{
    // What a tape and a protractor leave open.
    private const double SameShare = 0.005;

    /// <summary>The ways to give an arc: two fields, or three points.</summary>
    public static IReadOnlyList<string[]> WaysOfArc { get; } =
    [
        ["radius", "sweep"], ["radius", "chord"], ["radius", "rise"], ["radius", "arcLength"],
        ["diameter", "sweep"], ["diameter", "chord"], ["diameter", "rise"], ["diameter", "arcLength"],
        ["sweep", "chord"], ["sweep", "rise"], ["sweep", "arcLength"],
        ["chord", "rise"], ["chord", "arcLength"], ["rise", "arcLength"],
        ["through"],
    ];

    /// <summary>The ways to give a progressive bend beside its radii and its law.</summary>
    public static IReadOnlyList<string[]> WaysOfProgressive { get; } = [["sweep"], ["arcLength"]];

    /// <summary>Pointer of a field that is missing because too little is given, or null.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="pointer">Its pointer.</param>
    public static string? MissingOf(CurveInput? curve, string pointer) => curve switch
    {
        ArcInput { Through: null } arc when Measures(arc).Count < 2 => pointer + (Measures(arc).Radius is null ? "/radius" : "/sweep"),
        ProgressiveInput { Sweep: null, ArcLength: null } => pointer + "/sweep",
        SegmentsInput chain => chain.Segments
            .Select((piece, i) => MissingOf(piece, string.Create(CultureInfo.InvariantCulture, $"{pointer}/segments/{i}")))
            .FirstOrDefault(missing => missing is not null),
        TaperInput taper => MissingOf(taper.Near, pointer + "/near") ?? MissingOf(taper.Far, pointer + "/far"),
        _ => null,
    };

    /// <summary>The curve in its own terms, as the echo shows it.</summary>
    /// <param name="curve">A curve that passed its rules.</param>
    public static CurveInput InItsOwnTerms(CurveInput curve) => curve switch
    {
        ArcInput { Radius: not null, Sweep: not null } arc => new ArcInput(arc.Radius, arc.Sweep),
        ArcInput arc when Solved(arc) is { } solved => new ArcInput(solved.Radius, UnitSystem.Degrees(solved.Sweep)),
        ProgressiveInput { ArcLength: not null } bend => bend with { Sweep = SweepOf(bend), ArcLength = null },
        SegmentsInput chain => new SegmentsInput([.. chain.Segments.Select(InItsOwnTerms)]),
        TaperInput taper => taper with { Near = InItsOwnTerms(taper.Near), Far = InItsOwnTerms(taper.Far) },
        _ => curve,
    };

    /// <summary>Refuses measures that no arc has, and measures that contradict each other, with both readings.</summary>
    /// <param name="arc">The arc.</param>
    /// <param name="context">The check.</param>
    /// <param name="units">The caller's units.</param>
    public static void Check(ArcInput arc, ValidationContext<ArcInput> context, UnitSystem units)
    {
        var given = Measures(arc);
        if ((arc.Through is null && given.Count <= 2 && arc is { Radius: not null, Sweep: not null, Diameter: null })
            || (arc.Through is null && given.Count < 2)
            || arc.Through is { Count: not 3 })
        {
            return;
        }

        if (Solved(arc) is not { } solved)
        {
            context.FaultAt(FieldOf(arc), "contradicts", "No arc has these measures.", "a chord shorter than the arc and the diameter, a rise that fits both, points that are not in a line");
            return;
        }

        if (solved.Radius < Ranges.CurveRadius.MinIn(units) || solved.Radius > Ranges.CurveRadius.MaxIn(units))
            context.FaultAt(FieldOf(arc), "out-of-range", $"These measures make a radius of {Text(solved.Radius)}.", Ranges.CurveRadius.Text(units));
        var reading = MeasuredArc.Of(solved.Radius, solved.Sweep);
        foreach (var (field, measure, read) in ((string, double?, double)[])
            [
                ("radius", arc.Radius, solved.Radius),
                ("diameter", arc.Diameter, 2 * solved.Radius),
                ("sweep", arc.Sweep, solved.Sweep.Degrees),
                ("chord", arc.Chord, reading.Chord!.Value),
                ("rise", arc.Rise, reading.Rise!.Value),
                ("arcLength", arc.ArcLength, reading.Length!.Value),
            ])
        {
            if (measure is { } stated && Math.Abs(stated - read) > SameShare * Math.Abs(read))
                context.FaultAt(field, "contradicts", $"The other measures make it {Text(read)}, but {Text(stated)} is given.", $"{Text(read)}, or two measures only");
        }
    }

    /// <summary>Refuses a sweep that contradicts the length, with both readings, and one outside its range.</summary>
    /// <param name="bend">The bend.</param>
    /// <param name="context">The check.</param>
    /// <param name="units">The caller's units.</param>
    public static void Check(ProgressiveInput bend, ValidationContext<ProgressiveInput> context, UnitSystem units)
    {
        if (bend is { StartRadius: null, EndRadius: null }
            || (bend.Law != ProgressiveLaw.Clothoid && bend is not { StartRadius: not null, EndRadius: not null }))
        {
            return;
        }

        var read = SweepOf(bend);
        if (bend.Sweep is { } stated && Math.Abs(stated - read) > SameShare * Math.Abs(read))
            context.FaultAt("sweep", "contradicts", $"Radii and length make it {Text(read)}, but {Text(stated)} is given.", $"{Text(read)}, or sweep or arcLength alone");
        else if (!(read >= Ranges.Sweep.Min && read <= Ranges.Sweep.Max))
            context.FaultAt("arcLength", "out-of-range", $"This length makes a sweep of {Text(read)}°.", "a sweep of " + Ranges.Sweep.Text(units));
    }

    private static double SweepOf(ProgressiveInput bend) =>
        UnitSystem.Degrees(ProgressiveLength.SweepOf(bend.StartRadius, bend.EndRadius, bend.Law, bend.ArcLength!.Value));

    private static MeasuredArc Measures(ArcInput arc) => new(
        arc.Radius ?? arc.Diameter / 2,
        arc.Sweep is { } sweep ? Angle.FromDegrees(sweep) : null,
        arc.Chord,
        arc.Rise,
        arc.ArcLength);

    private static (double Radius, Angle Sweep)? Solved(ArcInput arc) => arc.Through is { } points
        ? MeasuredArc.Through(At(points[0]), At(points[1]), At(points[2]))?.Solve()
        : Measures(arc).Solve();

    private static Point At(Http.Json.Pair point) => new(point.First, point.Second);

    private static string FieldOf(ArcInput arc) => arc switch
    {
        { Through: not null } => "through",
        { Chord: not null } => "chord",
        { Rise: not null } => "rise",
        { ArcLength: not null } => "arcLength",
        { Diameter: not null } => "diameter",
        _ => "radius",
    };

    private static string Text(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
